/** Rules of the ways by a lit screen: by its rim they are longer than straight through its middle, and what records is the mean over it. */
import type { Rule } from '../graph.ts';
import { sectionHere } from './beams.ts';

/** Inputs of both: how far the light is past its focus and that focus's Rayleigh range, wavelength, beam quality; half of the lesser side of the screen; distance from it to what it lights. */
const rimOf = (x: readonly number[]): { readonly bend: number; readonly w: number; readonly rim: number } => {
  const { bend, w } = sectionHere(x);
  return { bend, w, rim: Math.min(x[4]!, w) };
};
/** Longer than straight through, at r from the middle: from a wave front that bends (1 by its radius), and on to what is lit. */
const longer = (bend: number, d: number, r: number): number => (r * r * bend) / (1 + Math.sqrt(1 + (r * bend) ** 2)) + (r * r) / (d + Math.sqrt(d * d + r * r));

export const BY_THE_RIM: Rule = {
  name: 'way by the rim of a screen', formula: '(√(R² + r²) − R) + (√(d² + r²) − d): r the radius of what is lit of the screen, at most w; R the radius of the wave front on it, d the way on', source: 'Pythagoras', curved: true,
  compute: x => { const { bend, rim } = rimOf(x); return longer(bend, x[5]!, rim); },
};

const RINGS = 48;
/**
 * Brightness averaged over what is lit of a screen: each of its points makes fringes of its own, with its own path. Inputs as above, then the scatter angle, the mismatch by the middle, and those of the
 * brightness behind the mismatch.
 */
export const overScreen = (brightness: Rule): Rule => ({
  name: 'brightness over a screen', of: [brightness.name, ...(brightness.of ?? [])], curved: true, costly: true, source: brightness.source ?? 'geometry',
  formula: `mean over the lit screen of ${brightness.formula}; each ring counts by the light that it sends on, e^(−2r²/w²) · cosⁿ γ / (d² + r²)`,
  compute: x => {
    const { bend, w, rim } = rimOf(x);
    const [d, halfWidth, mismatch] = [x[5]!, x[6]!, x[7]!];
    const power = Math.LN2 / -Math.log(Math.cos(halfWidth));
    let [sum, all] = [0, 0];
    for (let i = 0; i < RINGS; i++) {
      const r = (rim * (i + 0.5)) / RINGS;
      const turned = Math.max(0, Math.cos(Math.atan(r * bend) + Math.atan(r / d)));
      const light = (r * Math.exp((-2 * r * r) / (w * w)) * turned ** power) / (d * d + r * r);
      all += light;
      sum += light * brightness.compute([mismatch + longer(bend, d, r), ...x.slice(8)]);
    }
    return sum / all;
  },
});
