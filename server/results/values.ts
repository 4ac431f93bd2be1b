/** Cells of written values: lets, facts of things, places of things. Made when first asked for. */
import type { Expr, Span } from '../../grammar/tree.ts';
import { parseLine } from '../../grammar/parse-line.ts';
import { checkDim, checkSign, describe, isLiteral, readLiteral, readNumber, readQuantity, readSpread, type ValueProblem } from '../model/literal.ts';
import type { Bound, BoundFact, Let, Place, Problem, Setup, Thing } from '../model/model.ts';
import type { Quantity, Spread } from '../model/quantity.ts';
import { nearest } from '../model/scope.ts';
import { factIndex, factsOf } from '../model/things/index.ts';
import type { Fact } from '../model/things/kind.ts';
import { dimName, LENGTH, NUMBER, parseUnit, type Dim } from '../model/units.ts';
import { compile, FUNCTIONS } from './expression.ts';
import type { Cell, Graph, Missing } from './graph.ts';
import { along, DISTANCE, weighted } from './rules/lengths.ts';

const MM = parseUnit('mm')!;
const SAME = weighted('same', 'the value of that name', [1]);
const MAX_CHAIN = 200;
/** Height of the beams when nothing is written; only differences of height matter to lengths. */
const BEAM_HEIGHT = 0.12;

export type Position = readonly [Cell, Cell, Cell];

export class Values {
  readonly problems: Problem[] = [];
  private readonly lets = new Map<string, Cell | undefined>();
  private readonly facts = new Map<string, Cell | undefined>();
  private readonly positions = new Map<Thing, Position | undefined>();
  private chain: string[] = [];
  private height: Cell | undefined;

  constructor(readonly setup: Setup, readonly graph: Graph, private readonly result: (name: string) => Cell | undefined) {}

  report(code: string, at: Place, subject: string, data: Problem['data']): void {
    this.problems.push({ code, at, subject, setup: this.setup.name, data });
  }

  /** The cell of an expression. `at` is where it stands; the line's text is that of its node. */
  expression(expr: Expr, at: Place, name: string, words: string): Cell | undefined {
    const place = (span: Span): Place => ({ uri: at.uri, line: at.line, start: span.start, end: span.end });
    const cell = compile(expr, {
      graph: this.graph, name, words, place,
      problem: (p: ValueProblem) => this.report(p.code, place(p.span), name, p.data),
      names: {
        cell: n => this.named(n),
        unknown: (n, span) => {
          if (this.chain.length > 0 && this.broken.has(n)) return;
          const suggestion = nearest(n, [...this.setup.lets.keys(), ...this.setup.things.keys(), ...FUNCTIONS.keys()]);
          if (!this.broken.has(n)) this.report('unknown-name', place(span), n, { name: n, wanted: 'a value', ...(suggestion ? { suggestion } : {}) });
          this.broken.add(n);
        },
      },
    });
    // What is only the name of another value still has its own.
    return !cell || cell.name === name ? cell : this.graph.derive(name, SAME, [cell], cell.dim, words, { at, ...(cell.unit ? { unit: cell.unit } : {}) });
  }
  private readonly broken = new Set<string>();

  /** A `let`, a fact of a thing (`R1.focal length`), or a result. */
  private named(name: string): Cell | undefined {
    const own = this.setup.lets.get(name);
    if (own) return this.letCell(own);
    const dot = name.indexOf('.');
    const thing = dot > 0 ? this.setup.things.get(name.slice(0, dot)) : undefined;
    if (thing) {
      const phrase = name.slice(dot + 1);
      const cell = this.fact(thing, phrase);
      if (cell) return cell;
      // What is written and cannot be read was reported where it stands.
      const written = thing.facts.get(phrase)?.value;
      if (written ? written.kind === 'formula' : this.isWritten(thing, phrase)) this.broken.add(name);
    }
    return this.result(name);
  }

  letCell(l: Let): Cell | undefined {
    if (this.lets.has(l.name)) return this.lets.get(l.name);
    return this.linked(l.name, l.at, () => {
      const cell = this.expression(l.expr, l.exprAt, l.name, l.name);
      this.lets.set(l.name, cell);
      return cell;
    });
  }

  /** A value that may be computed from others: none of them may lead back to it. */
  private linked(name: string, at: Place, make: () => Cell | undefined): Cell | undefined {
    const ring = this.chain.includes(name);
    if (ring || this.chain.length >= MAX_CHAIN) {
      const root = ring ? name : this.chain[0]!;
      if (!this.broken.has(root)) this.report('value-ring', at, name, { ring: ring ? [...this.chain.slice(this.chain.indexOf(name)), name].join(' → ') : '', limit: MAX_CHAIN });
      for (const n of [...this.chain, name]) this.broken.add(n);
      return undefined;
    }
    this.chain.push(name);
    const cell = make();
    this.chain.pop();
    if (!cell) this.broken.add(name);
    return cell;
  }

  /** The cell of a fact: as written, from the inventory, or assumed. Undefined where it is neither, or has a problem. */
  fact(thing: Thing, phrase: string): Cell | undefined {
    const key = `${thing.id}.${phrase}`;
    if (this.facts.has(key)) return this.facts.get(key);
    const def = factIndex(factsOf(thing.kind)).get(phrase);
    const bound = thing.facts.get(phrase);
    const make = (): Cell | undefined => {
      const cell = bound ? this.bound(bound.value, bound.at, key, `${phrase} of ${thing.id}`, factDim(bound.fact), bound)
        : def?.assumed ? this.assumed(key, def, `${phrase} of ${thing.id}`) : undefined;
      this.facts.set(key, cell);
      return cell;
    };
    return bound?.value.kind === 'formula' ? this.linked(key, bound.at, make) : make();
  }

  /** A choice of words, as written or assumed. */
  words(thing: Thing, phrase: string): string | undefined {
    const v = thing.facts.get(phrase)?.value;
    if (v?.kind === 'words') return v.text;
    return v ? undefined : factIndex(factsOf(thing.kind)).get(phrase)?.assumed?.text;
  }

  /** True where a fact is written, even if it could not be read. */
  isWritten(thing: Thing, phrase: string): boolean {
    return thing.facts.has(phrase) || thing.node.children.some(c => c.line.text.trim().startsWith(`${phrase}:`));
  }

  bound(value: Bound, at: Place, name: string, words: string, dim: Dim, fact?: BoundFact): Cell | undefined {
    switch (value.kind) {
      case 'quantity': return this.graph.input(name, value.quantity, 'written', words, { at });
      case 'unknown': return this.graph.missing(name, dim, words, { code: 'unknown-asked', why: `${words} is written ?`, at });
      case 'ratio': return this.graph.input(name, { value: value.value, dim: NUMBER }, 'written', words, { at });
      case 'formula': {
        const cell = this.expression(value.expr, at, name, words);
        if (!cell || cell.missing) return cell;
        const wrong = checkDim(value.expr, { dim: cell.dim, ...(cell.unit ? { unit: cell.unit } : {}) }, dim)
          ?? checkSign(value.expr, { value: this.graph.value(cell)!, dim }, fact?.fact.type.type === 'quantity' ? (fact.fact.type.sign ?? 'any') : 'positive', fact?.fact.type.type === 'quantity' ? fact.fact.type.within : undefined);
        if (!wrong) return cell;
        this.report(wrong.problem.code, { ...at, start: wrong.problem.span.start, end: wrong.problem.span.end }, name, wrong.problem.data);
        return undefined;
      }
      default: return undefined;
    }
  }

  private assumed(key: string, fact: Fact, words: string): Cell | undefined {
    const { text, why } = fact.assumed!;
    const read = readLiteral(parseLine(`a: ${text}`).value!, fact.type);
    if ('problem' in read || read.ok.kind !== 'quantity') return undefined;
    return this.graph.input(key, read.ok.quantity, 'assumed', words, { reason: why });
  }

  missing(name: string, dim: Dim, words: string, why: Missing): Cell {
    return this.graph.missing(name, dim, words, why);
  }

  /** Where a thing stands, as three cells; undefined where the text doesn't say. */
  position(thing: Thing): Position | undefined {
    if (this.positions.has(thing)) return this.positions.get(thing);
    this.positions.set(thing, undefined);
    const p = thing.placement;
    const found = p?.at ? this.atPosition(thing, p.at.expr, p.at.place) : p?.on ? this.onPosition(thing) : undefined;
    this.positions.set(thing, found);
    return found;
  }

  private atPosition(thing: Thing, e: Expr, at: Place): Position | undefined {
    const group = e.kind === 'tolerance' ? e.value : e;
    if (group.kind !== 'group' || group.items.length < 2 || group.items.length > 3) {
      this.report('wrong-value', at, thing.id, { found: describe(e), wanted: 'a place such as (100, 200) mm' });
      return undefined;
    }
    const unit = group.unit ? parseUnit(group.unit.text) : undefined;
    if (group.unit && unit?.dim !== LENGTH) {
      this.report(unit ? 'wrong-unit' : 'unknown-unit', { ...at, start: group.unit.start, end: group.unit.end }, thing.id, unit ? { found: dimName(unit.dim), wanted: 'a length', units: 'mm, cm, m', unit: unit.text } : { unit: group.unit.text, suggestion: 'mm' });
      return undefined;
    }
    if (!group.unit && group.items.every(i => i.kind === 'number' && !i.unit)) {
      const written = thing.node.line.text.slice(group.start, group.end);
      this.report('missing-unit', { ...at, start: group.start, end: group.end }, thing.id, { wanted: 'a place', units: 'mm, cm, m', written, suggestion: 'mm' });
      return undefined;
    }
    const spread = e.kind === 'tolerance' ? this.spreadOf(e, at) : undefined;
    if (e.kind === 'tolerance' && !spread) return undefined;
    const cells: Cell[] = [];
    for (const [i, item] of group.items.entries()) {
      const name = `${thing.id}.${'xyz'[i]!}`;
      const words = `${'xyz'[i]!} of ${thing.id}`;
      const place = { ...at, start: item.start, end: item.end };
      if (isLiteral(item) && item.kind !== 'unknown') {
        const q = readQuantity(item, unit);
        const wrong = 'problem' in q ? q : checkDim(item, q.ok, LENGTH);
        if (wrong) { this.report(wrong.problem.code, place, thing.id, wrong.problem.data); return undefined; }
        cells.push(this.graph.input(name, { ...(spread ? { spread } : {}), ...(q as { ok: Quantity }).ok }, 'written', words, { at: place }));
        continue;
      }
      const c = this.expression(item, at, name, words);
      if (!c) return undefined;
      if (c.dim === NUMBER && !c.missing && unit) cells.push(this.graph.derive(`${name} in ${unit.text}`, weighted('in a unit', `a · ${unit.text}`, [unit.factor]), [c], LENGTH, words, { unit, at: place }));
      else if (c.dim === LENGTH || c.missing) cells.push(c);
      else {
        this.report(c.dim === NUMBER ? 'missing-unit' : 'wrong-unit', place, thing.id, { found: dimName(c.dim), wanted: 'a length', units: 'mm, cm, m', written: '', suggestion: 'mm' });
        return undefined;
      }
    }
    if (cells.length < 3) cells.push(this.beamHeight());
    return [cells[0]!, cells[1]!, cells[2]!];
  }

  private spreadOf(e: Expr & { kind: 'tolerance' }, at: Place): Spread | undefined {
    const by = readNumber(e.by);
    const wrong = 'problem' in by ? by : checkDim(e.by, by.ok, LENGTH);
    const read = wrong ?? readSpread(e, { value: 0, dim: LENGTH }, (by as { ok: Quantity }).ok);
    if (!('problem' in read)) return read.ok;
    this.report(read.problem.code, { ...at, start: read.problem.span.start, end: read.problem.span.end }, 'placement', read.problem.data);
    return undefined;
  }

  private beamHeight(): Cell {
    const fact = this.setup.facts.get('beam height');
    return this.height ??= (fact ? this.bound(fact.value, fact.at, 'beam height', 'beam height', LENGTH) : undefined)
      ?? this.graph.input('beam height', { value: BEAM_HEIGHT, dim: LENGTH, unit: MM }, 'assumed', 'beam height', { reason: 'all beams run at one height' });
  }

  /** `on A -> B by d` */
  private onPosition(thing: Thing): Position | undefined {
    const { from, to, by } = thing.placement!.on!;
    const [a, b] = [this.setup.things.get(from), this.setup.things.get(to)];
    const [pa, pb] = [a && this.position(a), b && this.position(b)];
    const d = by && this.expression(by.expr, by.place, `${thing.id}.by`, `distance of ${thing.id} from ${from}`);
    const wrong = d && !d.missing && checkDim(by.expr, { dim: d.dim, ...(d.unit ? { unit: d.unit } : {}), value: this.graph.value(d)! }, LENGTH);
    if (wrong) this.report(wrong.problem.code, by.place, thing.id, wrong.problem.data);
    if (!pa || !pb || !d || wrong) return undefined;
    const span = this.graph.derive(`${from} → ${to}`, DISTANCE, [...pa, ...pb], LENGTH, `distance of ${from} and ${to}`);
    if (!span.missing && !d.missing && (this.graph.value(d)! < 0 || this.graph.value(d)! > this.graph.value(span)!)) {
      this.report('impossible-value', by.place, thing.id, { why: `the leg from ${from} to ${to} is only ${Math.round(this.graph.value(span)! * 1000)} mm long` });
      return undefined;
    }
    const axis = (i: 0 | 1 | 2): Cell => this.graph.derive(`${thing.id}.${'xyz'[i]!}`, along(i), [...pa, ...pb, d], LENGTH, `${'xyz'[i]!} of ${thing.id}`);
    return [axis(0), axis(1), axis(2)];
  }
}

const factDim = (f: Fact): Dim => (f.type.type === 'quantity' ? f.type.dim : NUMBER);
