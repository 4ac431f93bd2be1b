/** What one kind of thing is and which facts it takes. Completion, pages, unit checks and assumed values derive from it. */
import type { Dim } from '../units.ts';

/** What values make sense: a `share` lies from 0 to 1. */
export type Sign = 'positive' | 'not negative' | 'share' | 'any';
/** Bounds in SI, with the bounds as they are said. */
export interface Within { readonly from: number; readonly to: number; readonly words: string }

export type FactType =
  /** a number with a unit of that dimension; `words` are accepted instead (`modes: unknown`) */
  | { readonly type: 'quantity'; readonly dim: Dim; readonly sign?: Sign; readonly within?: Within; readonly words?: readonly string[] }
  /** a whole number, at least 1 */
  | { readonly type: 'count'; readonly words?: readonly string[] }
  | { readonly type: 'choice'; readonly words: readonly string[] }
  | { readonly type: 'sizes'; readonly numbers: readonly number[] }
  | { readonly type: 'ratio' }
  | { readonly type: 'points' }
  /** words or a text in quotes */
  | { readonly type: 'text' }
  | { readonly type: 'date' }
  /** the name of another thing */
  | { readonly type: 'name' };

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
  /** values as they are often written, the commonest first */
  readonly usual?: readonly string[];
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
  /** phrases of the facts that one is mostly written with, in the order in which one writes them */
  readonly usual?: readonly string[];
  /** a setup that declares one that no beam meets has a finding */
  readonly expectsLight: boolean;
}

interface Options { readonly used?: boolean; readonly assumed?: Assumed; readonly sign?: Sign; readonly within?: Within; readonly words?: readonly string[]; readonly usual?: readonly string[]; readonly numbered?: boolean }
const rest = (o: Options): Pick<Fact, 'used' | 'assumed' | 'usual' | 'numbered'> =>
  ({ used: o.used ?? false, ...(o.assumed ? { assumed: o.assumed } : {}), ...(o.usual ? { usual: o.usual } : {}), ...(o.numbered ? { numbered: true } : {}) });

/** Short constructors, so that a kind's file reads like its page. */
export const quantity = (phrase: string, dim: Dim, doc: string, o: Options = {}): Fact =>
  ({ phrase, doc, type: { type: 'quantity', dim, sign: o.sign ?? 'positive', ...(o.within ? { within: o.within } : {}), ...(o.words ? { words: o.words } : {}) }, ...rest(o) });
export const count = (phrase: string, doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'count', ...(o.words ? { words: o.words } : {}) }, ...rest(o) });
export const choice = (phrase: string, words: readonly string[], doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'choice', words }, ...rest(o) });
export const sizes = (phrase: string, numbers: readonly number[], doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'sizes', numbers }, ...rest(o) });
export const text = (phrase: string, doc: string): Fact => ({ phrase, doc, type: { type: 'text' }, used: true });
export const ratio = (phrase: string, doc: string, o: Options = {}): Fact => ({ phrase, doc, type: { type: 'ratio' }, ...rest(o) });
export const points = (phrase: string, doc: string): Fact => ({ phrase, doc, type: { type: 'points' }, used: false });
export const date = (phrase: string, doc: string): Fact => ({ phrase, doc, type: { type: 'date' }, used: true });
export const named = (phrase: string, doc: string): Fact => ({ phrase, doc, type: { type: 'name' }, used: false });

/** Facts that every thing takes. */
export const COMMON: readonly Fact[] = [
  text('note', 'Anything worth keeping.'),
  text('batch', 'The batch or box it comes from; two things of one batch share its error.'),
  text('maker', 'Where it came from.'),
];
