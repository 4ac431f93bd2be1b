/** What a reading is a reading of, and where it was taken: the part of its line before the colon. */
import type { Expr, Node, Span, Word } from '../../../grammar/tree.ts';
import { oneOf } from '../literal.ts';
import type { Beam, Let, Measured, Spot, Thing } from '../model.ts';
import { dimOf, PATH_OR_LIGHT } from './reading-values.ts';
import { nearest, type Scope } from '../scope.ts';
import { dimName, LENGTH, LIGHT, NUMBER, POWER } from '../units.ts';

/** Roles by which an arm may be called where one of the setup has it. */
export const ROLES: readonly string[] = ['reference', 'object'];
export const SPOTS: readonly Spot[] = ['centre', 'upper left', 'upper right', 'lower left', 'lower right'];
/** Where light or an image is caught without a thing of the setup. */
export const CARDS: readonly string[] = ['screen', 'card'];

export interface Around {
  readonly beams: ReadonlyMap<string, Beam>;
  readonly lets: ReadonlyMap<string, Let>;
  readonly scope: Scope;
  /** names that were reported: one slip is one finding, however often the name is used */
  readonly missed: Set<string>;
  /** the instrument as written */
  readonly by: Word | undefined;
}

/** Undefined where it cannot be understood; that is reported. */
export function bindMeasured(node: Node, words: string, around: Around): Measured | undefined {
  const subject = node.line.subject!;
  const { scope } = around;
  const unclear = (span: Span, why: string, suggestion?: string): void => {
    if (!node.line.issue) scope.sink.report('reading-unclear', scope.sink.place(node, span), words, { words: node.line.text.slice(span.start, span.end), why, ...(suggestion !== undefined ? { suggestion } : {}) }, scope.setup);
  };
  if (subject.kind === 'path') return bindLegs(subject.items, node, around, unclear);
  if (subject.kind === 'binary') {
    const [a, b] = [subject.left, subject.right].map(one);
    if (subject.op !== '-' || !a || !b) { unclear(subject, subject.op === '-' ? 'a difference is that of two arms, each by one name' : 'two arms are not added: the difference is measured, with a minus between them'); return undefined; }
    const [arm, other] = [armNamed(a, node, around), armNamed(b, node, around)];
    const where = place(node, around, unclear);
    if (arm === undefined || other === undefined || !where) return undefined;
    if (arm === other) { unclear(b, 'both sides are the same arm'); return undefined; }
    return inPlane(where, unclear) && onPlate(where, unclear) ? { kind: 'difference', arm, other, plate: where.thing } : undefined;
  }
  if (subject.kind !== 'phrase') { unclear(subject, 'a beam, a run of legs, “dark”, “drift” or “real image” is measured'); return undefined; }
  return bindWord(subject.words, subject, node, words, around, unclear);
}

type Unclear = (span: Span, why: string, suggestion?: string) => void;
const one = (e: Expr): Word | undefined => (e.kind === 'phrase' && e.words.length === 1 ? e.words[0] : undefined);

function bindLegs(items: readonly Expr[], node: Node, { scope }: Around, unclear: Unclear): Measured | undefined {
  const things: Thing[] = [];
  let whole = true;
  for (const e of items) {
    const [word, port, more] = e.kind === 'phrase' ? e.words : [];
    const thing = word && scope.thing(word, node);
    if (!word || more || (thing && port && port.text !== 'through' && !thing.kind.ports.includes(port.text))) unclear(e, 'the ends of legs are things, each by its name');
    if (thing) things.push(thing); else whole = false;
  }
  return whole && things.length === items.length ? { kind: 'legs', things } : undefined;
}

function bindWord(all: readonly Word[], span: Span, node: Node, words: string, around: Around, unclear: Unclear): Measured | undefined {
  const { beams, scope } = around;
  const text = all.map(w => w.text).join(' ');
  const [first, second] = all as [Word, Word | undefined];
  if (second?.text === 'wheel' && all.length === 2) {
    const splitter = scope.thing(first, node, 'the name of a splitter');
    if (splitter && splitter.kind.light !== 'shares') { unclear(first, 'only a splitter has a wheel'); return undefined; }
    return splitter && { kind: 'wheel', splitter };
  }
  if (second && text !== 'real image') {
    const suggestion = scope.find(first.text) ? nearest(text, [`${first.text} wheel`]) : nearest(text, ['real image', ...names(beams)]);
    unclear(span, 'nothing that is measured has a name of these words', suggestion);
    return undefined;
  }
  const where = place(node, around, unclear);
  if (!where) return undefined;
  const beam = beams.get(text);
  switch (beam ? '' : text) {
    case 'dark': return { kind: 'dark', at: where.thing };
    case 'drift': return inPlane(where, unclear) && onPlate(where, unclear) ? { kind: 'drift', plate: where.thing } : undefined;
    case 'real image': return inPlane(where, unclear) ? { kind: 'image', at: where.thing } : undefined;
  }
  const arm = armNamed(first, node, around);
  if (arm === undefined) return undefined;
  return isLight(node, where, around) ? { kind: 'light', arm, at: where.thing, spot: where.spot, facing: where.facing, through: where.through }
    : !inPlane(where, unclear) ? undefined : pathOf(arm, beam, where, node, words, around, unclear);
}

/** The path of an arm; of a beam that ends before a plate, its legs. */
function pathOf(arm: string, beam: Beam | undefined, where: Where, node: Node, words: string, { scope, lets }: Around, unclear: Unclear): Measured | undefined {
  const dim = node.line.value && dimOf(node.line.value, name => lets.get(name)?.expr);
  if (dim && dim !== LENGTH && dim !== NUMBER) {
    const { wanted, units } = PATH_OR_LIGHT;
    const unit = unitText(node.line.value);
    if (!node.line.issue) scope.sink.report('wrong-unit', scope.sink.place(node, node.line.value), words, { found: dimName(dim), wanted, units, unit: unit ?? '' }, scope.setup);
    return undefined;
  }
  const last = beam?.legs[beam.legs.length - 1]?.target;
  const end = where.thing ?? last;
  if (beam?.from && end && end.kind.light !== 'recorded') {
    const n = beam.legs.findIndex(l => l.target === end);
    const things = [beam.from, ...beam.legs.slice(0, n + 1).map(l => l.target)];
    if (n < 0) { unclear(where.span, `the beam ${beam.id} does not come there`); return undefined; }
    return things.every(t => t !== undefined) ? { kind: 'legs', things } : undefined;
  }
  return onPlate(where, unclear) ? { kind: 'arm', arm, plate: where.thing } : undefined;
}
const unitText = (e: Expr): string | undefined => (e.kind === 'number' ? e.unit?.text : e.kind === 'tolerance' ? unitText(e.value) : e.kind === 'unary' ? unitText(e.arg) : e.kind === 'group' ? (e.unit?.text ?? (e.items[0] && unitText(e.items[0]))) : undefined);

/** A bare number is light where the line says where or with what light was read: only a length needs a unit. */
function isLight(node: Node, where: Where, { scope, lets, by }: Around): boolean {
  const { value } = node.line;
  const dim = value && dimOf(value, name => lets.get(name)?.expr);
  if (dim === LIGHT || dim === POWER) return true;
  if (dim === LENGTH) return false;
  const kind = by && (scope.find(by.text)?.kind.word ?? scope.inventories.called(by.text)[0]?.kind.word ?? by.text);
  if (kind === 'string' || kind === 'tape' || kind === 'ruler') return false;
  return where.facing || where.spot !== 'centre' || where.through !== undefined || kind === 'meter' || (dim === NUMBER && where.thing !== undefined);
}

const names = (beams: ReadonlyMap<string, Beam>): string[] => [...beams.keys(), ...ROLES, 'dark', 'drift', 'real image'];

/** The arm or beam of that name, or nothing with a problem at its place. */
function armNamed(word: Word, node: Node, { beams, scope, missed }: Around): string | undefined {
  if (beams.has(word.text) || ROLES.includes(word.text)) return word.text;
  // What cannot be read may have said more of it: `wheel`, or the next end of a leg.
  const cutOff = node.line.issue && node.line.issue.start >= word.end && node.line.text.slice(word.end, node.line.issue.start).trim() === '';
  if (cutOff || scope.nameless || missed.has(word.text)) return undefined;
  missed.add(word.text);
  const thing = scope.find(word.text);
  const suggestion = thing ? undefined : nearest(word.text, names(beams));
  scope.sink.report('unknown-name', scope.sink.place(node, word), word.text, { name: word.text, wanted: 'the name of a beam, “reference” or “object”', ...(suggestion ? { suggestion } : {}) }, scope.setup);
  return undefined;
}

interface Where {
  readonly thing: Thing | undefined;
  readonly spot: Spot;
  readonly facing: boolean;
  readonly through: 'polarizer' | Thing | undefined;
  /** where the place stands */
  readonly span: Span;
  /** where words behind the name of the thing stand */
  readonly rest: Span | undefined;
}

/** `at P1 upper left`, `at P1 through polarizer`, `facing beam`; undefined where a part of it cannot be understood. */
function place(node: Node, around: Around, unclear: Unclear): Where | undefined {
  const { line } = node;
  const { scope } = around;
  const clause = (w: string): Expr | undefined => line.clauses.find(c => c.word.text === w)?.value;
  const [at, towards] = [clause('at'), clause('facing')];
  let ok = true;
  if (towards && !(towards.kind === 'phrase' && towards.words.length === 1 && towards.words[0]!.text === 'beam')) { unclear(towards, 'a meter is held in the plane of the plate, or “facing beam”', 'beam'); ok = false; }
  const nothing: Where = { thing: undefined, spot: 'centre', facing: towards !== undefined, through: undefined, span: at ?? line.subject!, rest: undefined };
  if (!at) return ok ? nothing : undefined;
  if (at.kind !== 'phrase') { unclear(at, 'the place is the name of a thing'); return undefined; }
  const [name, ...more] = at.words as [Word, ...Word[]];
  const card = CARDS.includes(name.text) && !scope.find(name.text);
  const thing = card ? undefined : scope.thing(name, node);
  if (!thing && !card) return undefined;
  if (more.length === 0) return ok ? { ...nothing, thing } : undefined;
  const rest = { start: more[0]!.start, end: at.end };
  const text = more.map(w => w.text).join(' ');
  if (more[0]!.text === 'through' && more.length > 1) {
    const through = behind(more[1]!, node, around, unclear);
    if (more.length > 2) { unclear({ start: more[2]!.start, end: at.end }, 'light is read through one thing'); return undefined; }
    return through && ok ? { ...nothing, thing, through, rest } : undefined;
  }
  const spot = SPOTS.find(s => s === text);
  if (!spot) { unclear(rest, `where on the plate is said as ${oneOf(SPOTS.map(s => `“${s}”`))}`, nearest(text, SPOTS)); return undefined; }
  return ok ? { ...nothing, thing, spot, rest } : undefined;
}

/** What the light is read through: the plain word, or a polarizer of the setup. */
function behind(word: Word, node: Node, { scope }: Around, unclear: Unclear): 'polarizer' | Thing | undefined {
  const thing = scope.find(word.text);
  if (!thing && word.text === 'polarizer') return 'polarizer';
  if (!thing) { unclear(word, 'light is read through a polarizer', nearest(word.text, ['polarizer', ...[...scope.things.values()].filter(t => t.kind.word === 'polarizer').map(t => t.id)])); return undefined; }
  scope.thing(word, node);
  if (thing.kind.word === 'polarizer') return thing;
  unclear(word, 'light is read through a polarizer');
  return undefined;
}

/** Only light differs from spot to spot, and by what it is read through. */
function inPlane({ rest }: Where, unclear: Unclear): boolean {
  if (rest) unclear(rest, 'only light is read at a spot of the plate or through a polarizer');
  return !rest;
}
function onPlate({ thing, span }: Where, unclear: Unclear): boolean {
  const fits = !thing || thing.kind.light === 'recorded';
  if (!fits) unclear(span, `${thing.id} is ${thing.kind.article}, and this is measured at a plate`);
  return fits;
}
