/** An answer in values that can be set: in steps that are written, on whole holes, in whole millimetres, with no more digits than the goals deserve. */
import type { Space } from './space.ts';
import { shareAt, valueAt } from './space.ts';
import { descend } from './descend.ts';
import type { Unknown } from './unknowns.ts';

/** Digits of what may be of many sizes. */
const DIGITS = [2, 3, 4] as const;

/**
 * One unknown after the other is put on its coarsest step on which the others can still meet the conditions as well; the last ones on the finest that the conditions ask for.
 */
export function rounded(space: Space, exact: readonly number[], goOn: () => boolean): number[] {
  const { unknowns } = space;
  const most = Math.max(...unknowns.map(u => levels(u)));
  let t = [...exact];
  const fixed = new Set<number>();
  const best = space.missed(t).map(Math.abs);
  const will = (at: readonly number[]): boolean => space.missed(at).every((m, i) => Math.abs(m) <= Math.max(best[i]! * (1 + 1e-9), space.wishes[i]!.tolerance / space.wishes[i]!.little, 1e-6));
  // What is not held by the conditions has room to look for a place where the others come onto steps too.
  const spare = unknowns.length - space.wishes.filter(w => w.sort === 'equal').length;
  for (let level = 0; level < most; level++) {
    const last = level === most - 1;
    // What lies nearest to a step is put on it first.
    for (const i of unknowns.map((_, k) => k).filter(k => !fixed.has(k)).sort((a, b) => off(unknowns[a]!, t[a]!, level) - off(unknowns[b]!, t[b]!, level))) {
      if (!goOn()) return t;
      const held = new Set(fixed).add(i);
      const others = unknowns.map((_, k) => k).filter(k => !held.has(k));
      const found = around(unknowns[i]!, t[i]!, level, level === 0 && spare > fixed.size && others.length > 0 ? WIDE : 2).map(v => {
        const start = t.map((tk, k) => (k === i ? v : tk));
        return others.length === 0 ? { t: start, worth: space.worth(start) } : descend(space, start, held, goOn);
      }).filter(d => will(d.t) || ((unknowns[i]!.held || (last && others.length === 0)) && d.worth < Infinity));
      const beside = ({ t: at }: { readonly t: readonly number[] }): number => (level === 0 ? others.reduce((s, k) => s + off(unknowns[k]!, at[k]!, level), 0) : 0);
      const pick = found.map(d => ({ t: d.t, beside: beside(d), worth: d.worth })).sort((x, y) => x.beside - y.beside || x.worth - y.worth)[0];
      if (!pick) continue;
      t = [...pick.t];
      fixed.add(i);
    }
  }
  return unknowns.map((u, i) => (fixed.has(i) ? t[i]! : around(u, t[i]!, most - 1, 1)[0] ?? t[i]!));
}

/** How many steps are tried of what could stand elsewhere. */
const WIDE = 24;

const levels = (u: Unknown): number => (u.wide !== undefined ? DIGITS.length : u.steps.length);

/** The values nearest to it that a level allows, as shares of the range. */
function around(u: Unknown, t: number, level: number, count: number): number[] {
  const v = valueAt(u, t);
  const by = stepAt(u, v, level);
  const first = Math.round(v / by) - Math.ceil(count / 2);
  return Array.from({ length: count + 2 }, (_, k) => (first + k) * by).filter(x => x >= u.low - 1e-12 && x <= u.high + 1e-12)
    .sort((a, b) => Math.abs(a - v) - Math.abs(b - v)).slice(0, count).map(x => shareAt(u, x));
}
function stepAt(u: Unknown, v: number, level: number): number {
  return u.wide !== undefined ? 10 ** (Math.floor(Math.log10(Math.abs(v) || 1)) + 1 - DIGITS[Math.min(level, DIGITS.length - 1)]!) : u.steps[Math.min(level, u.steps.length - 1)]!;
}
const off = (u: Unknown, t: number, level: number): number => { const [a] = around(u, t, level, 1); return a === undefined ? Infinity : Math.abs(a - t); };
