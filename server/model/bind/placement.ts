/** Where a thing stands and which way it faces, as its clauses say: `at`, `on … by`, `beyond … by … turning`, `facing`, `heading`, `tilted`. */
import type { Clause, Expr, Node, Span, Word } from '../../../grammar/tree.ts';
import { describe } from '../literal.ts';
import type { Named, Placement, Turn, Written } from '../model.ts';
import type { Scope } from '../scope.ts';
import { limitClauses, limitsOf } from './asked.ts';

/** What each clause word says; of two that say the same, one counts. */
export const SAYS: ReadonlyMap<string, Slot> = new Map<string, Slot>([
  ['at', 'place'], ['on', 'place'], ['beyond', 'place'], ['by', 'distance'], ['turning', 'turn'], ['heading', 'direction'], ['facing', 'direction'], ['tilted', 'tilt'],
]);
export type Slot = 'place' | 'distance' | 'turn' | 'direction' | 'tilt';

export const TURNS: readonly Turn[] = ['left', 'right', 'up', 'down', 'back'];

/** The clauses of a declaration, or of a line of a variant. Names in them are looked up when all things are known: see {@link checkPlacement}. */
export function bindPlacement(node: Node, scope: Scope): Placement | undefined {
  const { clauses } = node.line;
  return clauses.length === 0 ? undefined : new Clauses(node, scope).read();
}

/** A placement with what another one says instead: of where it stands, and of which way it faces. */
export function replaced(before: Placement | undefined, by: Placement): Placement {
  const { at, on, beyond, broken, heading, facing, tilted } = before ?? {};
  const moves = [by.at, by.on, by.beyond, by.broken].some(Boolean);
  const turns = [by.heading, by.facing].some(Boolean);
  return {
    ...(moves ? {} : { ...(at ? { at } : {}), ...(on ? { on } : {}), ...(beyond ? { beyond } : {}), ...(broken ? { broken } : {}) }),
    ...(turns ? {} : { ...(heading ? { heading } : {}), ...(facing ? { facing } : {}) }), ...(tilted ? { tilted } : {}), ...by,
  };
}

class Clauses {
  private readonly said = new Map<Slot, Clause>();

  constructor(private readonly node: Node, private readonly scope: Scope, private readonly clauses: readonly Clause[] = node.line.clauses) {}

  read(): Placement {
    for (const c of this.own()) {
      const slot = SAYS.get(c.word.text);
      if (!slot) { this.stray(c); continue; }
      const before = this.said.get(slot);
      if (before) this.report('placed-twice', c.word, { first: before.word.text, second: c.word.text });
      else this.said.set(slot, c);
    }
    const place = this.said.get('place');
    const has = (word: string): boolean => this.clauses.some(c => c.word.text === word);
    const [by, turn, tilt] = [this.said.get('distance'), this.said.get('turn'), this.written('tilt')];
    if (by && !has('on') && !has('beyond')) this.incomplete(by, 'says how far, and not from where', 'beyond M1 by 500 mm');
    if (turn && !has('beyond')) this.incomplete(turn, 'says how the light is turned, and not where', 'beyond M1 by 500 mm turning left');
    return { ...this.place(place), ...this.direction(this.said.get('direction')), ...(tilt ? { tilted: tilt } : {}) };
  }

  private place(c: Clause | undefined): Pick<Placement, 'at' | 'on' | 'beyond' | 'broken'> {
    if (!c) return {};
    if (c.word.text === 'at') {
      const at = this.written('place');
      return at ? { at } : { broken: true };
    }
    const example = c.word.text === 'on' ? 'on M1 -> P1 by 60 mm' : 'beyond M1 by 500 mm';
    const names = (c.value?.kind === 'path' ? c.value.items : c.value ? [c.value] : []).map(e => this.named(e));
    if (names.length !== (c.word.text === 'on' ? 2 : 1) || names.includes(undefined)) {
      if (c.value) this.report('wrong-value', c.value, { found: describe(c.value), wanted: c.word.text === 'on' ? 'two things, as in on M1 -> P1 by 60 mm' : 'one thing, as in beyond M1 by 500 mm' });
      return { broken: true };
    }
    const by = this.written('distance');
    if (!by) {
      if (!this.said.has('distance')) this.incomplete(c, 'does not say how far', example);
      return { broken: true };
    }
    const [from, to] = names as [Named, Named];
    const turning = this.turning();
    return c.word.text === 'on' ? { on: { from, to, by } } : { beyond: { from, by, ...(turning ? { turning } : {}) } };
  }

  private turning(): Turn | Written | undefined {
    const w = this.written('turn');
    const word = w && single(w.expr)?.text;
    return TURNS.find(t => t === word) ?? w;
  }

  private direction(c: Clause | undefined): Pick<Placement, 'heading' | 'facing'> {
    if (!c?.value) return {};
    if (c.word.text === 'heading') return { heading: this.written('direction')! };
    const facing = this.named(c.value);
    if (!facing) this.report('wrong-value', c.value, { found: describe(c.value), wanted: 'the name of a thing, or beam; an angle is written heading 30°' });
    return facing ? { facing: facing.name === 'beam' ? 'beam' : facing } : {};
  }

  /** What stands behind the word that says so, with the limits of a `?`. */
  private written(slot: Slot): Written | undefined {
    const c = this.said.get(slot);
    if (!c?.value) return undefined;
    return { expr: c.value, at: this.scope.sink.place(this.node, c.value), line: this.node.line.text, ...limitsOf(c.value, this.clauses, this.clauses.indexOf(c) + 1) };
  }

  private named(e: Expr): Named | undefined {
    const w = single(e);
    return w && { name: w.text, at: this.scope.sink.place(this.node, w) };
  }

  /** The clauses but those behind a `?` that say between which values it is to be found, and in which steps. */
  private *own(): Generator<Clause> {
    for (let i = 0; i < this.clauses.length; i++) {
      const c = this.clauses[i]!;
      yield c;
      if (c.value?.kind === 'unknown') i += limitClauses(this.clauses, i + 1).length;
    }
  }

  private stray(c: Clause): void {
    this.report('unexpected-text', c, { found: this.node.line.text.slice(c.start, c.end) });
  }

  private incomplete(c: Clause, lacks: string, example: string): void {
    this.report('placement-incomplete', c.word, { word: c.word.text, lacks, example });
  }

  /** Where the line could not be read to its end, what seems to be missing may stand there. */
  private report(code: string, span: Span, data: Record<string, string>): void {
    const { node, scope } = this;
    if (!node.line.issue) scope.sink.report(code, scope.sink.place(node, span), placedName(node), data, scope.setup);
  }
}

/** The thing that a line is about: the last word before its clauses. */
function placedName({ line }: Node): string {
  const { subject, head } = line;
  return (subject?.kind === 'phrase' ? subject.words[subject.words.length - 1]!.text : head?.text) ?? '';
}

const single = (e: Expr): Word | undefined => (e.kind === 'phrase' && e.words.length === 1 ? e.words[0] : undefined);

/** Looks up the names in the placements: `facing whelk`, `on M1 -> P1`, `beyond M1`. */
export function checkPlacement(node: Node, scope: Scope): void {
  for (const c of node.line.clauses) {
    if (!c.value || !['on', 'beyond', 'facing'].includes(c.word.text)) continue;
    const items = c.value.kind === 'path' ? c.value.items : [c.value];
    for (const e of items) {
      const w = single(e);
      if (!w || (c.word.text === 'facing' && w.text === 'beam')) continue;
      const found = scope.thing(w, node);
      if (found && w.text.includes('.')) scope.sink.report('wrong-value', scope.sink.place(node, w), w.text, { found: 'an item of an inventory, which stands nowhere', wanted: 'a thing of this setup' }, scope.setup);
    }
  }
}
