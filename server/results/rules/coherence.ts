/** Rules of coherence: how brightly a part records whose path differs from the reference's. */
import { equalModesCoherence, equalModesCoherencePartials } from '../../optics/coherence/equal-modes.ts';
import { lineCoherence, lineCoherencePartials, lineCoherenceReach, type LineShape } from '../../optics/coherence/line-shapes.ts';
import { modeSpacing, revivalDistance } from '../../optics/coherence/cavity.ts';
import { depthPathChange } from '../../optics/depth.ts';
import { recordedBrightness } from '../../optics/visibility.ts';
import type { Rule } from '../graph.ts';

/** Brightness of a part from its mismatch, the revival distance and the number of modes: the square of the fringe contrast. */
export const MODES_BRIGHTNESS: Rule = {
  name: 'brightness, several modes', formula: '(sin(Nπδ/R) / (N sin(πδ/R)))²: N modes, revival distance R, mismatch δ',
  source: 'N equally strong, equally spaced modes; Collier, Burckhardt & Lin, Optical Holography (1971), ch. 7 (from memory)', curved: true,
  compute: ([delta, revival, modes]) => recordedBrightness(equalModesCoherence(modes!, revival!, delta!)),
  partials: ([delta, revival, modes]) => {
    const gamma = equalModesCoherence(modes!, revival!, delta!);
    const d = equalModesCoherencePartials(modes!, revival!, delta!);
    return [2 * gamma * d.pathDifference, 2 * gamma * d.revival, 0];
  },
};

/** Brightness of a part from its mismatch and the linewidth of a laser with one line. */
export const lineBrightness = (shape: LineShape): Rule => ({
  name: `brightness, ${shape} line`, curved: true, of: [shape],
  formula: { gaussian: '(exp(−(πx)²/(4 ln 2)))²', lorentzian: '(exp(−πx))²', rectangular: '(sin πx / πx)²' }[shape] + ', x = δ · linewidth / c',
  source: 'Goodman, Statistical Optics (1985), 5.1.3 (from memory)',
  compute: ([delta, linewidth]) => recordedBrightness(lineCoherence(shape, linewidth!, delta!)),
  partials: ([delta, linewidth]) => {
    const gamma = lineCoherence(shape, linewidth!, delta!);
    const d = lineCoherencePartials(shape, linewidth!, delta!);
    return [2 * gamma * d.pathDifference, 2 * gamma * d.linewidth];
  },
});

const GHZ = 1e9;
/** Linewidth from a coherence length and the contrast that it stands for. */
export const linewidthFrom = (shape: LineShape): Rule => ({
  name: 'linewidth', of: [shape], formula: `linewidth at which the contrast of a ${shape} line falls to the stated share at the coherence length`,
  compute: ([length, contrast]) => (lineCoherenceReach(shape, GHZ, contrast!) * GHZ) / length!,
});
/** Path difference at which the contrast of a line is down to one half. */
export const halfContrast = (shape: LineShape): Rule => ({
  name: 'coherence length', of: [shape], formula: `path difference at which the contrast of a ${shape} line is one half`,
  compute: ([linewidth]) => lineCoherenceReach(shape, linewidth!, 0.5),
});

/** The cavity of a gas laser is filled with gas: its group index is 1. */
export const REVIVAL: Rule = { name: 'revival distance', formula: '2 · tube length', linear: true, compute: ([l]) => revivalDistance(l!, 1), partials: () => [2] };
export const MODE_SPACING: Rule = { name: 'mode spacing', formula: 'c / (2 · tube length)', compute: ([l]) => modeSpacing(l!, 1) };

/** Mismatch of the part that lies a share of the depth behind the middle, whose own mismatch is m. */
export const mismatchOfPart = (share: number, m: number, depth: number, psi: number): number => m + share * depthPathChange(depth, psi);

/** Mismatch of the part that lies a share of the depth behind the middle. Inputs: mismatch of the middle, depth, angle of the light. */
export const partMismatch = (share: number): Rule => ({
  name: 'mismatch of a part', of: [share], formula: `mismatch ${share < 0 ? '−' : '+'} ${Math.abs(share)} · depth · (1 + cos ψ), ψ between light and line of sight`,
  compute: ([m, depth, psi]) => mismatchOfPart(share, m!, depth!, psi!),
  partials: ([, depth, psi]) => [1, share * (1 + Math.cos(psi!)), -share * depth! * Math.sin(psi!)],
});
