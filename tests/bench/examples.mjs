// What somebody waits for who works on the examples: the whole report of a page, and a hover right behind an edit, when everything is still to be computed, once the engine has compiled what it runs often (as many edits as the bench of edits has before it counts).
//   node tests/bench/examples.mjs   prints both; npm run bench calls it
import { readFileSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { open } from './client.mjs';
import { ours } from './servers.mjs';

const EXAMPLES = resolve('examples');
const pages = readdirSync(EXAMPLES).filter((name) => name.endsWith('.plate'));
const read = (name) => readFileSync(join(EXAMPLES, name), 'utf8');
const uriOf = (name) => pathToFileURL(join(EXAMPLES, name)).href;

const WARM_UP = 10;
const TURNS = 15;
const HOVERS_BEFORE = 150;
const HOVERS = 300;

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await timeReports();
  await timeHovers();
}

/** Median milliseconds from the text of the slowest example to its report, nothing kept from before, once the engine has compiled what it runs often. */
export async function timeReports() {
  const outfile = resolve('.bench/report.mjs');
  await build({
    stdin: { contents: "export { analyse } from './server/analysis.ts'; export { reportOf } from './server/features/report/report.ts'; export { reportText } from './server/features/report/text.ts';", resolveDir: process.cwd() },
    outfile, bundle: true, format: 'esm', platform: 'node', target: 'node20', logLevel: 'warning',
  });
  const { analyse, reportOf, reportText } = await import(pathToFileURL(outfile).href);
  const texts = new Map(pages.map((name) => [uriOf(name), read(name)]));
  const library = { text: (uri) => texts.get(uri), resolve: (path, from) => new URL(path, from).href };
  const report = (uri) => {
    const start = performance.now();
    const snapshot = analyse(uri, texts.get(uri), library);
    reportText(snapshot.results.map((results) => reportOf(snapshot, results)), uri);
    return performance.now() - start;
  };
  const uris = [...texts.keys()];
  for (let n = 0; n < WARM_UP; n++) for (const uri of uris) report(uri);
  const times = uris.map((uri) => ({ uri, ms: median(Array.from({ length: TURNS }, () => report(uri))) })).sort((a, b) => b.ms - a.ms);
  const [slowest] = times;
  console.log(`the whole report of the slowest example (${slowest.uri.slice(slowest.uri.lastIndexOf('/') + 1)}): ${slowest.ms.toFixed(1)} ms`);
  return slowest.ms;
}

/** Milliseconds within which 95 of 100 hovers come, each asked right behind an edit that moves a mirror on the table. */
export async function timeHovers() {
  const name = 'whelk-on-the-table.plate';
  const text = read(name);
  const lines = text.split('\n');
  const line = lines.findIndex((l) => l.includes('mirror M2 at (94,'));
  const character = lines[line].indexOf('94') + 1;
  // Names and figures all over the page.
  const places = lines.flatMap((l, n) => [...l.matchAll(/[A-Za-z][\w-]*/g)].map((m) => ({ line: n, character: m.index }))).filter((p) => p.line !== line);
  const session = await open(ours(true), { uri: uriOf(name), languageId: 'plate', text }, { ...ours(true), found: () => true });
  const all = [];
  for (let n = 0; n < HOVERS + HOVERS_BEFORE; n++) {
    const ms = await session.hover({ line, character, text: n % 2 === 0 ? '5' : '4' }, places[(n * 37) % places.length]);
    if (n >= HOVERS_BEFORE) all.push(ms);
  }
  await session.close();
  const p95 = all.sort((a, b) => a - b)[Math.floor(0.95 * all.length)];
  console.log(`hovers right behind an edit of a placed page: median ${median(all).toFixed(1)} ms, 95 of 100 within ${p95.toFixed(1)} ms`);
  return p95;
}

function median(all) {
  return [...all].sort((a, b) => a - b)[Math.floor(all.length / 2)];
}
