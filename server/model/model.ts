/** What the text means, names bound: setups of things, beams, readings and goals. No figure is computed here. */
import type { Expr, Node } from '../../grammar/tree.ts';
import type { Place } from './place.ts';
import type { Fact, Kind } from './things/kind.ts';

import type { Quantity } from './quantity.ts';
import type { Unit } from './units.ts';

export type { Place };

/** Something that is wrong, before it is put into words: `checks/` has the words of each code. */
export interface Problem {
  readonly code: string;
  readonly at: Place;
  /** the thing or result that it concerns; with setup and code it identifies a finding */
  readonly subject: string;
  readonly setup?: string;
  /** the variant in which alone it occurs */
  readonly variant?: string;
  /** What its words need. `line` is a line of the same setup or inventory, counted from 1: it moves with them. */
  readonly data: Readonly<Record<string, string | number | boolean>>;
}

/** A value as bound: read where it is literal, else kept as the expression that the cells evaluate. */
export type Bound =
  | { readonly kind: 'quantity'; readonly quantity: Quantity }
  | { readonly kind: 'formula'; readonly expr: Expr }
  /** `?`, or `? from 80% to 99% by 1%`: between which values it is to be found, and in which steps */
  | { readonly kind: 'unknown'; readonly unit?: Unit; readonly from?: Bound; readonly to?: Bound; readonly by?: Bound }
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'sizes'; readonly parts: readonly Quantity[] }
  | { readonly kind: 'ratio'; readonly value: number }
  /** places `(x, y, z) mm`, each as three lengths */
  | { readonly kind: 'places'; readonly places: readonly (readonly [Quantity, Quantity, Quantity])[] };

export interface BoundFact {
  readonly fact: Fact;
  /** the number behind a numbered phrase: 4.5 of `mark 4.5` */
  readonly number?: number;
  readonly value: Bound;
  /** where the value stands */
  readonly at: Place;
  readonly node: Node;
}

/** A value of a placement, and where it is written. Cells evaluate it. */
export interface Written {
  readonly expr: Expr;
  readonly at: Place;
  /** the line that it stands in */
  readonly line: string;
  /** `? from 20 mm to 80 mm by 5 mm`: between which values it is to be found, and in which steps */
  readonly from?: Expr;
  readonly to?: Expr;
  readonly by?: Expr;
}

/** A thing that a placement names. */
export interface Named {
  readonly name: string;
  readonly at: Place;
}

/** Which way light is turned, as one looks along it. */
export type Turn = 'left' | 'right' | 'up' | 'down' | 'back';

/** Where a thing stands and which way it faces, as written. Positions and directions are cells: see `results/places.ts`. */
export interface Placement {
  /** `at (x, y) mm` */
  readonly at?: Written;
  /** `on A -> B by d` */
  readonly on?: { readonly from: Named; readonly to: Named; readonly by: Written };
  /** `beyond A by d turning left`: straight on where it does not say how the light is turned */
  readonly beyond?: { readonly from: Named; readonly by: Written; readonly turning?: Turn | Written };
  /** `heading 30°` */
  readonly heading?: Written;
  /** `facing whelk`, or `facing beam` */
  readonly facing?: Named | 'beam';
  /** `tilted 5°` */
  readonly tilted?: Written;
  /** it says where the thing stands, but not so that it can be understood; that is reported */
  readonly broken?: true;
}

export interface Thing {
  readonly id: string;
  readonly kind: Kind;
  readonly node: Node;
  /** where its name stands */
  readonly at: Place;
  readonly facts: ReadonlyMap<string, BoundFact>;
  readonly placement: Placement | undefined;
  /** the inventory item that it is */
  readonly item: Thing | undefined;
  readonly doc: string | undefined;
  /** something refers to it: a leg, a placement, a reading */
  used: boolean;
  /** how many legs lead to it */
  reached: number;
  /** of a hologram, the plate that it was recorded on, as the page of that has it */
  recordedOn?: Thing | undefined;
}

export interface Leg {
  /** `raw.1`: its beam and its place in it */
  readonly id: string;
  readonly beam: Beam;
  readonly n: number;
  readonly target: Thing | undefined;
  /** the target as written */
  readonly to: string;
  /** `through`, when light goes on behind a plate or splitter */
  readonly port: string | undefined;
  readonly length: Bound | undefined;
  readonly lengthAt: Place | undefined;
  readonly at: Place;
  readonly node: Node;
}

export interface Beam {
  readonly id: string;
  readonly from?: Thing;
  readonly port?: string;
  readonly legs: Leg[];
  readonly node: Node;
  readonly at: Place;
  readonly doc?: string;
}

/** Where on a plate a meter or a screen was held, as seen from the object. */
export type Spot = 'centre' | 'upper left' | 'upper right' | 'lower left' | 'lower right';

/** What a reading is a reading of. Arms are named by their beam, or by their role where that means one of them. */
export type Measured =
  /** a leg, or a run of legs, by the things along it */
  | { readonly kind: 'legs'; readonly things: readonly Thing[] }
  /** an arm as a whole, from where the arms of its plate part */
  | { readonly kind: 'arm'; readonly arm: string; readonly plate: Thing | undefined }
  /** one arm minus another, as one loop of string held against both tells it */
  | { readonly kind: 'difference'; readonly arm: string; readonly other: string; readonly plate: Thing | undefined }
  /** light of an arm at a plate, or of a beam at a thing: in units, or a bare number that only a ratio uses */
  | { readonly kind: 'light'; readonly arm: string; readonly at: Thing | undefined; readonly spot: Spot; readonly facing: boolean; readonly through: 'polarizer' | Thing | undefined }
  /** the meter with its head covered */
  | { readonly kind: 'dark'; readonly at: Thing | undefined }
  /** the mark at which the wheel of a splitter stands */
  | { readonly kind: 'wheel'; readonly splitter: Thing }
  /** how fast the fringes creep at a plate */
  | { readonly kind: 'drift'; readonly plate: Thing | undefined }
  /** how far from its hologram a real image is sharp */
  | { readonly kind: 'image'; readonly at: Thing | undefined };

/** What a reading was taken with: a thing of the setup or of an inventory, or a plain word such as `string`. */
export interface Instrument {
  readonly name: string;
  readonly thing: Thing | undefined;
  readonly at: Place;
}

export interface Reading {
  /** undefined where it could not be understood; that is reported */
  readonly measured: Measured | undefined;
  /** as written: `reference at P1 facing beam` */
  readonly words: string;
  readonly node: Node;
  /** where `words` stand */
  readonly at: Place;
  readonly value: Bound | undefined;
  readonly valueAt: Place | undefined;
  readonly by: Instrument | undefined;
  /** `2026-02-11`, or with a time of day behind a `T` */
  readonly on: string | undefined;
}

/** `moved M1 on 2026-02-14: "the cat"`: what was read of it before that day no longer holds. */
export interface Moved {
  readonly things: readonly Thing[];
  /** as the date of a reading */
  readonly on: string;
  /** what happened, in the author's words */
  readonly what?: string;
  readonly node: Node;
  readonly at: Place;
}

export interface Goal {
  readonly kind: 'aim' | 'expect';
  /** name of the result */
  readonly result: string;
  readonly at: Place;
  readonly node: Node;
  readonly op?: '<' | '<=' | '>' | '>=' | 'between' | '=';
  readonly limits: readonly { readonly expr: Expr; readonly at: Place }[];
}

export interface Accept {
  readonly code: string;
  readonly subject?: string;
  readonly subjectAt?: Place;
  readonly reason: string;
  readonly at: Place;
}

export interface Let {
  readonly name: string;
  readonly expr: Expr;
  readonly at: Place;
  readonly exprAt: Place;
  /** its line could not be read to the end: a unit may have stood there */
  readonly cut: boolean;
  /** behind a `?`: between which values it is to be found, and in which steps */
  readonly from?: Expr;
  readonly to?: Expr;
  readonly by?: Expr;
}

/** One thing that a variant does otherwise. */
export type Change = { readonly at: Place; readonly node: Node } & (
  | { readonly kind: 'placement'; readonly thing: Thing; readonly placement: Placement }
  | { readonly kind: 'fact'; readonly thing: Thing; readonly key: string; readonly fact: BoundFact }
  /** another item of an inventory takes the place of the thing's own */
  | { readonly kind: 'item'; readonly thing: Thing; readonly item: Thing }
  | { readonly kind: 'leg'; readonly leg: Leg; readonly length: Bound; readonly lengthAt: Place }
  | { readonly kind: 'let'; readonly let: Let }
  | { readonly kind: 'setup fact'; readonly key: string; readonly fact: BoundFact }
  | { readonly kind: 'thing'; readonly thing: Thing }
  /** a beam that is new, or takes the place of the one of its name */
  | { readonly kind: 'beam'; readonly beam: Beam }
);

/** Named changes of a setup; `overlay` makes the setup that has them. */
export interface Variant {
  readonly name: string;
  readonly at: Place;
  readonly node: Node;
  readonly doc?: string;
  readonly changes: readonly Change[];
  /** as {@link Setup.lost}, of its own lines */
  readonly lost: boolean;
}

/** The recording of a hologram that serves a transfer. */
export interface Master {
  readonly setup: Setup;
  /** what it was recorded on */
  readonly plate: Thing;
  /** where the transfer names it */
  readonly at: Place;
  /** how many recordings stand behind one another, itself the first */
  readonly deep: number;
}

export interface Setup {
  readonly name: string;
  /** the variant whose changes it has; undefined for a setup as written */
  readonly variant?: string;
  readonly uri: string;
  readonly node: Node;
  readonly at: Place;
  readonly doc?: string;
  readonly things: ReadonlyMap<string, Thing>;
  readonly beams: ReadonlyMap<string, Beam>;
  readonly facts: ReadonlyMap<string, BoundFact>;
  readonly lets: ReadonlyMap<string, Let>;
  readonly readings: readonly Reading[];
  readonly moved: readonly Moved[];
  readonly goals: readonly Goal[];
  readonly accepts: readonly Accept[];
  readonly variants: readonly Variant[];
  /** by the names of its holograms, where the text says how they were recorded */
  readonly masters?: ReadonlyMap<string, Master>;
  readonly shots: readonly { readonly name: string; readonly at: Place; readonly node: Node }[];
  /** a line that declares a thing or a beam could not be understood, so that what seems missing may stand there */
  readonly unsure: boolean;
  /** a line that declares something could not be read as far as its name, or is a value (`let`) that could not be read: what nobody seems to have declared may be that */
  readonly lost: boolean;
  /** what is written in it and understood, but not computed yet, in words */
  readonly pending: ReadonlySet<string>;
}

export interface Inventory {
  readonly name: string;
  readonly things: ReadonlyMap<string, Thing>;
  readonly at: Place;
}

/** `use "…"`, with what it found */
export interface Use {
  readonly path: string;
  readonly uri: string;
  readonly at: Place;
}

/** A name at its place, and where it is declared. */
export interface Reference {
  readonly at: Place;
  readonly target: Place;
  readonly name: string;
}

export interface Model {
  readonly uri: string;
  readonly setups: readonly Setup[];
  readonly inventories: readonly Inventory[];
  /** the inventories that its setups may draw on, its own and those of the files that it uses, by their names */
  readonly visible: ReadonlyMap<string, Inventory>;
  readonly uses: readonly Use[];
  readonly references: readonly Reference[];
  readonly problems: readonly Problem[];
  /** how many of its setups, inventories and items were bound now; the others are kept from an earlier text */
  readonly bound: number;
}
