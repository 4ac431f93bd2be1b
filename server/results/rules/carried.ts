/** Rules of light that a first hologram does not bend, and of what it throws back: what of a face it reaches. */
import { shareReached, shareTakenUp, shareThrownBack, type Pane } from '../../optics/solids/carried.ts';
import type { Rule } from '../graph.ts';
import type { Vector } from './table.ts';

const pane = (x: readonly number[], i: number): Pane => ({ at: x.slice(i, i + 3) as unknown as Vector, normal: x.slice(i + 3, i + 6) as unknown as Vector, size: [x[i + 6]!, x[i + 7]!] });
/** Place, normal and sides of the opening; direction and curvature of its light; place, normal and sides of the face. */
const straight = (name: string, share: typeof shareReached): Rule => ({
  name, formula: 'outline of the hologram, carried along its light, cut to the face', source: 'geometry',
  compute: x => share(pane(x, 0), { direction: x.slice(8, 11) as unknown as Vector, curvature: x[11]! }, pane(x, 12)),
});
export const REACHED = straight('share of a face that light reaches', shareReached);
export const TAKEN_UP = straight('share of light that a face takes up', shareTakenUp);

/** Place, normal and sides of the plate; direction of the light; place, normal and sides of what throws it back. */
export const THROWN_BACK: Rule = {
  name: 'share of a plate to which its light comes back', formula: 'outline of the plate, carried to the other and back', source: 'geometry',
  compute: x => shareThrownBack(pane(x, 0), x.slice(8, 11) as unknown as Vector, pane(x, 11)),
};

/** How far aside light comes back that meets two parallel faces, and how much longer its way is: 2 g tan θ and 2 g cos θ. Inputs: places of both, normal of the second, direction of the light. */
const between = (x: readonly number[]): { readonly gap: number; readonly cosine: number } => {
  const [n, d] = [x.slice(6, 9), x.slice(9, 12)].map(v => { const l = Math.hypot(...v) || 1; return v.map(c => c / l); }) as [number[], number[]];
  return { gap: Math.abs(n.reduce((s, c, i) => s + c * (x[i + 3]! - x[i]!), 0)), cosine: Math.abs(n.reduce((s, c, i) => s + c * d[i]!, 0)) };
};
export const LONGER: Rule = { name: 'longer way of light thrown back', formula: '2 g cos θ', source: 'geometry', compute: x => { const { gap, cosine } = between(x); return 2 * gap * cosine; } };
