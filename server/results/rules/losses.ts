/** Rules of the ladder: which share of the brightness each cause takes. Brightness follows the square of the fringe contrast, so that what is left multiplies. */
import { transmissionEfficiency } from '../../optics/fringes/efficiency.ts';
import { ratioVisibility, ratioVisibilitySlope, recordedBrightness } from '../../optics/visibility.ts';
import type { Rule } from '../graph.ts';

/** What a share that is left has lost. Input: the share that is left. */
export const LOST: Rule = { name: 'share that is lost', formula: '1 − share that is left', compute: ([left]) => 1 - Math.max(0, Math.min(1, left!)), partials: () => [-1] };

/** Input: beam ratio K. */
export const LOST_BY_RATIO: Rule = {
  name: 'lost by the beam ratio', formula: '1 − 4K / (1 + K)²: K reference light to object light', source: 'Born & Wolf, Principles of Optics, on two-beam interference (any optics text)', curved: true,
  compute: ([k]) => 1 - recordedBrightness(ratioVisibility(k!)), partials: ([k]) => [-2 * ratioVisibility(k!) * ratioVisibilitySlope(k!)],
};

/** Input: the figure that says that one of the two beams brings no light. */
export const ALL_LOST: Rule = { name: 'lost without light', formula: '1: where one of the two beams brings no light there are no fringes', linear: true, compute: () => 1, partials: () => [0] };

/** Inputs: how long the shutter is open, how long it should be. */
export const LOST_BY_EXPOSURE: Rule = {
  name: 'lost by the exposure', formula: '1 − sin²(π/2 · x), x = exposure / exposure that the plate needs, or the reverse where that is less than 1', curved: true,
  source: 'brightness of a thick phase hologram up to its maximum, Kogelnik, Bell Syst. Tech. J. 48, 2909 (1969); that too long costs as much as too short, stop for stop, is common practice',
  compute: ([time, needed]) => 1 - transmissionEfficiency((Math.PI / 2) * Math.min(time! / needed!, needed! / time!), 0),
};

/** Inputs: shares that are lost, each for itself. */
export const RECORDED: Rule = {
  name: 'recorded brightness', formula: 'what each cause leaves, multiplied', source: 'Collier, Burckhardt & Lin, Optical Holography (1971) (from memory)', curved: true,
  compute: lost => lost.reduce((left, l) => left * (1 - l), 1), partials: lost => lost.map((_, i) => -lost.reduce((left, l, k) => (k === i ? left : left * (1 - l)), 1)),
};
