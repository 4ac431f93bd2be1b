// npm run fuzz: many inputs for all targets, or with `-- --inputs 5000 --target pages --seed 7` so many for one. What is found is cut down and kept as a file in
// tests/fuzz/found, where a test runs it from then on; it ends with 1 where anything was found.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';

const { values } = parseArgs({ options: { inputs: { type: 'string', default: '1000000' }, seed: { type: 'string', default: '1' }, target: { type: 'string' }, processes: { type: 'string', default: String(availableParallelism()) } } });
const [inputs, seed, processes] = [values.inputs, values.seed, values.processes].map(Number);
if (![inputs, seed, processes].every(n => Number.isSafeInteger(n) && n > 0)) throw new Error('--inputs, --seed and --processes are whole numbers above 0.');
/** Longer than that no input takes, ms: what is tried then is stuck. */
const STUCK = 120_000;

const folder = mkdtempSync(join(tmpdir(), 'platewright-fuzz-'));
const bundled = join(folder, 'main.mjs');
const keeping = join(folder, 'kept.mjs');
const alias = { vscode: resolve('tests/client/vscode.ts') };
// What is not written as a module asks for parts of Node.js by a function that modules do not have.
const banner = { js: "import { createRequire as r } from 'node:module'; const require = r(import.meta.url);" };
const common = { bundle: true, platform: 'node', target: 'node20', format: 'esm', sourcemap: 'inline', alias, banner, logLevel: 'error' };
await build({ ...common, entryPoints: ['tests/fuzz/main.ts'], outfile: bundled });
await build({ ...common, entryPoints: ['tests/fuzz/kept.ts'], outfile: keeping });
const { keep } = await import(keeping);

/** Of each process and target how far it is. */
const told = new Map();
let bad = 0;
const found = (target, input, why) => {
  bad++;
  console.log(`${target}: ${why}\n  kept as ${keep(target, input)}`);
};

/** One process and what it tells. */
function work(n) {
  const trying = join(folder, `trying-${n}.json`);
  const own = { inputs: Math.ceil(inputs / processes), seed: seed * 1000 + n, target: values.target ?? null, trying };
  const child = spawn(process.execPath, ['--enable-source-maps', '--max-old-space-size=3000', bundled, JSON.stringify(own)], { stdio: ['ignore', 'pipe', 'inherit'] });
  children.push(child);
  let [target, last, stuck] = ['', '', false];
  const now = () => { try { return readFileSync(trying, 'utf8'); } catch { return ''; } };
  const watch = setInterval(() => {
    const text = now();
    if (text !== '' && text === last) { stuck = true; child.kill('SIGKILL'); }
    last = text;
  }, STUCK);
  createInterface({ input: child.stdout }).on('line', line => {
    let said;
    try { said = JSON.parse(line); } catch { console.log(line); return; }
    ({ target } = said);
    if (said.found) found(target, said.found.input, said.found.why);
    else told.set(`${n} ${target}`, said);
    if (said.ends) console.log(`process ${n}: ${target}, ${said.sofar} inputs in ${said.seconds.toFixed(0)} s, seed ${own.seed}, ${said.corpus} reached something new, ${said.count} found`);
  });
  return new Promise(done => {
    child.on('close', (code, signal) => {
      clearInterval(watch);
      // Somebody stopped it.
      if (code !== 0 && !['SIGTERM', 'SIGINT', 'SIGHUP'].includes(signal)) {
        const text = now();
        if (text === '') { bad++; console.log(`process ${n} ended with ${code} before it tried anything`); } else found(target, JSON.parse(text).input, stuck ? 'takes for ever' : `took the process along, which ended with ${code}`);
      }
      done();
    });
  });
}

/** What has been tried so far. */
function sum() {
  let [all, seconds] = [0, 0];
  for (const name of new Set([...told.values()].map(t => t.target))) {
    const of = [...told.values()].filter(t => t.target === name);
    const [tried, took] = [of.reduce((n, t) => n + t.sofar, 0), of.reduce((n, t) => n + t.seconds, 0)];
    [all, seconds] = [all + tried, seconds + took];
    console.log(`${name.padEnd(10)} ${String(tried).padStart(8)} inputs ${took.toFixed(0).padStart(6)} s`);
  }
  console.log(`${all} inputs in ${seconds.toFixed(0)} s of ${processes} processes, seed ${seed}: ${bad} found`);
  return all;
}

const children = [];
// Who stops it wants to know how far it came.
process.on('SIGINT', () => { for (const c of children) c.kill('SIGKILL'); sum(); process.exit(130); });
await Promise.all(Array.from({ length: processes }, (_, n) => work(n)));
rmSync(folder, { recursive: true, force: true });
const all = sum();
process.exitCode = bad > 0 || all < inputs ? 1 : 0;
