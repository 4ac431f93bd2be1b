/** Random whole setups, as text and as the numbers in it. */
import fc from 'fast-check';
import { direction, fromNormal, heading, type Line, type V } from './closed-forms.ts';

/** A number in steps of a part of its unit. */
const steps = (from: number, to: number, parts = 1): fc.Arbitrary<number> => fc.integer({ min: Math.round(from * parts), max: Math.round(to * parts) }).map(n => n / parts);
const place = fc.tuple(steps(0, 1500, 2), steps(0, 1000, 2), steps(80, 300, 2));

const line: fc.Arbitrary<Line> = fc.oneof(
  fc.record({ by: fc.constant('linewidth' as const), width: steps(5, 800).map(MHz => MHz * 1e6), shape: fc.constantFrom('gaussian' as const, 'lorentzian' as const, 'rectangular' as const) }),
  fc.record({ by: fc.constant('length' as const), length: steps(100, 5000).map(mm => mm / 1e3), contrast: steps(20, 90).map(p => p / 100), shape: fc.constantFrom('gaussian' as const, 'lorentzian' as const) }),
  fc.record({ by: fc.constant('modes' as const), tube: steps(150, 900).map(mm => mm / 1e3), modes: fc.integer({ min: 1, max: 6 }) }),
);

/** In the units in which it is written: mm, %, mW, nm, °, µW/cm², µJ/cm². */
const common = fc.record({
  wavelength: fc.constantFrom(457.9, 514.5, 532.1, 632.8, 647.1), power: steps(2, 200, 10), diameter: steps(0.5, 2, 100), quality: steps(1, 1.5, 100), line,
  reflects: steps(5, 95, 4), losses: fc.tuple(steps(0, 10, 4), steps(0, 20, 4), steps(0, 30, 4)), focalLength: fc.oneof(steps(10, 60, 10), steps(-60, -10, 10)),
  metered: steps(0.2, 20, 100), dose: steps(20, 900), index: steps(1.5, 1.7, 1000), aimed: steps(1, 9, 10), depth: steps(0, 60, 2), drift: steps(0.1, 5, 10), layer: steps(4, 20, 2),
});
export type Common = typeof common extends fc.Arbitrary<infer T> ? T : never;

export interface Placed extends Common {
  readonly kind: 'placed';
  readonly laser: V; readonly S1: V; readonly M1: V; readonly M2: V; readonly M3: V; readonly whelk: V; readonly P1: V;
  readonly by: number;
  /** faces the object, or a heading and a tilt in degrees */
  readonly faces: 'whelk' | readonly [number, number];
}
export interface Told extends Common {
  readonly kind: 'told';
  /** raw; to M1, to R1, to P1; to M2, to the object, to P1 */
  readonly legs: readonly [number, number, number, number, number, number, number];
  readonly reference: number; readonly object: number; readonly litAt: number;
  readonly hologram: 'transmission' | 'reflection';
}

/** Light that runs along a plate misses it, and there are no figures then. */
const GRAZING = (84 * Math.PI) / 180;
export const normalOf = (s: Placed): V => (s.faces === 'whelk' ? direction(s.P1, s.whelk) : heading((s.faces[0] * Math.PI) / 180, (s.faces[1] * Math.PI) / 180));

const apart = (places: readonly V[]): boolean => places.every((a, i) => places.every((b, j) => i >= j || Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) > 100));
export const placed: fc.Arbitrary<Placed> = fc.tuple(common, fc.record({
  laser: place, S1: place, M1: place, M2: place, M3: place, whelk: place, P1: place, by: steps(20, 90, 2), faces: fc.oneof(fc.constant('whelk' as const), fc.tuple(steps(0, 359, 2), steps(-30, 30, 2))),
})).map(([c, p]): Placed => ({ kind: 'placed', ...c, ...p })).filter(s => apart([s.laser, s.S1, s.M1, s.M2, s.M3, s.whelk, s.P1]) && [s.M1, s.whelk].every(from => fromNormal(direction(from, s.P1), normalOf(s)) < GRAZING));
export const told: fc.Arbitrary<Told> = fc.tuple(common, fc.record({
  legs: fc.tuple(steps(100, 900, 2), steps(100, 1500, 2), steps(20, 90, 2), steps(150, 1500, 2), steps(100, 1500, 2), steps(100, 1500, 2), steps(150, 600, 2)),
  reference: steps(-75, 75, 2), object: steps(-40, 40, 2), litAt: steps(0, 150, 2), hologram: fc.constantFrom('transmission' as const, 'reflection' as const),
})).map(([c, t]): Told => ({ kind: 'told', ...c, ...t }))
  // Two beams from one side make no fringes, and nothing is left to compare.
  .filter(s => s.hologram === 'reflection' || Math.abs(s.reference - s.object) > 0.4);

const coherence = (l: Line): string[] => (l.by === 'linewidth' ? [`linewidth: ${l.width / 1e6} MHz`, `line shape: ${l.shape}`]
  : l.by === 'length' ? [`coherence length: ${l.length * 1e3} mm`, `coherence contrast: ${Math.round(l.contrast * 100)}%`, `line shape: ${l.shape}`] : [`tube length: ${l.tube * 1e3} mm`, `modes: ${l.modes}`]);

export function textOf(s: Placed | Told): string {
  const at = (name: keyof Placed): string => (s.kind === 'placed' ? ` at (${(s[name] as V).join(', ')}) mm` : '');
  const facts = (head: string, ...lines: readonly string[]): string[] => [`${head} {`, ...lines.map(l => `  ${l}`), '}'];
  const leg = (to: string, n: number): string => `  -> ${to}${s.kind === 'told' ? `: ${s.legs[n]!} mm` : ''}`;
  const faces = s.kind === 'told' ? '' : s.faces === 'whelk' ? ' facing whelk' : ` heading ${s.faces[0]}° tilted ${s.faces[1]}°`;
  const angles = s.kind === 'told' ? [`reference angle: ${s.reference}°`, `object angle: ${s.object}°`] : [];
  const lines = [
    ...(s.kind === 'told' ? [`hologram: ${s.hologram}`] : []),
    ...facts(`laser red${at('laser')}`, `wavelength: ${s.wavelength} nm`, `power: ${s.power} mW`, `beam diameter: ${s.diameter} mm`, `beam quality: ${s.quality}`, ...coherence(s.line)),
    ...facts(`splitter S1${at('S1')}`, `reflects: ${s.reflects}%`, `loss: ${s.losses[0]}%`),
    ...facts(`mirror M1${at('M1')}`, `loss: ${s.losses[1]}%`),
    ...facts(`spreader R1${s.kind === 'placed' ? ` on M1 -> P1 by ${s.by} mm` : ''}`, `focal length: ${s.focalLength} mm`, `loss: ${s.losses[2]}%`),
    ...facts(`mirror M2${at('M2')}`, `loss: ${s.losses[1]}%`), ...(s.kind === 'placed' ? facts(`mirror M3${at('M3')}`, `loss: ${s.losses[1]}%`) : []),
    ...facts(`object whelk${at('whelk')}`, `depth: ${s.depth} mm`, ...(s.kind === 'told' ? [`lit at: ${s.litAt}°`] : [])),
    ...facts(`plate P1${at('P1')}${faces}`, ...angles, `sensitivity: ${s.dose} µJ/cm²`, `index: ${s.index}`, `layer: ${s.layer} µm`),
    'beam raw from red', leg('S1', 0), 'beam reference from S1 through', leg('M1', 1), leg('R1', 2), leg('P1', 3),
    'beam object from S1 reflected', leg('M2', 4), ...(s.kind === 'placed' ? ['  -> M3'] : []), leg('whelk', 5), leg('P1', 6),
    `measured object at P1: ${s.metered} µW/cm²`, `measured drift at P1: ${s.drift} fringes/min`, `aim beam ratio: ${s.aimed}:1`,
  ];
  return `setup "Random" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`;
}
