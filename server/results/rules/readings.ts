/** Rules of readings of lengths. */
import { tapeError, type TapeClass } from '../../optics/tape.ts';
import type { Rule } from '../graph.ts';

/** Made afresh with nothing but their words: two of the same words are one rule. */
const NOTHING: readonly unknown[] = [];

/** A string that is too long reads too little. Inputs: what was read, the share by which the string is too long. */
export const STRETCHED: Rule = { name: 'stretch', formula: 'reading · (1 + stretch)', compute: ([r, s]) => r! * (1 + s!), partials: ([r, s]) => [1 + s!, r!] };

/** The error, m either way, that a tape of an accuracy class may have in one reading from mark to mark; what its end or hook may add is left out. */
export const tapeLimit = (grade: string, length: number): number => tapeError(grade as TapeClass, length, false);

/** Inputs: what was read, the error of the tape. */
export const TAPE: Rule = { name: 'tape', formula: 'reading + error of the tape', linear: true, compute: ([r, e]) => r! + e!, partials: () => [1, 1] };

export const OFFSET: Rule = { name: 'offset', formula: 'reading − plan', linear: true, compute: ([r, p]) => r! - p!, partials: () => [1, -1] };

/** A reading corrects, it does not replace: for uncertainty the plan falls out (1 − 1), and in a what-if the offset is held. */
export const corrected = (formula = 'plan + offset'): Rule => ({ name: 'corrected', formula, of: NOTHING, linear: true, compute: ([p, o]) => p! + o!, partials: () => [1, 1] });

/** One cell under another name. */
export const same = (name: string, formula: string): Rule => ({ name, formula, of: NOTHING, linear: true, compute: ([a]) => a!, partials: () => [1] });
