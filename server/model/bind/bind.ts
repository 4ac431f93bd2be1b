/** Binds one file: its inventories and setups, with every name looked up. Never throws. */
import type { Node, Tree } from '../../../grammar/tree.ts';
import { bindBeam } from './beams.ts';
import { bindDate } from './dates.ts';
import { bindFact, checkNamed, factPhrase } from './facts.ts';
import { bindAccept, bindGoal } from './goals.ts';
import { checkPlacement } from './placement.ts';
import type { Found } from './found.ts';
import { bindLet } from './lets.ts';
import { withMasters } from './masters.ts';
import { bindMoved } from './moved.ts';
import { bindReadings } from './readings.ts';
import { bindThing, meantBy, oneWord, openingWords, opensThing, strayLegs } from './things.ts';
import { bindVariants } from './variants.ts';
import type { Inventories } from '../inventories.ts';
import { Items, keep, keepThing } from '../kept.ts';
import type { Accept, Beam, BoundFact, Goal, Inventory, Let, Model, Moved, Setup, Use } from '../model.ts';
import { fileName, nearest, Scope, Sink } from '../scope.ts';
import type { Fact } from '../things/kind.ts';
import { withoutBrace } from '../written.ts';
import { factIndex, kindNamed, PROCESS_FACTS, SETUP_FACTS, SHOT_FACTS } from '../things/index.ts';

export const MAX_THINGS = 5000;

/** Words that open a statement of a file. */
export const FILE_STATEMENTS: readonly string[] = ['setup', 'inventory', 'use'];

/** Words that open a statement of a setup which declares no thing. */
export const STATEMENTS: readonly string[] = ['beam', 'measured', 'moved', 'expect', 'aim', 'accept', 'let', 'variant', 'shot', 'process'];

/** Findings of declarations and beams behind which what seems missing may stand. */
const UNSURE: readonly string[] = ['unknown-name', 'unknown-word', 'name-missing', 'name-taken', 'reserved-name', 'leg-without-beam'];
const NO_COLON: readonly string[] = ['beam', 'accept', 'let', 'variant'];
const COLON: readonly string[] = ['measured', 'moved', 'expect', 'aim'];

export function bind(uri: string, tree: Tree, find: (path: string) => Found = path => ({ code: 'import-unreadable', uri: '', data: { path, why: 'it was not found' } })): Model {
  const sink = new Sink(uri);
  const setups: Setup[] = [];
  const inventories = new Map<string, Inventory>();
  const own: Inventory[] = [];
  const uses: Use[] = [];

  for (const node of tree.nodes) if (node.line.head?.text === 'use') bindUse(node, find, inventories, uses, sink);
  for (const node of tree.nodes) {
    if (node.line.head?.text !== 'inventory') continue;
    const inventory = keep(node, sink, inventories, seen => bindInventory(node, seen, sink));
    if (!inventory) continue;
    const before = inventories.get(inventory.name);
    if (before?.at.uri === uri) sink.report('name-taken', inventory.at, before.name, { name: before.name, kind: 'inventory', line: before.at.line + 1 });
    else if (before) sink.report('inventory-twice', inventory.at, before.name, { name: before.name, first: fileName(before.at.uri), second: '' });
    else { own.push(inventory); inventories.set(inventory.name, inventory); }
  }
  const names = new Map<string, number>();
  const stray = tree.issues.filter(i => i.code === 'leg-without-beam').map(i => i.at);
  // A brace that closes nothing has often lost the line that opened its block, and with it a name.
  const lost = tree.issues.filter(i => i.code === 'brace-not-opened').map(i => i.at);
  let apart = true;
  for (const node of tree.nodes) {
    const head = node.line.head?.text;
    if (head === 'use' || head === 'inventory') { apart = true; continue; }
    if (head === 'setup') {
      const setup = keep(node, sink, inventories, seen => bindSetup(node, seen, sink, stray, lost));
      if (names.has(setup.name)) sink.report('name-taken', setup.at, setup.name, { name: setup.name, kind: 'setup', line: names.get(setup.name)! + 1 });
      else names.set(setup.name, setup.at.line);
      setups.push(setup);
      apart = true;
    } else if (head !== undefined && !(node.line.issue && !node.line.subject && node.line.colon === undefined)) {
      // Lines in a row that have lost their setup are one slip.
      if (apart) outside(node, sink);
      apart = false;
    }
  }
  return { uri, setups: withMasters(setups, find, uses, sink), inventories: own, visible: inventories, uses, references: sink.references, problems: sink.problems, bound: sink.bound };
}

function outside(node: Node, sink: Sink): void {
  const head = node.line.head!;
  const known = opensThing(node) !== undefined || STATEMENTS.includes(head.text) || factIndex(SETUP_FACTS).has(factPhrase(node.line) ?? '');
  const suggestion = known ? undefined : meantBy(node, FILE_STATEMENTS)?.word;
  sink.report('outside-setup', sink.place(node, head), head.text, { word: head.text, known, ...(suggestion ? { suggestion } : {}) });
}

function bindUse(node: Node, find: (path: string) => Found, inventories: Map<string, Inventory>, uses: Use[], sink: Sink): void {
  const value = node.line.subject;
  if (value?.kind !== 'string') {
    sink.incomplete = true;
    if (!node.line.issue) sink.report('value-missing', sink.place(node, node.line.head!), 'use', { phrase: 'the name of a file in quotes', of: 'use', prevents: '' });
    return;
  }
  const at = sink.place(node, value);
  if (value.value === '') {
    sink.incomplete = true;
    sink.report('import-unreadable', at, 'use', { path: '', why: 'the name of the file is empty' });
    return;
  }
  const found = find(value.value);
  uses.push({ path: value.value, uri: found.uri, at });
  if ('code' in found) {
    sink.incomplete = true;
    // The limit is one finding, however many files lie beyond it.
    if (found.code !== 'too-many-files' || !sink.problems.some(p => p.code === found.code)) sink.report(found.code, at, value.value, { path: value.value, ...found.data });
    return;
  }
  for (const inv of found.inventories) {
    const before = inventories.get(inv.name);
    if (!before) inventories.set(inv.name, inv);
    else if (before !== inv) sink.report('inventory-twice', at, inv.name, { name: inv.name, first: fileName(before.at.uri), second: fileName(inv.at.uri) });
  }
}

function bindInventory(node: Node, others: Inventories, sink: Sink): Inventory | undefined {
  const subject = node.line.subject;
  const name = subject?.kind === 'phrase' ? subject.words[0] : undefined;
  if (!name) {
    sink.incomplete = true;
    if (!node.line.issue) sink.report('name-missing', sink.place(node, node.line.head!), 'inventory', { kind: 'inventory', words: '' });
    return undefined;
  }
  oneWord(subject, 'inventory', node, sink);
  const things = new Items();
  const inventory: Inventory = { name: name.text, things, at: sink.place(node, name) };
  // An item may derive from one that stands above it, by either name of that.
  others.adopt(inventory);
  const scope = new Scope(sink, things, others);
  scope.below = id => node.children.some(c => opensThing(c) !== undefined && openingWords(c).at(-1)!.text === (id.startsWith(`${name.text}.`) ? id.slice(name.text.length + 1) : id));
  const full = new Full(node, scope);
  for (const child of node.children) {
    if (!child.line.head) continue;
    if (child.line.colon !== undefined || (STATEMENTS.includes(child.line.head.text) && !opensThing(child))) { notHere(child, scope, inventory.name); continue; }
    if (full.reached(child) || keepThing(child, things, sink, others, () => counted(bindThing(child, scope), sink))) continue;
    statementUnknown(child, scope, []);
  }
  for (const thing of things.values()) checkNamed(thing, scope);
  return inventory;
}

/** Items are counted one by one, the things of a setup with it. */
function counted(is: boolean, sink: Sink): boolean {
  if (is) sink.bound++;
  return is;
}

/** A line of a setup that stands in an inventory. */
function notHere(child: Node, scope: Scope, inventory: string): void {
  const { line } = child;
  const phrase = line.colon === undefined ? undefined : factPhrase(line);
  const word = STATEMENTS.includes(line.head!.text) ? line.head!.text : phrase !== undefined && factIndex(SETUP_FACTS).has(phrase) ? phrase : undefined;
  if (word === undefined) { statementUnknown(child, scope, [...STATEMENTS, ...factIndex(SETUP_FACTS).keys()]); return; }
  scope.sink.report('not-in-inventory', scope.sink.place(child, line.head!), inventory, { word, inventory });
}

/** The limit of things: what stands behind it is not read, which is one finding. */
class Full {
  private told = false;

  constructor(private readonly of: Node, private readonly scope: Scope) {}

  /** True for a thing that is one too many. */
  reached(child: Node): boolean {
    const { scope } = this;
    if (scope.things.size < MAX_THINGS || !opensThing(child)) return false;
    if (!this.told) {
      const count = this.of.children.reduce((n, c) => n + (c.line.colon === undefined && opensThing(c) ? 1 : 0), 0);
      scope.sink.report('too-many-things', scope.sink.place(child, child.line.head!), scope.setup ?? 'inventory', { count, limit: MAX_THINGS }, scope.setup);
    }
    this.told = true;
    // What names one of them is no slip of its own.
    scope.nameless = true;
    return true;
  }
}

function setupName(node: Node): string {
  const s = node.line.subject;
  return s?.kind === 'string' ? s.value : s?.kind === 'phrase' ? s.words.map(w => w.text).join(' ') : '';
}

function bindSetup(node: Node, inventories: Inventories, sink: Sink, stray: readonly number[], lost: readonly number[]): Setup {
  const name = setupName(node);
  const at = sink.place(node, node.line.subject ?? node.line.head!);
  if (name === '' && !node.line.issue) sink.report('name-missing', at, 'setup', { kind: 'setup', words: '' });
  const things = new Items();
  const scope = new Scope(sink, things, inventories, name);
  scope.nameless = lost.some(at => at >= node.at && at <= node.end);
  const beams = new Map<string, Beam>();
  const facts = new Map<string, BoundFact>();
  const lets = new Map<string, Let>();
  const measured: Node[] = [];
  const moved: Moved[] = [];
  const goals: Goal[] = [];
  const accepts: Accept[] = [];
  const variantNodes: Node[] = [];
  const shots: { name: string; at: Setup['at']; node: Node }[] = [];
  const pending = new Set<string>();
  const later: Node[] = [];
  const full = new Full(node, scope);
  const beamsToo = new Set<Node>();
  const before = sink.problems.length;
  const setupFacts = factIndex(SETUP_FACTS);
  const unfinishedFact = ({ line, legs }: Node): boolean => line.colon === undefined && line.clauses.length === 0 && !line.equals && legs.length === 0 && setupFacts.has(factPhrase(line) ?? '');

  // Things first, so that a beam may name what stands below it.
  for (const child of node.children) {
    const { head, colon } = child.line;
    if (!head) { scope.nameless ||= child.line.issue !== undefined; continue; }
    // `exposure` alone is a fact of the setup that nobody has finished; with a name it is one of several.
    if (colon === undefined && !(unfinishedFact(child) && !child.line.opens) && (full.reached(child) || keepThing(child, things, sink, inventories, () => bindThing(child, scope)))) continue;
    if (colon === undefined && beamSplitter(child, scope)) continue;
    if (colon === undefined && !STATEMENTS.includes(head.text) && !unfinishedFact(child)) {
      // With legs below it, it is a misspelt beam.
      if (statementUnknown(child, scope, [...STATEMENTS, ...setupFacts.keys()]) === 'beam' || child.legs.length > 0) beamsToo.add(child);
      else continue;
    }
    later.push(child);
  }
  for (const child of later) {
    const { line } = child;
    const head = line.head!;
    if (beamsToo.has(child)) { bindBeam(child, beams, scope); continue; }
    const phrase = line.colon !== undefined || unfinishedFact(child) ? factPhrase(line) : undefined;
    if (line.colon !== undefined || head.text !== 'beam') strayLegs(child, sink, name);
    if (phrase !== undefined && setupFacts.has(phrase)) { bindFact(child, setupFacts, facts, name, 'setup', scope); continue; }
    // No statement has a colon behind these words: `beam hight: 120 mm` is a misspelt fact.
    switch (line.colon !== undefined && NO_COLON.includes(head.text) ? '' : head.text) {
      case 'beam': bindBeam(child, beams, scope); break;
      case 'measured': measured.push(child); break;
      case 'moved': { const m = bindMoved(child, scope); if (m) moved.push(m); break; }
      case 'expect': bindGoal(child, goals, scope); break;
      case 'aim': bindGoal(child, goals, scope); break;
      case 'accept': bindAccept(child, accepts, scope); break;
      case 'let': bindLet(child, lets, scope); break;
      case 'variant': variantNodes.push(child); break;
      case 'shot': shots.push(block(child, sink)); dated(child, scope); checkFacts(child, SHOT_FACTS, 'shot', scope); break;
      case 'process': dated(child, scope); checkFacts(child, PROCESS_FACTS, 'process', scope); break;
      default: statementUnknown(child, scope, [...STATEMENTS, ...setupFacts.keys()]);
    }
  }
  const variants = bindVariants(variantNodes, { beams, lets }, scope);
  const readings = bindReadings(measured, { beams, lets }, scope);
  const unused = new Set<Fact>();
  for (const thing of things.values()) {
    checkNamed(thing, scope);
    if (thing.node.line.clauses.length > 0) checkPlacement(thing.node, scope);
    for (const { fact } of thing.facts.values()) {
      if (fact.used || unused.has(fact)) continue;
      unused.add(fact);
      pending.add(`${thing.kind.word} “${fact.phrase}”`);
    }
  }
  for (const f of facts.values()) if (!f.fact.used) pending.add(`“${f.fact.phrase}” of a setup`);
  return {
    name, uri: sink.uri, node, at, things, beams, facts, lets, readings, moved, goals, accepts, variants, shots, pending,
    unsure: scope.nameless || stray.some(at => at >= node.at && at <= node.end) || sink.problems.slice(before).some(p => UNSURE.includes(p.code)),
    ...(node.doc !== undefined ? { doc: node.doc } : {}),
  };
}

function block(node: Node, sink: Sink): { name: string; at: Setup['at']; node: Node } {
  const s = node.line.subject;
  return { name: s?.kind === 'string' ? s.value : withoutBrace(node.line.text.trim()), at: sink.place(node, s ?? node.line.head!), node };
}

/** The day behind `on` of a shot, or of processing. */
function dated(node: Node, scope: Scope): void {
  const on = node.line.clauses.find(c => c.word.text === 'on');
  if (on) bindDate(on, node, node.line.head!.text, scope);
}

function checkFacts(node: Node, known: Parameters<typeof factIndex>[0], kind: string, scope: Scope): void {
  const facts = new Map<string, BoundFact>();
  for (const child of node.children) if (child.line.head) bindFact(child, factIndex(known), facts, kind, kind, scope);
}

/** `beam splitter BS`, as the trade says it, is a splitter. */
function beamSplitter(node: Node, scope: Scope): boolean {
  const [first, second, name] = openingWords(node);
  if (first?.text !== 'beam' || second?.text !== 'splitter' || !name || node.line.clauses.some(c => c.word.text === 'from') || node.legs.length > 0) return false;
  scope.sink.report('unknown-word', scope.sink.place(node, { start: first.start, end: second.end }), 'beam splitter', { word: 'beam splitter', suggestion: 'splitter' }, scope.setup);
  return bindThing(node, scope, { kind: kindNamed('splitter')!, length: 2 });
}

/** Reports it, and gives the word that was probably meant. */
function statementUnknown(node: Node, scope: Scope, others: readonly string[]): string | undefined {
  const { line } = node;
  const head = line.head!;
  if (line.issue && !line.subject && line.colon === undefined) { scope.nameless = true; return undefined; }
  const fact = line.colon === undefined ? undefined : factPhrase(line);
  const near = fact === undefined ? undefined : nearest(fact, others);
  // A statement that has a colon itself, such as a reading, may be misspelt in its first word.
  const first = fact !== undefined && near === undefined && line.subject ? nearest(head.text, others.filter(o => COLON.includes(o))) : undefined;
  const meant = fact === undefined ? meantBy(node, others) : near !== undefined ? { word: near, length: 0 } : first === undefined ? undefined : { word: first, length: 1 };
  const words = fact === undefined || first !== undefined ? openingWords(node).slice(0, meant?.length ?? 1) : [head, ...(line.subject ? [line.subject] : [])];
  const word = line.text.slice(head.start, words[words.length - 1]!.end);
  scope.sink.report('unknown-word', scope.sink.place(node, { start: head.start, end: words[words.length - 1]!.end }), word, { word, ...(meant ? { suggestion: meant.word } : {}) }, scope.setup);
  // A misspelt kind still declares its thing, so that one slip is one finding.
  const kind = fact === undefined ? kindNamed(meant?.word ?? '') : undefined;
  if (kind && meant) bindThing(node, scope, { kind, length: meant.length });
  else scope.excuse(openingWords(node).slice(1));
  return meant?.word;
}
