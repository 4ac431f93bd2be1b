// The page of figures: what was measured, beside what, and on which machine.
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, totalmem, type } from 'node:os';
import { resolve } from 'node:path';
import { versions } from './servers.mjs';

const FILE = new URL('FIGURES.md', import.meta.url);
const shown = (value) => (Number.isFinite(value) ? String(Number(value.toPrecision(3))) : 'not measured');

/** `held`: figures with their limits; `rows`: what ours and the peers took for the same. */
export function writeTable(held, rows) {
  const { version } = JSON.parse(readFileSync(resolve('package.json'), 'utf8'));
  const names = ['ours', 'ours, sent', 'JSON', 'YAML'];
  const lines = [
    '# Speed and size', '',
    'Written by `npm run bench -- --write`; medians of one run, in which all take turns. What counts are the ratios: milliseconds are those of this machine.', '',
    `${new Date().toISOString().slice(0, 10)}; Platewright ${version}; ${cpus().length} processors (${cpus()[0].model.trim()}), ${Math.round(totalmem() / 1e9)} GB of memory, ${type()}; Node ${process.version}; peers: ${versions().join(', ')}.`, '',
    '## Beside other language servers', '',
    'The same setup as a page of ours and as JSON and YAML that are checked against a schema. The wait of the YAML server after a change, and the end of its outline at 5000 names, are taken out.', '',
    `| | unit | ${names.join(' | ')} |`, `|---|---|${'---|'.repeat(names.length)}`,
    ...rows.map(({ what, unit, figures }) => `| ${what} | ${unit} | ${names.map((n) => (figures.has(n) ? shown(figures.get(n)) : '')).join(' | ')} |`), '',
    'Colours by meaning have no peer: beside them stands the outline, a walk over the whole text as well.', '',
    '## Limits', '',
    '| figure | measured | at most | accepted before | |', '|---|---|---|---|---|',
    ...held.map(({ name, value, limit, accepted, verdict }) => `| ${name} | ${shown(value)} | ${limit ?? ''} | ${accepted ?? ''} | ${verdict} |`), '',
  ];
  writeFileSync(FILE, lines.join('\n'));
}
