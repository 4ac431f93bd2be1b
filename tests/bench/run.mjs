// npm run bench: our server beside a JSON and a YAML language server that check the same setup against a schema. All in one run, in turns, so that
// a busy machine is busy for all; what counts are ratios of medians.
//   --check    ends with 1 when a limit is broken, a ratio is worse than the budget has it, or something could not be measured
//   --write    writes the table in FIGURES.md: what was measured, beside what, on which machine
//   --accept   writes the ratios of this run into budget.json as those that later runs are held against
import { execFileSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { timeAnswers } from './answers.mjs';
import { accept, broken, holdAgainst, told } from './budget.mjs';
import { open } from './client.mjs';
import { timeDrawing } from './drawing.mjs';
import { timeHovers, timeReports } from './examples.mjs';
import { timeHistory } from './history.mjs';
import { timeMaps } from './maps.mjs';
import { timePanel } from './panel.mjs';
import { kept, KEEPS, ours, peers } from './servers.mjs';
import { inventory, mismatched, setup } from './setups.mjs';
import { timeSolving } from './solving.mjs';
import { writeTable } from './table.mjs';
import { PAGES, timeExamples, timePages } from './workspace.mjs';

const LENGTHS = [100, 1_000, 10_000];
// Whoever types makes hundreds of edits in an evening: what counts is the time once the engine has compiled what it runs often, for all servers alike.
const WARM_UP = 300;
const EDITS = 200;
/** Of edits that take long, fewer do. */
const LONG_WARM_UP = 30;
const LONG_EDITS = 60;
/** Edits that one server gets before it is the next one's turn: letters come in bursts. An even number, since every other edit takes back the one before. */
const TURN = 10;
const STARTS = 40;
/** Setups that draw on one inventory, and of a page in which all are mismatched. */
const MANY = 200;

const { json, yaml } = peers();
const packed = pack();
// a build begins with an empty dist/: what is there is of now
const own = existsSync('dist/server.cjs') ? [ours(true), ours(false)] : [];
const servers = [...own, json, yaml];
/** What was measured beside peers, for the table. */
const rows = [];

console.log(`\nnode ${process.version}, ${EDITS} edits after ${WARM_UP} to warm up (on 10000 lines ${LONG_EDITS} after ${LONG_WARM_UP}), ${STARTS} starts; medians\n`);
const edits = new Map();
for (const lines of LENGTHS) {
  edits.set(lines, await timeEdits(lines));
  row(`${lines} lines, an edit to its findings`, edits.get(lines), 'ms');
}
const answers = own.length > 0 ? await timeAnswers([ours(true), json, yaml], [1_000, 10_000], median) : new Map();
for (const [what, figures] of answers) row(what, figures, 'ms');
const starts = await timeStarts(servers);
row(`${KEEPS ? 'first start' : 'start'} to the findings of 100 lines`, starts, 'ms');
const again = KEEPS && own.length > 0 ? await timeAgain([ours(true), json]) : undefined;
if (again) row('start to the findings of 100 lines, with what was compiled kept', again, 'ms');
const memory = await weigh();
row('memory with 10000 lines, after 20 edits', memory, 'MB');
const refresh = own.length > 0 ? await timeInventory() : new Map();
for (const [pages, ms] of refresh) single(`an edit of an inventory to the findings of ${MANY} setups, in ${pages} pages`, ms);
const alone = own.length > 0 ? await timeMismatched(1) : undefined;
const among = own.length > 0 ? await timeMismatched(MANY) : undefined;
if (own.length > 0) single(`an edit of a mismatched setup, alone ${alone.toFixed(2)} ms; among ${MANY}`, among);
const size = packed ? statSync('out/platewright.vsix').size / 1e6 : undefined;
if (packed) console.log(`${'packed extension'.padEnd(64)}${size.toFixed(3)} MB`);

const maps = await timeMaps();
const drawing = await timeDrawing();
const frame = existsSync('dist/plan.js') ? await timePanel() : undefined;
const report = await timeReports();
const hover = own.length > 0 ? await timeHovers() : undefined;
const solving = await timeSolving();
const history = existsSync('dist/cli.cjs') ? timeHistory() : undefined;
const workspace = own.length > 0 ? await timePages([ours(true), json, yaml], median) : new Map();
row(`${PAGES} pages of 100 lines, opened and checked`, workspace, 'ms');
const examples = own.length > 0 ? await timeExamples(ours(true), median) : undefined;
if (own.length > 0) single(`${PAGES} examples, opened and checked`, examples);

const time = (lines, server = ours(true)) => edits.get(lines).get(server.name);
/** No slower than the faster peer, or under 1 ms: as the least multiple of either that it takes. */
const beside = (found) => Math.min(found.get('ours'), found.get('ours') / Math.min(found.get('JSON'), found.get('YAML')));
const ratioTo = (peer, found) => found.get('ours') / found.get(peer);
const figures = new Map([
  ...[...answers].map(([what, found]) => [`${what}: ours / the faster peer, or ms`, beside(found)]),
  ['1000 lines: ours / YAML', time(1_000) / time(1_000, yaml)],
  ['1000 lines: ours / JSON', time(1_000) / time(1_000, json)],
  ['ours: 1000 lines / 100 lines', time(1_000) / time(100)],
  ['ours: 10000 lines / 1000 lines', time(10_000) / time(1_000)],
  [`an inventory to ${MANY} pages that use it, ms`, refresh.get(MANY)],
  [`an inventory to ${MANY} setups in 10 pages that use it, ms`, refresh.get(10)],
  [`mismatched setups: one of ${MANY} / one alone`, among / alone],
  [`${PAGES} pages of 100 lines opened and checked, ms`, workspace.get('ours')],
  [`${PAGES} examples opened and checked, ms`, examples],
  ['start: ours / JSON', ratioTo('JSON', again ?? starts)],
  ['first start: ours / JSON', ratioTo('JSON', starts)],
  ['memory with 10000 lines, MB', memory.get('ours')],
  ['memory with 10000 lines: ours / JSON', ratioTo('JSON', memory)],
  ['packed extension, MB', size],
  ['maps, path differences: ours / C', maps?.differences],
  ['maps, brightnesses: ours / C', maps?.brightness],
  ['500 things, first picture, ms', drawing.picture],
  ['500 things, work of the panel for a step of a drag, ms', frame],
  ['panel of the bench plan, MB', drawing.size / 1e6],
  ['the whole report of any example, ms', report],
  ['hover right behind an edit, 95 of 100, ms', hover],
  ['a value that is written ?, ms', solving.one],
  ['six values that are written ?, ms', solving.six],
  ['three layouts, ms', solving.layout],
  ['what 200 revisions of 300 lines did, ms', history],
]);
const held = holdAgainst(figures);
console.log(`\nlimits\n${held.map(told).join('\n')}`);
if (process.argv.includes('--accept')) accept(figures);
if (process.argv.includes('--write')) writeTable(held, rows);
process.exit(process.argv.includes('--check') && held.some(broken) ? 1 : 0);

/** Median milliseconds of an edit, by server. */
async function timeEdits(lines) {
  const sessions = [];
  for (const server of servers) sessions.push({ server, ...(await openSetup(server, lines)), times: [] });
  const [warmUp, counted] = lines > 1_000 ? [LONG_WARM_UP, LONG_EDITS] : [WARM_UP, EDITS];
  for (let from = 0; from < warmUp + counted; from += TURN) {
    for (const { session, place, times } of sessions) {
      for (let n = from; n < from + TURN; n++) {
        const ms = await session.edit(place, n % 2 === 1);
        if (n >= warmUp) times.push(ms);
      }
    }
    // Whose turn comes behind a server that still clears up is slowed down by it: there and back, each has other servers before it.
    sessions.reverse();
  }
  for (const { session } of sessions) await session.close();
  return new Map(servers.map((server) => [server.name, median(sessions.find((s) => s.server === server).times)]));
}

/** Median milliseconds from starting the process to the findings of the shortest setup, by server. */
async function timeStarts(all) {
  const times = new Map(all.map(({ name }) => [name, []]));
  for (let n = 0; n < STARTS; n++) {
    for (const server of all) {
      const start = performance.now();
      const { session } = await openSetup(server, LENGTHS[0]);
      times.get(server.name).push(performance.now() - start);
      await session.close();
    }
  }
  return new Map([...times].map(([name, found]) => [name, median(found)]));
}

/** The same for servers that were started before, and whose compiled code Node.js has kept: for a peer as for ours, though VS Code starts its own without. */
async function timeAgain(all) {
  const again = all.map(kept);
  for (const server of again) await (await openSetup(server, LENGTHS[0])).session.end();
  return timeStarts(again);
}

/** Resident memory in MB, by server, each in a process of its own. */
async function weigh() {
  const weights = new Map();
  for (const server of servers) {
    const { session, place } = await openSetup(server, LENGTHS.at(-1));
    for (let n = 0; n < 20; n++) await session.edit(place, n % 2 === 1);
    weights.set(server.name, session.residentMemory());
    await session.close();
  }
  return weights;
}

/** Median milliseconds from an edit of an inventory to the findings of all setups that draw on it, by the number of pages they stand in. */
async function timeInventory() {
  const times = new Map();
  for (const pages of [MANY, 10]) {
    const lab = inventory(40);
    const text = mismatched(MANY / pages, true).text;
    const users = Array.from({ length: pages }, (_, n) => ({ uri: `file:///notebook/page-${n}.plate`, text }));
    // The client is sent all findings, since it is the server's time that counts and not that of 200 questions.
    const session = await open(ours(false), { uri: 'file:///notebook/lab.plate', languageId: 'plate', text: lab.text }, { ...ours(false), pull: false }, users);
    const all = [];
    for (let n = 0; n < 20; n++) {
      const ms = await session.edit(lab.edit, n % 2 === 1);
      if (n >= 4) all.push(ms);
    }
    await session.close();
    times.set(pages, median(all));
  }
  return times;
}

/** Median milliseconds of an edit of one setup on a page of setups that are all mismatched. */
async function timeMismatched(setups) {
  const { text, edit } = mismatched(setups, false);
  const session = await open(ours(true), { uri: 'file:///notebook/page.plate', languageId: 'plate', text }, ours(true));
  const all = [];
  for (let n = 0; n < WARM_UP + EDITS; n++) {
    // Both digits leave it mismatched, so that bands are drawn each time.
    const ms = await session.edit({ ...edit, tooLong: n % 2 === 1 ? edit.matched : edit.tooLong }, true);
    if (n >= WARM_UP) all.push(ms);
  }
  await session.close();
  return median(all);
}

async function openSetup(server, lines) {
  const { text, edit } = setup(lines, server.format);
  const document = { uri: `file:///notebook/setup.${server.format}`, languageId: server.languageId, text };
  return { session: await open(server, document, server), place: edit };
}

function median(values) {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length % 2 === 1 ? sorted[Math.floor(half)] : (sorted[half - 1] + sorted[half]) / 2;
}

function row(what, figures, unit) {
  const shown = [...figures].map(([name, value]) => `${name} ${value.toFixed(value < 10 ? 2 : 0)} ${unit}`.padEnd(19) + ' ');
  const own = figures.get('ours');
  const ratios = own === undefined || figures.size < 3 ? '' : `ours/JSON ${(own / figures.get('JSON')).toPrecision(2)}  ours/YAML ${(own / figures.get('YAML')).toPrecision(2)}`;
  console.log(`${what.padEnd(63)} ${shown.join('')}${ratios}`);
  rows.push({ what, unit, figures });
}

function single(what, ms) {
  console.log(`${what}: ${ms.toFixed(ms < 10 ? 2 : 0)} ms`);
}

/** True when the extension could be packed; its bundles are then in dist/, or those of them that could be built. */
function pack() {
  try {
    execFileSync('npm', ['run', '--silent', 'package'], { stdio: ['ignore', 'ignore', 'pipe'] });
    return true;
  } catch (error) {
    console.log(`the extension cannot be packed:\n${String(error.stderr).split('\n').slice(0, 5).join('\n')}`);
    return false;
  }
}
