/** Cells, the rules that make them, and what can be found out about them. See `server/core.md`. */
import type { Place } from '../model/model.ts';
import type { Sign, Within } from '../model/things/kind.ts';
import type { Spread } from '../model/quantity.ts';
import type { Dim, Unit } from '../model/units.ts';

export type Origin = 'written' | 'measured' | 'computed' | 'solved' | 'assumed';

/** How cells are computed from cells: a plain-number function, SI in, SI out. */
export interface Rule {
  readonly name: string;
  /** the formula as it is shown to people */
  readonly formula: string;
  /** where it is from */
  readonly source?: string;
  readonly compute: (x: readonly number[]) => number;
  /** derivatives by each input, those that are not wanted may be 0; central differences where absent */
  readonly partials?: (x: readonly number[], wanted?: readonly boolean[]) => readonly number[];
  /** the result is a weighted sum of its inputs, so that it can be drawn as one number */
  readonly linear?: boolean;
  /** first order is not good enough: kinks, flat tops, choices */
  readonly curved?: boolean;
  /** sums over many parts of something: it is drawn once, in fewer draws, for all that rests on it */
  readonly costly?: boolean;
  /** What it was made with, of a rule that is made afresh for each cell: with the same, one name and one formula it is the same rule. */
  readonly of?: readonly unknown[];
}

/** Why a cell has no value: the problem at the root. */
export interface Missing {
  readonly code: string;
  /** in words, completing "because …" */
  readonly why: string;
  readonly at?: Place;
}

/** A number that is written `?`. */
export interface Open {
  /** of its cell */
  readonly name: string;
  readonly dim: Dim;
  readonly words: string;
  /** where the `?` stands */
  readonly at: Place;
  /** the unit that is written with it, or that its neighbours have */
  readonly unit?: Unit | undefined;
  /** of a place that is written `?` as a whole, which of its numbers this is */
  readonly part?: 'x' | 'y';
  /** what values make sense */
  readonly sign?: Sign;
  readonly within?: Within | undefined;
  /** what is often written there, SI */
  readonly usual?: () => number | undefined;
  /** between which values it is to be found and in which steps, as written, SI; asked for by whoever looks for it */
  readonly limits?: () => { readonly from?: number; readonly to?: number; readonly by?: number };
}

export interface Cell {
  readonly index: number;
  readonly name: string;
  readonly dim: Dim;
  readonly origin: Origin;
  readonly rule: Rule | undefined;
  readonly inputs: readonly Cell[];
  readonly spread: Spread | undefined;
  /** unit in which the author wrote it */
  readonly unit: Unit | undefined;
  readonly at: Place | undefined;
  /** in words, for chains of numbers: "leg S1 → M1" */
  readonly words: string;
  /** for assumed inputs, the reason */
  readonly reason: string | undefined;
  readonly missing: Missing | undefined;
  /** what the text computes it from, as written: shown instead of the rule's formula */
  readonly formula?: string;
}

/** What a backward pass finds: the inputs that a cell rests on, and its derivative by each. */
export interface Sweep {
  readonly inputs: readonly Cell[];
  readonly slopes: readonly number[];
}

/** How far a cell spreads, by seeded draws. */
export interface Band {
  /** 95 % of the draws lie between low and high */
  readonly low: number;
  readonly high: number;
  readonly mean: number;
  readonly std: number;
  readonly draws: number;
}

/** What takes long to find out about a cell. Twins share it: whichever is asked first finds it out for both. */
export interface Shared {
  /** by each input of its own, of a rule without derivatives; 0 by what is exact */
  slopes?: readonly number[];
  band?: Band;
  /** what it comes out as in each draw, where that is costly to find out */
  draws?: Float64Array | number;
}

/** What was found out about a cell. All of it rests on the cell and those that it depends on, and on nothing else. */
export interface Notes {
  sweep?: Sweep;
  uncertainty?: number;
  readonly shared: Shared;
  /** the band while another cell is held at a value */
  held?: { readonly by: Cell; readonly value: number; readonly band: Band };
  /** is drawn as one normal number */
  normal?: boolean;
  /** first order does not describe it */
  bent?: boolean;
  below?: readonly Cell[];
  /** of the brightness of an object's far end: share of the depth at which the darkest part lies */
  darkest?: number;
  /** of how the path walks across a plate: what a map of the same inputs found, and for which coherence */
  map?: { readonly key: string; readonly found: { readonly largest: { readonly plate: readonly [number, number]; readonly object: readonly [number, number, number] }; readonly darkest?: readonly [number, number, number]; readonly sides?: readonly [boolean, boolean, boolean] } | undefined };
}
