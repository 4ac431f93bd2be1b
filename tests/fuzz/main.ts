/** One process of `npm run fuzz`: tries its part of the inputs of each target, and tells of it on standard output, a line of JSON each. Started by run.mjs. */
import { openSync, writeSync, ftruncateSync } from 'node:fs';
import { Coverage } from './coverage.ts';
import { tryMany } from './loop.ts';
import { TARGETS } from './targets.ts';

const { inputs, seed, target, trying: path } = JSON.parse(process.argv[2]!) as { inputs: number; seed: number; target: string | null; trying: string };
const file = openSync(path, 'w');
// What is tried is on disk before it is: of an input that never ends, or that takes the process along, nothing else would be known.
// It has a number, since the same input comes again.
let tries = 0;
const trying = (input: string): void => {
  ftruncateSync(file);
  writeSync(file, JSON.stringify({ n: ++tries, input }), 0);
};
const coverage = new Coverage(url => url === `file://${process.argv[1]!}` || url === process.argv[1]);
const whole = TARGETS.reduce((n, t) => n + t.share, 0);
for (const t of TARGETS) {
  if (target !== null && t.name !== target) continue;
  const begun = Date.now();
  const own = target === null ? Math.ceil(inputs * t.share / whole) : inputs;
  const tell = (what: object): void => { process.stdout.write(`${JSON.stringify({ target: t.name, seconds: (Date.now() - begun) / 1000, ...what })}\n`); };
  const { inputs: tried, wrong, corpus } = await tryMany(t, { inputs: own, seed, coverage, trying, found: found => { tell({ found }); }, goesOn: sofar => { tell({ sofar }); } });
  tell({ sofar: tried, ends: true, corpus, count: wrong.length });
}
process.exit(0);
