// What somebody waits for who writes ? on a page: one value, and six at once, until the answer is there.
//   node tests/bench/solving.mjs   prints them; npm run bench calls it
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const WARM_UP = 15;
const TURNS = 15;
const FILE = 'file:///saltmarsh/sought.plate';

/** The placed whelk without its readings, with some of its numbers asked for. */
function page(...asked) {
  let text = readFileSync('examples/whelk-on-the-table.plate', 'utf8').split('\n').filter(l => !/^\s*measured/.test(l)).join('\n').replace(/reflects: \?.*/, 'reflects: 95%').replace(/\n {2}aim[^\n]*/g, '');
  for (const [from, to] of asked) {
    if (!text.includes(from)) throw new Error(`the example has no “${from}”`);
    text = text.replace(from, to);
  }
  return text;
}
const ONE = page(['M3 at (400, 640) mm', 'M3 at (?, 640) mm'], ['  expect mismatch', '  aim mismatch: 0 mm\n  expect mismatch']);
const SIX = page(
  ['M3 at (400, 640) mm', 'M3 at ?'], ['M2 at (94, 420) mm', 'M2 at ?'], ['by 60 mm', 'by ?'], ['by 30 mm', 'by ?'],
  ['  expect mismatch', '  aim mismatch: 0 mm\n  expect corner light > 60%\n  expect mismatch'],
);

/** The same without places and lengths, on the same table. */
const UNLAID = page().replace(/ (?:at \([^)]*\) mm(?: heading 0°)?(?: facing whelk)?|on \S+ -> \S+ by \d+ mm)/g, '').replace(/^\s*(?:aim|expect|accept|variant)[^\n]*(?:\{[^}]*\})?\n/gm, '');
const LAYOUTS = 5;

/** Median milliseconds from a page that is known to the answer: of one value, and of six. */
export async function timeSolving() {
  const outfile = resolve('.bench/solving.mjs');
  await build({
    stdin: { contents: "export { analyse } from './server/analysis.ts'; export { answerOf } from './server/features/solve/answer.ts'; export { layoutsOf } from './server/features/layout/layouts.ts';", resolveDir: process.cwd() },
    outfile, bundle: true, format: 'esm', platform: 'node', target: 'node20', logLevel: 'warning',
  });
  const { analyse, answerOf, layoutsOf } = await import(pathToFileURL(outfile).href);
  const lab = readFileSync('examples/saltmarsh-lab.plate', 'utf8');
  const library = { resolve: path => path, text: () => lab };
  const all = [['one', ONE, 1], ['six', SIX, 6]].map(([name, text, count]) => {
    const snapshot = analyse(FILE, text, library);
    const errors = snapshot.findings.filter(f => f.severity === 'error');
    if (errors.length > 0) throw new Error(errors[0].message);
    const run = () => { const start = performance.now(); const answer = answerOf(snapshot, snapshot.results[0]); return { ms: performance.now() - start, answer }; };
    const { answer } = run();
    if (answer.choices[0]?.values.length !== count) throw new Error(`${name}: no answer`);
    return { name, run, times: [] };
  });
  for (let n = 0; n < WARM_UP + TURNS; n++) for (const { run, times } of all) { const { ms } = run(); if (n >= WARM_UP) times.push(ms); }
  const [one, six] = all.map(({ times }) => times.sort((a, b) => a - b)[Math.floor(times.length / 2)]);
  console.log(`${'a value that is written ?, and six of them'.padEnd(64)}${one.toFixed(1)} ms   ${six.toFixed(0)} ms`);
  const unlaid = analyse(FILE, UNLAID, library);
  const layouts = Array.from({ length: LAYOUTS }, () => {
    const start = performance.now();
    const { found } = layoutsOf(unlaid, unlaid.results[0], library);
    if (found.length < 3) throw new Error('not three layouts');
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const layout = layouts[Math.floor(LAYOUTS / 2)];
  console.log(`${'three layouts of a setup without places'.padEnd(64)}${layout.toFixed(0)} ms`);
  return { one, six, layout };
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await timeSolving();
