// The maps over plate x object beside the same loops in C, compiled in the same run. Both are given the same numbers and have to give the same results.
//   node tests/bench/maps.mjs   prints times and ratios; npm run bench calls it
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const SIDE = 64;
const OBJECT_POINTS = 2_000;
/** How often each gets its turn. Processor time counts, of which a busy machine gives each as much as it needs. */
const TURNS = 15;
/** Before that, for the engine to compile what it runs often. */
const WARM_UP = 3;
const FLAGS = ['-O3'];
/** What results may differ by. */
const ROUNDING = 1e-12;
const BENCH = resolve('.bench');
const inBench = (name) => join(BENCH, name);

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) await timeMaps();

/** Prints times, and gives the ratios ours / C of path differences and of brightnesses; undefined where C cannot be compiled. */
export async function timeMaps() {
  mkdirSync(BENCH, { recursive: true });
  const maps = await ours();
  const { of, table } = layout(maps);
  const differences = new Float64Array(of.toPlate.length * of.toObject.length);
  const brightnesses = new Float64Array(of.toObject.length);
  const own = { differences: [], brightness: [] };
  const timed = (run) => {
    const start = process.cpuUsage();
    run();
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1e3;
  };
  // As in C, each turn is one run to warm up and one that counts.
  const turn = () => {
    let times;
    for (let n = 0; n < 2; n++) {
      times = [timed(() => maps.pathDifferences(of, differences)), timed(() => maps.recordedBrightnesses(of, table, brightnesses))];
    }
    own.differences.push(times[0]);
    own.brightness.push(times[1]);
  };
  for (let n = 0; n < WARM_UP; n++) turn();
  own.differences.length = own.brightness.length = 0;

  const peer = compiled();
  if (peer === undefined) {
    for (let n = 0; n < TURNS; n++) turn();
    console.log(`maps, ${SIDE} x ${SIDE} plate points x ${OBJECT_POINTS} object points: ours ${median(own.differences).toFixed(1)} and ${median(own.brightness).toFixed(1)} ms; C not measured: no gcc here`);
    return undefined;
  }
  writeInput(of, table);
  const c = { differences: [], brightness: [] };
  for (let n = 0; n < TURNS; n++) {
    const [a, b] = execFileSync(peer, [inBench('maps.in')], { encoding: 'utf8' }).split(' ').map(Number);
    c.differences.push(a);
    c.brightness.push(b);
    turn();
  }
  execFileSync(peer, [inBench('maps.in'), inBench('maps.out')]);
  compare(differences, brightnesses);
  const ratios = { differences: median(own.differences) / median(c.differences), brightness: median(own.brightness) / median(c.brightness) };
  console.log(`maps, ${SIDE} x ${SIDE} plate points x ${OBJECT_POINTS} object points, beside C (gcc ${FLAGS.join(' ')}), ${TURNS} turns, medians of processor time; results alike`);
  for (const [name, key] of [['path differences', 'differences'], ['brightnesses', 'brightness']]) {
    console.log(`  ${name.padEnd(40)}ours ${median(own[key]).toFixed(1)} ms  C ${median(c[key]).toFixed(1)} ms  ours/C ${ratios[key].toPrecision(3)}`);
  }
  return ratios;
}

/** The kernels, bundled and shortened as they are shipped. */
async function ours() {
  const contents = ['maps/points.ts', 'maps/pairs.ts', 'maps/differences.ts', 'maps/brightness.ts', 'solids/frame.ts', 'coherence/equal-modes.ts'].map((file) => `export * from './server/optics/${file}';`).join('\n');
  const outfile = inBench('maps.mjs');
  await build({ stdin: { contents, resolveDir: resolve('.'), loader: 'ts' }, outfile, bundle: true, minify: true, format: 'esm', target: 'node20', platform: 'node', logLevel: 'error' });
  return import(pathToFileURL(outfile).href);
}

/** A transmission master on a 1200 x 900 mm table, its object a block of points, in light of two modes from a 350 mm tube. */
function layout(maps) {
  const plate = maps.platePoints(maps.facing([0.7, 0.7, 0.15], [0, -1, 0]), 0.102, 0.127, SIDE, SIDE, 'to the edges');
  const points = Array.from({ length: OBJECT_POINTS }, (_, i) => [0.66 + 0.08 * ((i % 20) / 19), 0.36 + 0.08 * (Math.floor(i / 200) / 9), 0.11 + 0.08 * ((Math.floor(i / 20) % 10) / 9)]);
  const of = maps.pairs(plate, maps.packed(points), { kind: 'point', at: [1.1, 0.1, 0.15] }, { kind: 'point', at: [0.4, 0.64, 0.15] }, 0.0371);
  const reach = Math.abs(maps.differenceExtremes(of).largest.difference);
  return { of, table: maps.contrastTable((d) => maps.equalModesCoherence(2, 0.7, d), reach, 4096) };
}

/** The C program, or nothing where there is no compiler. A program that does not compile fails the bench. */
function compiled() {
  try {
    execFileSync('gcc', ['--version'], { stdio: 'ignore' });
  } catch {
    return undefined;
  }
  const program = inBench('maps');
  execFileSync('gcc', [...FLAGS, '-o', program, resolve('tests/bench/maps.c'), '-lm'], { stdio: 'inherit' });
  return program;
}

function writeInput({ plate, object, toPlate, toObject }, { contrasts, step }) {
  const columns = [[toPlate.length, toObject.length, contrasts.length, step], plate.x, plate.y, plate.z, toPlate, object.x, object.y, object.z, toObject, contrasts];
  writeFileSync(inBench('maps.in'), Buffer.concat(columns.map((column) => Buffer.from(Float64Array.from(column).buffer))));
}

function compare(differences, brightnesses) {
  const bytes = readFileSync(inBench('maps.out'));
  rmSync(inBench('maps.out'));
  const theirs = new Float64Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
  const all = [differences, brightnesses];
  let at = 0;
  for (const own of all) for (const value of own) {
    const theirsHere = theirs[at++];
    if (!(Math.abs(value - theirsHere) <= ROUNDING * Math.max(1, Math.abs(value)))) throw new Error(`result ${at - 1}: ours ${value}, C ${theirsHere}`);
  }
  if (at !== theirs.length) throw new Error(`ours has ${at} results, C ${theirs.length}`);
}

function median(values) {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
}
