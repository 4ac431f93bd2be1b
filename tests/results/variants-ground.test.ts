// What is wrong in a variant of other numbers is found without its light and its object. Held against the whole plan of the same setup, written out.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { overlay } from '../../server/model/overlay.ts';
import { plan } from '../../server/results/plan.ts';
import { offsetsOf } from '../../server/results/readings/offsets.ts';
import { variantProblems, variantsOf } from '../../server/results/variants.ts';
import { disk } from '../examples/library.ts';
import { readFileSync } from 'node:fs';

const PAGE = readFileSync(new URL('../../examples/whelk-on-the-table.plate', import.meta.url), 'utf8');
const URI = new URL('../../examples/whelk-on-the-table.plate', import.meta.url).href;
const lines = [
  'P1 at (700, 650) mm', 'M3 at (400, 682) mm', 'M3 at (400 mm + 2 W, 682) mm', 'M3 at (94, 420) mm', 'M1 at (350, 100) mm', 'P1 at (700, 700) mm facing P1', 'P1 at (700, 700) mm facing nothing', 'P1 at (700, 400) mm', 'whelk at (700, 700) mm', 'red at (60, 100) mm',
  'S1.reflects: 50%', 'S1.reflects: 2 * 40%', 'S1.reflects: 1 mm / 0 mm', 'S1.reflects: beam ratio * 1%', 'R1.focal length: 3 mm + 1 s', 'R1.focal length: mismatch', 'R2.focal length: unheard', 'red.power: 3 mW', 'P1.resolving power: 100 lines/mm',
  'raw.1: 500 mm', 'object.2: 300 mm + 1 W', 'reference.3: 600 mm', 'reference.3: gap', 'object.1: mismatch + 1 mm',
];

test('the same is found wrong as by all of the plan', () => {
  const seen = new Set<string>();
  fc.assert(fc.property(fc.uniqueArray(fc.constantFrom(...lines), { minLength: 1, maxLength: 3 }), fc.boolean(), (changes, read) => {
    const text = PAGE.replace(/ {2}variant [\s\S]*?\n {2}\}\n/, `  let gap = 40 mm\n  variant "trial" {\n${changes.map(c => `    ${c}\n`).join('')}  }\n`).replace(/^ {2}measured.*\n/gm, line => (read ? line : ''));
    const [base] = analyse(URI, text, disk).results;
    const [v] = variantsOf(base!);
    const told = variantProblems(base!);
    const whole = plan(overlay(base!.setup, v!.variant), { offsets: offsetsOf(base!) });
    const key = (p: { code: string; subject: string; data: unknown }): string => `${p.code} ${p.subject}`;
    const had = new Set(base!.problems.map(key));
    // What light says of its readings, and what is expected by name, is of the setup and no error of a number.
    const expected = new Set(whole.problems.filter(p => !had.has(key(p)) && !/^(?:reading-|meters-|head-)/.test(p.code)).map(key));
    for (const p of told) seen.add(p.code);
    expect(new Set(told.filter(p => !/^(?:reading-|meters-|head-)/.test(p.code)).map(key)), changes.join('\n')).toEqual(expected);
  }), { numRuns: 40, examples: lines.map(l => [[l], true]) });
  expect(seen.size).toBeGreaterThan(2);
});
