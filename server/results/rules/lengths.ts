/** Rules of lengths: legs between places, sums of legs, the difference of two arms, what glass adds. */
import { acrylic, borosilicateCrown, fusedSilica, groupIndex, sodaLime, type Glass } from '../../optics/glass.ts';
import type { Rule } from '../graph.ts';

/** Distance of two points, (x, y, z) each. */
export const DISTANCE: Rule = {
  name: 'distance', formula: '√(Δx² + Δy² + Δz²)',
  compute: ([a, b, c, d, e, f]) => Math.hypot(d! - a!, e! - b!, f! - c!),
  partials: ([a, b, c, d, e, f]) => {
    const [x, y, z] = [d! - a!, e! - b!, f! - c!];
    const l = Math.hypot(x, y, z) || 1;
    return [-x / l, -y / l, -z / l, x / l, y / l, z / l];
  },
};

/** A weighted sum, such as the legs of an arm or the difference of two arms. */
export function weighted(name: string, formula: string, weights: readonly number[]): Rule {
  return { name, formula, of: weights, linear: true, compute: x => x.reduce((s, v, i) => s + v * weights[i]!, 0), partials: () => weights };
}

export const GLASSES: Readonly<Record<string, Glass>> = { crown: borosilicateCrown, 'fused silica': fusedSilica, window: sodaLime, acrylic };

/** What a thickness of glass adds to the coherence path: (N − 1) · t, N the group index at the laser's wavelength. Inputs: thickness, wavelength. */
export const glassPath = (glass: Glass): Rule => ({
  name: 'glass', formula: '(N − 1) · thickness, N = n − λ dn/dλ', source: glass.source, of: [glass],
  compute: ([t, wavelength]) => (groupIndex(glass, wavelength!) - 1) * t!,
});
