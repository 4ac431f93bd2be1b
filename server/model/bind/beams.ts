/** Beams and their legs. */
import { RESERVED } from '../../../grammar/tokens.ts';
import type { Expr, Node, Span, Word } from '../../../grammar/tree.ts';
import { readFact } from './facts.ts';
import { oneWord, openingWords } from './things.ts';
import type { Beam, Bound, Leg, Place, Thing } from '../model.ts';
import { placeIn } from '../place.ts';
import { nearest, type Scope } from '../scope.ts';
import type { FactType } from '../things/kind.ts';
import { LENGTH } from '../units.ts';

const LEG_LENGTH: FactType = { type: 'quantity', dim: LENGTH, sign: 'positive' };

/** Binds `beam NAME from THING [PORT]` and its legs. */
export function bindBeam(node: Node, beams: Map<string, Beam>, scope: Scope): void {
  const { line } = node;
  const { sink, setup } = scope;
  const name = line.subject?.kind === 'phrase' ? line.subject.words[0]! : undefined;
  if (!name) {
    if (line.issue) scope.nameless = true;
    else sink.report('name-missing', sink.place(node, line.head!), 'beam', { kind: 'beam', words: '' }, setup);
    return;
  }
  oneWord(line.subject, 'beam', node, sink, setup);
  const at = sink.place(node, name);
  if (beams.has(name.text)) {
    sink.report('name-taken', at, name.text, { name: name.text, kind: 'beam', line: beams.get(name.text)!.at.line + 1 }, setup);
    return;
  }
  const start = line.clauses.find(c => c.word.text === 'from');
  if (!start && !line.issue) sink.report('value-missing', at, name.text, { phrase: 'the laser or splitter that it starts from, as in “from S1 through”', of: `beam ${name.text}`, prevents: '' }, setup);
  const [source, port] = start?.value ? target(start.value, node, 'a laser, or a splitter with its port', scope) : [];
  const from = source ? scope.thing(source, node, 'a laser, or a splitter with its port') : undefined;
  if (from && port) checkPort(port, from.kind.ports, from.kind.article, node, scope);
  if (from && !port && !line.issue && from.kind.light !== 'source' && from.kind.ports.length > 0) {
    sink.report('port-missing', sink.place(node, source!), name.text, { thing: from.id, ports: from.kind.ports.join(', ') }, setup);
  }
  const beam: Beam = {
    id: name.text, legs: [], node, at,
    ...(from ? { from } : {}), ...(port ? { port: port.text } : {}), ...(node.doc !== undefined ? { doc: node.doc } : {}),
  };
  for (const legNode of node.legs) bindLegs(legNode, beam, scope);
  beams.set(name.text, beam);
}

/** Adds a leg to its beam, unless it is the leg before it once more. */
function bindLegs(node: Node, beam: Beam, scope: Scope): void {
  const { sink, setup } = scope;
  const leg = bindLeg(node, beam.legs.length + 1, beam, scope);
  const before = beam.legs[beam.legs.length - 1];
  const thing = before?.target;
  if (thing && leg.target === thing) {
    sink.report('written-twice', leg.at, leg.id, { phrase: `-> ${leg.to}`, of: beam.id, line: before.at.line + 1 }, setup);
    return;
  }
  // Where the light can go on in several ways, the leg says in which one it does.
  if (thing && before.port === undefined && thing.kind.light !== 'recorded' && thing.kind.ports.length > 0) {
    sink.report('port-missing', before.at, leg.id, { thing: thing.id, ports: thing.kind.ports.join(', ') }, setup);
  }
  beam.legs.push(leg);
  if (leg.target) leg.target.reached++;
}

function bindLeg(node: Node, n: number, beam: Beam, scope: Scope): Leg {
  const { line } = node;
  const { sink } = scope;
  const [word, port] = line.subject ? target(line.subject, node, 'the name of what the light meets next', scope) : [];
  // Before a colon a word of the language is read as a name.
  const isReserved = word !== undefined && RESERVED.has(word.text);
  if (isReserved && !line.issue) sink.report('reserved-name', sink.place(node, word), word.text, { word: word.text, declared: false, leg: line.value ? line.text.slice(line.value.start, line.value.end) : '' }, scope.setup);
  const thing = word && !isReserved ? scope.thing(word, node) : undefined;
  if (thing && port && !isTwoWords(thing, port)) checkPort(port, thing.kind.ports, thing.kind.article, node, scope);
  const length = readLegLength(node, `${beam.id}.${n}`, scope);
  return new LegOf(sink.uri, beam, n, node, thing, word, port, length);
}

/** The length behind the colon of a leg. */
export function readLegLength(node: Node, leg: string, scope: Scope): Bound | undefined {
  const { line } = node;
  const read = line.value && readFact(line, line.value, LEG_LENGTH);
  if (read && 'problem' in read) { if (!line.issue) scope.sink.value(read.problem, node, `${leg}.length`, scope.setup); }
  return read && 'ok' in read ? read.ok : undefined;
}

/** Most of a long page is legs, and mostly nobody asks for their places: these are made when somebody does. */
class LegOf implements Leg {
  constructor(
    private readonly uri: string, readonly beam: Beam, readonly n: number, readonly node: Node, readonly target: Thing | undefined,
    private readonly word: Word | undefined, private readonly portWord: Word | undefined, readonly length: Bound | undefined,
  ) {}
  get id(): string { return `${this.beam.id}.${this.n}`; }
  get to(): string { return this.word?.text ?? ''; }
  get port(): string | undefined { return this.portWord?.text; }
  get at(): Place { return placeIn(this.uri, this.node, this.word ?? this.node.line.subject ?? { start: 0, end: this.node.line.text.length }); }
  get lengthAt(): Place | undefined { return this.node.line.value && placeIn(this.uri, this.node, this.node.line.value); }
}

/** `S1 through`: the thing, and the port behind it. */
function target(e: Expr, node: Node, wanted: string, { sink, setup }: Scope): [Word | undefined, Word | undefined] | [] {
  const found = (s: Span): string => node.line.text.slice(s.start, s.end);
  if (e.kind === 'row' && e.items[0]!.kind === 'phrase' && e.items[1]!.kind === 'number' && node.line.colon === undefined) {
    const [name, length] = [e.items[0], { start: e.items[1].start, end: e.end }];
    if (!node.line.issue) sink.report('value-expected', sink.place(node, length), found(e), { found: found(length), wanted, colon: `${found(name)}: ${found(length)}` }, setup);
    return [name.words[0], name.words[1]];
  }
  if (e.kind !== 'phrase') {
    if (!node.line.issue) sink.report('value-expected', sink.place(node, e), found(e), { found: found(e), wanted }, setup);
    return [];
  }
  const rest = e.words[2] && { start: e.words[2].start, end: e.end };
  if (rest && !node.line.issue) sink.report('unexpected-text', sink.place(node, rest), found(rest), { found: found(rest) }, setup);
  return [e.words[0], e.words[1]];
}

/** A name that was declared with two words is reported there, and not wherever it is used. */
const isTwoWords = (thing: Thing, next: Word): boolean => openingWords(thing.node).some((w, i, all) => w.text === thing.id && all[i + 1]?.text === next.text);

function checkPort(port: Word, ports: readonly string[], article: string, node: Node, scope: Scope): void {
  if (ports.includes(port.text) || port.text === 'through') return;
  const suggestion = nearest(port.text, ports);
  scope.sink.report('unknown-port', scope.sink.place(node, port), port.text, { port: port.text, article, ports: ports.join(', '), ...(suggestion ? { suggestion } : {}) }, scope.setup);
}
