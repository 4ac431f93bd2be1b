/** Where a thing stands, as its clauses say: `at`, `on … by`, `beyond … by … turning`, `facing`, `heading`, `tilted`. */
import type { Expr, Node, Word } from '../../grammar/tree.ts';
import { checkDim, isLiteral, readQuantity } from './literal.ts';
import type { Placement } from './model.ts';
import type { Scope } from './scope.ts';
import { ANGLE, LENGTH, type Dim } from './units.ts';

/** What the clauses take that are kept and not computed yet. */
const PENDING: ReadonlyMap<string, Dim> = new Map([['heading', ANGLE], ['tilted', ANGLE], ['by', LENGTH]]);

/** Clause words of a declaration. Names in them are looked up when all things are known: see {@link checkPlacement}. */
export function bindPlacement(node: Node, scope: Scope): Placement | undefined {
  const { clauses } = node.line;
  if (clauses.length === 0) return undefined;
  let at: Placement['at'];
  let on: Placement['on'];
  const pending: string[] = [];
  for (let i = 0; i < clauses.length; i++) {
    const c = clauses[i]!;
    if (!c.value) continue;
    const place = scope.sink.place(node, c.value);
    if (c.word.text === 'at') at = { expr: c.value, place };
    else if (c.word.text === 'on' && c.value.kind === 'path' && c.value.items.length === 2) {
      const [from, to] = c.value.items.map(single);
      const next = clauses[i + 1];
      const by = next?.word.text === 'by' && next.value ? { expr: next.value, place: scope.sink.place(node, next.value) } : undefined;
      if (by) i++;
      if (from && to) on = { from: from.text, to: to.text, place, ...(by ? { by } : {}) };
    } else {
      const wanted = PENDING.get(c.word.text);
      const read = wanted && isLiteral(c.value) ? readQuantity(c.value) : undefined;
      const wrong = read && ('problem' in read ? read : checkDim(c.value, read.ok, wanted!));
      if (wrong) scope.sink.value(wrong.problem, node, c.word.text, scope.setup);
      if (c.word.text !== 'by' && c.word.text !== 'turning') pending.push(c.word.text);
    }
  }
  return { pending, ...(at ? { at } : {}), ...(on ? { on } : {}) };
}

const single = (e: Expr): Word | undefined => (e.kind === 'phrase' && e.words.length === 1 ? e.words[0] : undefined);

/** Looks up the names in the placements: `facing whelk`, `on M1 -> P1`, `beyond M1`. */
export function checkPlacement(node: Node, scope: Scope): void {
  for (const c of node.line.clauses) {
    if (!c.value || !['on', 'beyond', 'facing'].includes(c.word.text)) continue;
    const items = c.value.kind === 'path' ? c.value.items : [c.value];
    for (const e of items) {
      const w = single(e);
      if (w && !(c.word.text === 'facing' && w.text === 'beam')) scope.thing(w, node);
    }
  }
}
