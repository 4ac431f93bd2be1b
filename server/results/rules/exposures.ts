/** Rules of plates that get several exposures. */
import type { Rule } from '../graph.ts';
import { smooth } from './slopes.ts';

/** Inputs: the shares that are written. */
export const sharedBy = (open: number): Rule => ({ name: 'share', of: [open], formula: open === 1 ? '1 − the shares that are written' : `(1 − the shares that are written) / ${open}`, linear: true, compute: written => Math.max(0, 1 - written.reduce((a, b) => a + b, 0)) / open, partials: written => written.map(() => -1 / open) });

/** Inputs: share, time that the plate needs by that light alone; then the exponent of the reciprocity law, where it is written. */
export const SHARE_OF_TIME: Rule = smooth({ name: 'time of an exposure', formula: 'share^(1/p) · time by that light alone', source: 'the law of reciprocity, or Schwarzschild’s (1900) with its exponent', compute: ([share, time, p]) => share! ** (1 / (p ?? 1)) * time! });

/**
 * Inputs: shares, the second of the first: of one exposure, and of the light in it.
 * Each fringe pattern changes the layer by its share; what goes into an image follows the square of that.
 */
export const LEFT_BY_SHARE: Rule = {
  name: 'brightness by share', formula: 'share²', curved: true, source: 'efficiency of N equal recordings in one layer falls as 1/N² (Mok, Burr & Psaltis, Opt. Lett. 21, 896 (1996), from memory)',
  compute: shares => shares.reduce((a, b) => a * b, 1) ** 2,
};
export const LOST_BY_SHARE: Rule = { name: 'lost by sharing the layer', formula: '1 − share²', curved: true, source: LEFT_BY_SHARE.source!, compute: shares => 1 - LEFT_BY_SHARE.compute(shares) };
/** Inputs: light of one laser, light of all. */
export const SHARE_OF_LIGHT: Rule = { name: 'share of the light', formula: 'light of the laser / light of all', compute: ([one, all]) => one! / all!, partials: ([one, all]) => [1 / all!, -one! / all! ** 2] };
