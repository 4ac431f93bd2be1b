/** What one kind of thing is and which facts it takes. Completion, pages, unit checks and assumed values derive from it. */
import { LENGTH, type Dim } from '../units.ts';
import type { Footprint } from './footprint.ts';

/** What values make sense: a `share` lies from 0 to 1. */
export type Sign = 'positive' | 'not negative' | 'not zero' | 'share' | 'any';
/** Bounds in SI, with the bounds as they are said. */
export interface Within { readonly from: number; readonly to: number; readonly words: string }

export type FactType =
  /** a number with a unit of that dimension, or of one in `or`; `words` are accepted instead (`modes: unknown`) */
  | { readonly type: 'quantity'; readonly dim: Dim; readonly or?: readonly Dim[]; readonly sign?: Sign; readonly within?: Within; readonly words?: readonly string[] }
  /** a whole number, at least 1 */
  | { readonly type: 'count'; readonly words?: readonly string[] }
  | { readonly type: 'choice'; readonly words: readonly string[] }
  | { readonly type: 'sizes'; readonly numbers: readonly number[] }
  | { readonly type: 'ratio' }
  /** places `(x, y, z) mm`, the third 0 where it is left out; `single`: one only */
  | { readonly type: 'points'; readonly single?: boolean }
  /** words or a text in quotes */
  | { readonly type: 'text' }
  | { readonly type: 'date' }
  /** the name of another thing, of that kind */
  | { readonly type: 'name'; readonly of: string };

export interface Assumed {
  /** as it would be written */
  readonly text: string;
  readonly why: string;
}

export interface Fact {
  readonly phrase: string;
  readonly type: FactType;
  /** meaning, one sentence */
  readonly doc: string;
  /** taken when nothing is written; said to be a guess wherever a result rests on it */
  readonly assumed?: Assumed;
  /** taken instead where another fact, a choice of words, says which: the loss of a mirror by its `coating`. See `assumedFor`. */
  readonly assumedBy?: { readonly phrase: string; readonly of: Readonly<Record<string, Assumed>> };
  /** values as they are often written, the commonest first */
  readonly usual?: readonly string[];
  /** its value names something that has to be there: what is usual only shows how that is written */
  readonly names?: true;
  /** the phrase takes a number behind it: `mark 4.5: 88%` */
  readonly numbered?: boolean;
  /** false: read and kept, but no result uses it yet */
  readonly used: boolean;
}

/** What light does at a thing, as a leg's target. */
export type Light =
  | 'source' | 'passes' | 'turns' | 'shares' | 'scatters' | 'recorded' | 'diffracts' | 'ends' | 'none';

export interface Kind {
  readonly word: string;
  /** with its article: "a mirror" */
  readonly article: string;
  readonly doc: string;
  readonly light: Light;
  /** outputs at which a beam may start, besides the plain one */
  readonly ports: readonly string[];
  readonly facts: readonly Fact[];
  /** phrases that say one thing in different ways: of an inventory, its item and a variant the one counts that is written nearest to the setup */
  readonly rivals?: readonly (readonly string[])[];
  /** phrases of the facts that one is mostly written with, in the order in which one writes them */
  readonly usual?: readonly string[];
  /** a name that one is often given, empty where it mostly has none; else its initials with a number serve */
  readonly called?: string;
  /** a setup that declares one that no beam meets has a finding */
  readonly expectsLight: boolean;
  /** what stands on the table where it is; undefined of what does not stand there */
  readonly footprint: Footprint | undefined;
}

interface Options { readonly used?: boolean; readonly assumed?: Assumed; readonly assumedBy?: NonNullable<Fact['assumedBy']>; readonly sign?: Sign; readonly within?: Within; readonly or?: readonly Dim[]; readonly words?: readonly string[]; readonly usual?: readonly string[]; readonly numbered?: boolean }
const rest = (o: Options): Pick<Fact, 'used' | 'assumed' | 'assumedBy' | 'usual' | 'numbered'> =>
  ({ used: o.used ?? false, ...(o.assumed ? { assumed: o.assumed } : {}), ...(o.assumedBy ? { assumedBy: o.assumedBy } : {}), ...(o.usual ? { usual: o.usual } : {}), ...(o.numbered ? { numbered: true } : {}) });

/** Short constructors, so that a kind's file reads like its page. */
export const quantity = (phrase: string, dim: Dim, doc: string, o: Options = {}): Fact =>
  ({ phrase, doc, type: { type: 'quantity', dim, sign: o.sign ?? 'positive', ...(o.or ? { or: o.or } : {}), ...(o.within ? { within: o.within } : {}), ...(o.words ? { words: o.words } : {}) }, ...rest(o) });
export const count = (phrase: string, doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'count', ...(o.words ? { words: o.words } : {}) }, ...rest(o) });
export const choice = (phrase: string, words: readonly string[], doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'choice', words }, ...rest(o) });
export const sizes = (phrase: string, numbers: readonly number[], doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'sizes', numbers }, ...rest(o) });
export const text = (phrase: string, doc: string, usual?: readonly string[], more?: Pick<Fact, 'names'>): Fact => ({ phrase, doc, type: { type: 'text' }, used: true, ...(usual ? { usual } : {}), ...more });
export const ratio = (phrase: string, doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'ratio' }, ...rest(o) });
export const points = (phrase: string, doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'points' }, ...rest(o) });
export const point = (phrase: string, doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'points', single: true }, ...rest(o) });
export const date = (phrase: string, doc: string): Fact => ({ phrase, doc, type: { type: 'date' }, used: true });
export const named = (phrase: string, of: string, doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'name', of }, ...rest(o) });
const AIR: Within = { from: 200e-9, to: 2000e-9, words: '200 nm to 2000 nm' };
/** A wavelength in air. */
export const wavelength = (doc: string, o: Options = {}): Fact => quantity('wavelength', LENGTH, doc, { within: AIR, ...o });

/** Facts that every thing takes. */
export const COMMON: readonly Fact[] = [
  text('note', 'Anything worth keeping.'),
  text('batch', 'The batch or box it comes from; two things of one batch share its error.'),
  text('maker', 'Where it came from.'),
];
