/** Things that stand in one another: no table has room for that. In plain numbers. */
import type { Thing } from '../../model/model.ts';
import { formOf } from '../object/object.ts';
import { finder, spanRound } from '../near.ts';
import { gapBetween, type Body } from '../rules/table.ts';
import type { TableContext } from './context.ts';
import { likely, sure, type Standing } from './standing.ts';

/** Two things that stand in one place. */
export interface Overlap {
  readonly one: Thing;
  /** the later of the two in the text */
  readonly other: Thing;
  /** by what is written of them, whatever their mounts are; else by mounts of the usual size */
  readonly sure: boolean;
  /** from the one to the other, m: below zero by how much they stand in one another */
  readonly gap: number;
  /** half of the 95 % band of that, by what is written of their places, m */
  readonly give: number;
}

/** What touches, stands in nothing: a plate on a plate, a thing that leans on it, m. */
const TOUCHES = 5e-4;
/** Mounts differ by that much from the usual ones, and more: what they overlap by less is not worth a word, m. */
const MOUNTS_DIFFER = 0.01;

/** @param give half of the 95 % band of where a thing stands, m */
export function overlapsOf(things: readonly Standing[], give: (t: Thing) => number, context: TableContext): Overlap[] {
  const found: Overlap[] = [];
  const all = things.map((s, i) => ({ s, i, give: give(s.thing) }));
  const near = finder(all, ({ s, give: own }) => spanRound(s.at, s.bound + own));
  for (const { s: a, i, give: own } of all) {
    for (const { s: b, i: k, give: others } of near(spanRound(a.at, a.bound + own))) {
      const loose = own + others;
      const reach = a.bound + b.bound + loose;
      if (k <= i || (a.at[0] - b.at[0]) ** 2 + (a.at[1] - b.at[1]) ** 2 + (a.at[2] - b.at[2]) ** 2 > reach * reach) continue;
      const written = gapBetween(body(a, true, context), body(b, true, context), loose);
      const isSure = written < -TOUCHES;
      if (isSure || written < loose - TOUCHES) { found.push({ one: a.thing, other: b.thing, sure: true, gap: written, give: loose }); continue; }
      // Cards, stops and shutters hang, or stand on feet of their own: their mounts are anything.
      if (![a, b].every(s => s.thing.kind.footprint!.onTable)) continue;
      const guessed = gapBetween(body(a, false, context), body(b, false, context), 0);
      if (guessed < -MOUNTS_DIFFER) found.push({ one: a.thing, other: b.thing, sure: false, gap: guessed, give: loose });
    }
  }
  return found;
}

/** Of what is rounded the corners of its box are empty. */
function body(s: Standing, written: boolean, { values }: TableContext): Body {
  if (s.form.face !== 'body') return { solid: written ? sure(s) : likely(s)[0]! };
  const { shape } = formOf(s.thing, values);
  return { solid: written ? sure(s) : likely(s)[0]!, rounded: shape === 'rounded' || shape === 'sphere' };
}
