/** The notebook that the model works on: pages, the inventories that they use, and what people type into them. */
import { readFileSync } from 'node:fs';
import { EXAMPLES } from '../../examples/library.ts';

export const FOLDER = 'file:///saltmarsh/';
/** a folder that is open now and then, with an inventory that pages find there */
export const SHED = 'file:///shed/';
export const uri = (name: string): string => (name.includes(':') ? name : FOLDER + name);

const example = (name: string): string => readFileSync(`examples/${name}`, 'utf8');
export const NAMES = ['whelk-by-string.plate', 'variants.plate', 'readings.plate', 'single-beam-oyster.plate', 'walk-the-beam.plate'];
export const LABS = ['saltmarsh-lab.plate', 'annex.plate'];
const TOOLS = `${SHED}tools.plate`;

/** What each file says before anybody writes in it. */
export const NOTEBOOK: Readonly<Record<string, string>> = {
  ...Object.fromEntries([...NAMES, 'saltmarsh-lab.plate'].map(n => [n, example(n)])),
  'annex.plate': 'use "saltmarsh-lab.plate"\n\n/// The shed across the yard.\ninventory annex {\n  mirror old {\n    loss: 20% ± 5 points\n  }\n  string cord {\n    stretch: 0.5% ± 0.3 points\n  }\n}\n',
  [TOOLS]: '/// Lies in the shed.\ninventory tools {\n  mirror shaving {\n    loss: 30% ± 5 points\n  }\n}\n',
};
/** The annex in a ring with itself. */
export const RING = NOTEBOOK['annex.plate']!.replace('saltmarsh-lab', 'annex');

/** Lines that people might type. */
export const LINES = EXAMPLES.flatMap(p => p.text.split('\n')).filter(l => l.trim() !== '');
export const PIECES = [
  '{', '}', ' ', '-> ', '±', ' mm', '\n', '\r\n', 'µ', '😀', '"', ':', 'M1', 'S1', '12', '?', ' at (100, 200) mm', '0.5', 'lab.', 'x', '//', ' 2 mm', '\ufeff',
  '  measured reference: 1470 mm ± 3 mm by string\n', 'use "annex.plate"\n', 'use "tools.plate"\n', '  mirror M9 = tools.shaving\n',
];
