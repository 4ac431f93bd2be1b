/** Cells of written values: lets and facts of things. Made when first asked for. */
import type { Expr, Span } from '../../grammar/tree.ts';
import { parseLine } from '../../grammar/parse-line.ts';
import type { Limit } from '../model/bind/asked.ts';
import { factKey } from '../model/bind/facts.ts';
import { checkDim, checkSign, readLiteral, readUnit, type ValueProblem } from '../model/literal.ts';
import type { Bound, BoundFact, Let, Place, Problem, Setup, Thing } from '../model/model.ts';
import { within } from '../model/place.ts';
import { itemName } from '../model/overrides.ts';
import { nearest } from '../model/scope.ts';
import { assumedFor, factIndex, factsOf } from '../model/things/index.ts';
import type { Quantity } from '../model/quantity.ts';
import type { Assumed, Fact, Sign } from '../model/things/kind.ts';
import { NUMBER, type Dim, type Unit } from '../model/units.ts';
import { compile, FUNCTIONS } from './expression.ts';
import type { Cell, Graph, Missing } from './graph.ts';
import { weighted } from './rules/lengths.ts';

const SAME = weighted('same', 'the value of that name', [1]);
const OF_BATCH = weighted('of a batch', 'that of its batch', [1]);
const MAX_CHAIN = 200;

/** What another page tells of a thing. */
export interface Elsewhere {
  quantity(thing: Thing, phrase: string): { readonly quantity: Quantity; readonly at: Place; readonly words: string } | undefined;
  sizes(thing: Thing, phrase: string): BoundFact | undefined;
}

export class Values {
  readonly problems: Problem[] = [];
  private readonly lets = new Map<string, Cell | undefined>();
  private readonly facts = new Map<string, Cell | undefined>();
  private chain: string[] = [];

  constructor(readonly setup: Setup, readonly graph: Graph, private readonly result: (name: string) => Cell | undefined, private readonly elsewhere?: Elsewhere) {}

  report(code: string, at: Place, subject: string, data: Problem['data']): void {
    this.problems.push({ code, at, subject, setup: this.setup.name, data });
  }

  /** The cell of an expression. `at` is where it stands; the line's text is that of its node. */
  expression(expr: Expr, at: Place, name: string, words: string): Cell | undefined {
    const place = (span: Span): Place => within(at, span);
    const cell = compile(expr, {
      graph: this.graph, name, words, place,
      problem: (p: ValueProblem) => this.report(p.code, place(p.span), name, p.data),
      names: {
        cell: n => this.named(n),
        unknown: (n, span) => {
          if (this.chain.length > 0 && this.broken.has(n)) return;
          const suggestion = nearest(n, [...this.setup.lets.keys(), ...this.setup.things.keys(), ...FUNCTIONS.keys()]);
          if (!this.broken.has(n) && !this.setup.lost) this.report('unknown-name', place(span), n, { name: n, wanted: 'a value', ...(suggestion ? { suggestion } : {}) });
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
      const cell = l.expr.kind === 'unknown' ? this.asked(l.expr, l, l.exprAt, l.name, l.name) : this.expression(l.expr, l.exprAt, l.name, l.name);
      const whole = l.cut && cell?.dim === NUMBER ? undefined : cell;
      this.lets.set(l.name, whole);
      return whole;
    });
  }

  /** A `?` with its limits. Its dimension is that of its unit, or of a limit, where nothing else says it. */
  asked({ unit: word }: Expr & { kind: 'unknown' }, { from, to, by }: Readonly<Partial<Record<Limit, Expr>>>, at: Place, name: string, words: string, known?: { readonly dim: Dim; readonly sign?: Sign; readonly unit?: Unit }): Cell {
    const read = (e: Expr): Cell | undefined => this.expression(e, at, `${name}~`, words);
    const written = word && readUnit(word);
    const unit = written && 'ok' in written ? written.ok : undefined;
    const ends = unit ? [] : [from, to, by].flatMap(e => (e ? read(e) ?? [] : []));
    const dim = known?.dim ?? unit?.dim ?? ends[0]?.dim ?? NUMBER;
    return this.graph.open({ name, dim, words, at, unit: unit ?? known?.unit ?? ends[0]?.unit, sign: known?.sign ?? 'any', limits: () => this.limits({ from, to, by }, read) });
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
      const cell = bound && this.isOfBatch(thing, bound) ? this.ofBatch(thing, phrase, bound)
        : bound ? this.bound(bound.value, bound.at, key, `${phrase} of ${thing.id}`, factDim(bound.fact), bound)
        : this.told(thing, phrase, key) ?? (def ? this.assumed(thing, key, def, `${phrase} of ${thing.id}`) : undefined);
      this.facts.set(key, cell);
      return cell;
    };
    return bound?.value.kind === 'formula' ? this.linked(key, bound.at, make) : make();
  }

  /** What the page of its recording tells of a hologram. */
  private told(thing: Thing, phrase: string, key: string): Cell | undefined {
    const told = this.setup.masters?.has(thing.id) && !this.isWritten(thing, phrase) ? this.elsewhere?.quantity(thing, phrase) : undefined;
    return told && this.graph.input(key, told.quantity, 'written', `${phrase} of ${thing.id}, ${told.words}`, { at: told.at });
  }

  /** Two or three sizes, as written, or as the page of its recording has them. */
  sizes(thing: Thing, phrase: string): BoundFact | undefined {
    return thing.facts.get(phrase) ?? (this.setup.masters?.has(thing.id) && !this.isWritten(thing, phrase) ? this.elsewhere?.sizes(thing, phrase) : undefined);
  }

  /** Things that are one item and of one batch share the error of what the item says. */
  private isOfBatch(thing: Thing, fact: BoundFact): boolean {
    return thing.item?.facts.get(factKey(fact)) === fact && this.words(thing, 'batch') !== undefined;
  }

  private ofBatch(thing: Thing, phrase: string, fact: BoundFact): Cell | undefined {
    const item = itemName(thing)!;
    const name = `${item} of batch ${this.words(thing, 'batch')!}.${phrase}`;
    const words = `${phrase} of ${item}, batch ${this.words(thing, 'batch')!}`;
    const of = this.batches.get(fact) ?? new Map<string, Cell | undefined>();
    this.batches.set(fact, of);
    if (!of.has(name)) of.set(name, this.bound(fact.value, fact.at, name, words, factDim(fact.fact), fact));
    const shared = of.get(name);
    return shared && this.graph.derive(`${thing.id}.${phrase}`, OF_BATCH, [shared], shared.dim, `${phrase} of ${thing.id}`, { at: fact.at, ...(shared.unit ? { unit: shared.unit } : {}) });
  }
  private readonly batches = new Map<BoundFact, Map<string, Cell | undefined>>();

  /** A fact of the setup itself, where it is a number. */
  setupFact(phrase: string): Cell | undefined {
    const key = phrase === 'beam height' ? phrase : `${phrase} as written`;
    if (this.facts.has(key)) return this.facts.get(key);
    const fact = this.setup.facts.get(phrase);
    const make = (): Cell | undefined => {
      const cell = fact && this.bound(fact.value, fact.at, key, key, factDim(fact.fact), fact);
      this.facts.set(key, cell);
      return cell;
    };
    return fact?.value.kind === 'formula' ? this.linked(key, fact.at, make) : make();
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
      case 'unknown': {
        const type = fact?.fact.type.type === 'quantity' ? fact.fact.type : undefined;
        const ends = { from: value.from, to: value.to, by: value.by };
        return this.graph.open({
          name, dim, words, at, unit: value.unit ?? [ends.from, ends.to, ends.by].flatMap(b => (b?.kind === 'quantity' && b.quantity.unit ? [b.quantity.unit] : []))[0],
          sign: type?.sign ?? (type ? 'any' : 'positive'), within: type?.within, usual: () => usualOf(fact?.fact), limits: () => this.limits(ends, end => this.bound(end, at, `${name}~`, words, dim)),
        });
      }
      case 'ratio': return this.graph.input(name, { value: value.value, dim: NUMBER }, 'written', words, { at });
      case 'formula': {
        const cell = this.expression(value.expr, at, name, words);
        if (!cell || cell.missing) return cell;
        const type = fact?.fact.type.type === 'quantity' ? fact.fact.type : undefined;
        const wrong = (type?.or?.includes(cell.dim) ? undefined : checkDim(value.expr, { dim: cell.dim, value: this.graph.value(cell)!, ...(cell.unit ? { unit: cell.unit } : {}) }, dim))
          ?? checkSign(value.expr, { value: this.graph.value(cell)!, dim: cell.dim }, type ? (type.sign ?? 'any') : 'positive', type?.within);
        if (!wrong) return cell;
        this.report(wrong.problem.code, within(at, wrong.problem.span), name, wrong.problem.data);
        return undefined;
      }
      default: return undefined;
    }
  }

  /** Between which values a `?` is to be found, as far as that is written and can be told. */
  limits<E>(ends: Readonly<Partial<Record<Limit, E | undefined>>>, read: (end: E) => Cell | undefined): Readonly<Partial<Record<Limit, number>>> {
    return Object.fromEntries(Object.entries(ends).flatMap(([word, end]) => {
      const cell = end === undefined ? undefined : read(end);
      const value = cell && this.graph.value(cell);
      return value === undefined ? [] : [[word, value]];
    }));
  }

  private assumed(thing: Thing, key: string, fact: Fact, words: string): Cell | undefined {
    const assumed = assumedFor(fact, phrase => this.words(thing, phrase));
    if (!assumed) return undefined;
    const quantity = quantityOf(assumed, fact);
    return quantity && this.graph.input(key, quantity, 'assumed', words, { reason: assumed.why });
  }

  missing(name: string, dim: Dim, words: string, why: Missing): Cell {
    return this.graph.missing(name, dim, words, why);
  }
}

const factDim = (f: Fact): Dim => (f.type.type === 'quantity' ? f.type.dim : NUMBER);

/** What is written first among the usual values of a fact, SI. */
function usualOf(fact: Fact | undefined): number | undefined {
  const text = fact?.usual?.[0];
  const read = fact && text !== undefined ? readLiteral(parseLine(`a: ${text}`).value!, fact.type) : undefined;
  return read && 'ok' in read && read.ok.kind === 'quantity' ? read.ok.quantity.value : undefined;
}

/** Guesses of the vocabulary as quantities: read once. */
const guesses = new WeakMap<Assumed, Quantity | null>();
function quantityOf(assumed: Assumed, fact: Fact): Quantity | undefined {
  let known = guesses.get(assumed);
  if (known === undefined) {
    const read = readLiteral(parseLine(`a: ${assumed.text}`).value!, fact.type);
    known = 'problem' in read || read.ok.kind !== 'quantity' ? null : read.ok.quantity;
    guesses.set(assumed, known);
  }
  return known ?? undefined;
}
