/**
 * Many edits: whether the server still answers as a fresh one, and whether what it keeps grows with them. Started by soak.mjs.
 *   soak EDITS SEED
 */
import { linearRegression, sum } from 'simple-statistics';
import { LABS, NAMES, NOTEBOOK, uri } from './pages.ts';
import { kept } from './kept.ts';
import { difference } from './questions.ts';
import { numberOf, replay, shrink, step } from './run.ts';
import { BEGIN, World } from './world.ts';

const [EDITS, SEED] = [Number(process.argv[2] ?? 100_000), Number(process.argv[3] ?? 20260211)];
/** Steps between two quiet points, and between two at which all is asked; edits between two marks. */
const QUIET = 1000;
const ALL = 5000;
const MARK = Math.max(200, Math.floor(EDITS / 50));
/** What a fresh engine compiles and what caches fill with first is no growth. */
const WARM_UP = 0.2;
/**
 * B for each edit. Somebody who types all evening makes some 20,000 edits; with so much for each, these come to 0.3 MB, which is less than one page of ten thousand lines
 * weighs. A text that is kept for each edit would be 2,000 and more, one entry of a map that nobody clears some 100.
 */
const LIMIT = 15;

/** Everything open, on disk and chosen is as at the beginning; what the server has seen is not. */
async function tidy(world: World): Promise<void> {
  await world.written([...new Set([...world.disk.keys(), ...BEGIN.disk.keys()])].map(at => [at, BEGIN.disk.get(at)] as const));
  if (world.folders.length > 1) await world.folder(BEGIN.folders);
  await world.choose(BEGIN.chosen);
  for (const name of LABS) if (world.open.has(name)) await world.hide(name);
  for (const name of NAMES) {
    if (world.bases.has(name)) { await world.hide(name); await world.show(name); }
    world.past.delete(name);
    await world.open.get(name)!.rewrite(NOTEBOOK[name]!);
    await world.editor.connection.sendRequest('textDocument/diagnostic', { textDocument: { uri: uri(name) } });
  }
  await world.turn();
}

const world = await World.of(BEGIN);
const marks: (readonly [number, number])[] = [];
let numbers: number[] = [];
const began = Date.now();
let [quiet, n] = [0, 0];
console.log(`seed ${SEED}, ${EDITS} edits, a quiet point after each ${QUIET} steps, at which all is asked after each ${ALL}\n   edits  MB of data  edits/s  quiet points`);
while (world.edits < EDITS) {
  numbers.push(numberOf(SEED, ++n));
  await step(world, numbers.at(-1)!, n);
  if (n % QUIET === 0) {
    quiet++;
    const wrong = await difference(world, n, n % ALL === 0);
    if (wrong !== undefined) await fail(wrong);
  }
  if (world.edits < (marks.length + 1) * MARK) continue;
  await tidy(world);
  numbers = [];
  const data = await kept();
  marks.push([world.edits, data]);
  if (marks.length % 5 === 0 || marks.length < 5) {
    const [at] = marks.at(-1)!;
    console.log(`${String(at).padStart(8)}  ${(data / 1e6).toFixed(3).padStart(10)}  ${(at / ((Date.now() - began) / 1000)).toFixed(0).padStart(7)}  ${quiet}`);
  }
}

const settled = marks.slice(Math.floor(marks.length * WARM_UP));
const { m: slope, b: base } = linearRegression(settled.map(p => [...p]));
// Standard error of a slope by least squares: the spread of what is left about the line, over that of the places.
const middle = sum(settled.map(([x]) => x)) / settled.length;
const error = Math.sqrt(sum(settled.map(([x, y]) => (y - base - slope * x) ** 2)) / (settled.length - 2) / sum(settled.map(([x]) => (x - middle) ** 2)));
const [grows, unsure] = [slope - 2 * error > LIMIT, 2 * error > LIMIT];
console.log(`\n${world.edits} edits in ${n} steps, ${(world.edits / ((Date.now() - began) / 1000)).toFixed(0)} a second; ${quiet} quiet points, at each the answers of a fresh server`);
console.log(`data in memory: ${slope.toFixed(1)} ± ${error.toFixed(1)} B for each edit (slope and its standard error, ${settled.length} marks, the first ${WARM_UP * 100} % left out); at most ${LIMIT} are allowed`);
if (grows) console.log('It grows.');
if (unsure) console.log('That is not sure enough to tell: take more edits.');
process.exit(grows || unsure ? 1 : 0);

async function fail(wrong: string): Promise<never> {
  console.log(`\nThe server answers otherwise than a fresh one, seed ${SEED}, step ${n}:\n${wrong}\n`);
  const enough = await shrink(BEGIN, numbers);
  const { wrong: again, done } = await replay(BEGIN, enough);
  if (again === undefined) console.log(`It does not come again with what was done since the last mark (${numbers.length} steps): what was done before counts.`);
  else console.log(`${again}\n\nThese operations are enough (${enough.join(', ')}):\n${done.join('\n')}`);
  process.exit(1);
}
