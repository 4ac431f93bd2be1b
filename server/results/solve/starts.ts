/** From where answers are looked for: all along the range of one unknown; of several, spread evenly over all of them. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { descend } from './descend.ts';
import type { Space } from './space.ts';
import type { Condition } from './wishes.ts';

/** A place to begin at. Places of one stretch are one answer; between the ends of its `range` all will do. */
export interface Start {
  readonly t: readonly number[];
  readonly stretch: number;
  readonly range?: readonly [number, number];
}

const ALONG = 64;
const EACH = 12;
const MOST = 24;
/** Where in a stretch: its middle is furthest from what would not do. */
const WITHIN = [0.5, 0.25, 0.75, 0.125, 0.375, 0.625, 0.875, 0, 1];

/** The best places come first. */
export function startsIn(space: Space<Condition>, goOn: () => boolean): Start[] {
  return space.unknowns.length === 1 ? along(space) : over(space, goOn);
}

/** One unknown: stretches that do, places between which a condition changes sign, and those that are better than both beside them. */
function along(space: Space<Condition>): Start[] {
  const most = space.unknowns[0]!.wide === undefined ? ALONG : 4 * ALONG;
  const at = Array.from({ length: most + 1 }, (_, i) => i / most);
  const missed = at.map(t => space.missed([t]));
  const worth = missed.map(m => { const s = m.reduce((a, b) => a + b * b, 0); return Number.isFinite(s) ? s : Infinity; });
  const starts: (Start & { readonly worth: number })[] = [];
  for (let i = 0, stretch = 0; i <= most; i++, stretch++) {
    if (worth[i] === 0) {
      const from = i;
      while (i < most && worth[i + 1] === 0) i++;
      const range = [from === 0 ? 0 : edge(space, at[from]!, at[from - 1]!), i === most ? 1 : edge(space, at[i]!, at[i + 1]!)] as const;
      for (const w of WITHIN) starts.push({ t: [range[0] + w * (range[1] - range[0])], stretch, range, worth: 0 });
    }
    const [here, next] = [missed[i]!, missed[i + 1]];
    const better = worth[i]! > 0 && worth[i]! < Infinity && worth[i]! <= (worth[i - 1] ?? Infinity) && worth[i]! <= (worth[i + 1] ?? Infinity);
    if (next && worth[i]! > 0 && worth[i + 1]! > 0 && here.some((m, k) => m * next[k]! < 0)) starts.push({ t: [at[i]! + 0.5 / most], stretch, worth: Math.min(worth[i]!, worth[i + 1]!) });
    else if (better) starts.push({ t: [at[i]!], stretch, worth: worth[i]! });
  }
  return starts.flatMap(s => (s.range ? [s] : around(s, space))).sort((a, b) => a.worth - b.worth);
}

/** A stretch may be narrower than the places that were looked at lie apart: what is led to from one of them shows it. */
function around(start: Start & { readonly worth: number }, space: Space<Condition>): readonly (Start & { readonly worth: number })[] {
  if (space.wishes.some(w => w.sort === 'equal')) return [start];
  const [t] = descend(space, start.t, new Set(), () => true).t as [number];
  const inside = [t, t - NEAR, t + NEAR].find(x => x >= 0 && x <= 1 && space.worth([x]) === 0);
  if (inside === undefined) return [start];
  const end = (way: -1 | 1): number => {
    let does = inside;
    for (let by = NEAR; does + way * by > 0 && does + way * by < 1; by *= 2) {
      if (space.worth([does + way * by]) > 0) return edge(space, does, does + way * by);
      does += way * by;
    }
    return edge(space, does, way < 0 ? 0 : 1);
  };
  const range = [end(-1), end(1)] as const;
  return WITHIN.map(w => ({ t: [range[0] + w * (range[1] - range[0])], stretch: start.stretch, range, worth: 0 }));
}
const NEAR = 1e-6;

/** Where it stops to do, between a place that does and one that does not. */
function edge(space: Space<Condition>, does: number, not: number): number {
  if (space.worth([not]) === 0) return not;
  for (let k = 0; k < 40; k++) {
    const middle = (does + not) / 2;
    if (space.worth([middle]) === 0) does = middle; else not = middle;
  }
  return does;
}

/** Several: one place in each slice of each unknown, the same for the same setup whoever asks; the middle too. */
function over(space: Space<Condition>, goOn: () => boolean): Start[] {
  const count = EACH * space.unknowns.length;
  const random = xoroshiro128plus(SEED);
  const slices = space.unknowns.map(() => {
    const order = Array.from({ length: count }, (_, i) => i);
    for (let i = count - 1; i > 0; i--) { const j = uniformInt(random, 0, i); [order[i], order[j]] = [order[j]!, order[i]!]; }
    return order;
  });
  const places = [space.unknowns.map(() => 0.5), ...Array.from({ length: count }, (_, i) => slices.map(order => (order[i]! + uniformFloat64(random)) / count))];
  const looked: { t: number[]; worth: number }[] = [];
  for (const t of places) { if (!goOn()) break; looked.push({ t, worth: space.worth(t) }); }
  return looked.filter(l => l.worth < Infinity).sort((a, b) => a.worth - b.worth).slice(0, MOST).map(({ t }, stretch) => ({ t, stretch }));
}
const SEED = 7;
