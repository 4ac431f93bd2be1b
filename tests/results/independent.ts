/**
 * A second, independent evaluation for the tests: numbers with their errors as plain sums over sources, and functions of inputs with slopes by differences of the test's own
 * formula. Nothing here is taken from the program.
 */
import fc from 'fast-check';
import { expect } from 'vitest';
import type { Read } from './read.ts';

const ROOT3 = Math.sqrt(3);

/** A number that was written with what it may be off, and its text. */
export interface Written {
  readonly text: string;
  readonly value: number;
  /** standard uncertainty */
  readonly u: number;
}

/** `752 mm`, `752 mm ± 2 mm`, `752 mm ± 1.5 mm std`. A half-width a counts as a/√3 (JCGM 100:2008, 4.3.7). */
export function written(value: number, give: number, unit: string, std = false): Written {
  const gap = unit === '' || unit === '°' || unit === '%' ? '' : ' ';
  const one = (v: number): string => `${v}${gap}${unit}`;
  return { value, u: std ? give : give / ROOT3, text: give === 0 ? one(value) : `${one(value)} ± ${one(give)}${std ? ' std' : ''}` };
}

/** Numbers as a generator gives them: value and half-width in steps of a hundredth of a unit, a third of them exact. */
export const amount = (min: number, max: number, most: number, unit: string): fc.Arbitrary<Written> =>
  fc.record({ v: fc.integer({ min: min * 10, max: max * 10 }), give: fc.oneof(fc.constant(0), fc.integer({ min: 1, max: Math.round(most * 100) }), fc.integer({ min: 1, max: Math.round(most * 100) })), std: fc.boolean() })
    .map(({ v, give, std }) => written(v / 10, give / 100, unit, std));

/** A number with its errors: how far each source moves it, in standard uncertainties of that source. Sources are independent. */
export interface Uncertain {
  readonly value: number;
  readonly by: ReadonlyMap<string, number>;
}

export const exact = (value: number): Uncertain => ({ value, by: new Map() });
export const from = (source: string, { value, u }: Written): Uncertain => ({ value, by: new Map([[source, u]]) });
export const uOf = ({ by }: Uncertain): number => Math.hypot(...by.values());

/** Σ wᵢxᵢ */
export function sum(terms: readonly (readonly [number, Uncertain])[]): Uncertain {
  const by = new Map<string, number>();
  for (const [w, x] of terms) for (const [source, c] of x.by) by.set(source, (by.get(source) ?? 0) + w * c);
  return { value: terms.reduce((s, [w, x]) => s + w * x.value, 0), by };
}
export const plus = (...xs: readonly Uncertain[]): Uncertain => sum(xs.map(x => [1, x]));
export const minus = (a: Uncertain, b: Uncertain): Uncertain => sum([[1, a], [-1, b]]);
/** a·b to first order */
export const times = (a: Uncertain, b: Uncertain): Uncertain => ({ value: a.value * b.value, by: sum([[b.value, a], [a.value, b]]).by });

/** Value and standard uncertainty of a function of independent inputs, by its slopes (JCGM 100:2008, eq. 10). */
export function propagated(f: (x: readonly number[]) => number, inputs: readonly Written[]): { value: number; u: number } {
  const at = inputs.map(x => x.value);
  const terms = inputs.map((x, i) => {
    if (x.u === 0) return 0;
    const h = 1e-4 * Math.max(1, x.u);
    const moved = (d: number): number => f(at.map((v, j) => (j === i ? v + d : v)));
    // Two steps, so that the error falls with the fourth power of the step.
    return (x.u * (8 * (moved(h) - moved(-h)) - (moved(2 * h) - moved(-2 * h)))) / (12 * h);
  });
  return { value: f(at), u: Math.hypot(...terms) };
}

/** The result of that name: its value and its uncertainty to first order, in a unit. */
export function expectFigure(r: Read, name: string, { value, u }: { readonly value: number; readonly u: number }, unit: number, near = 1e-9): void {
  expect(r.cell(name).missing, name).toBeUndefined();
  const [found, uFound] = [r.value(name) / unit, r.u(name) / unit];
  expect(Math.abs(found - value) / Math.max(1, Math.abs(value)), `${name} is ${found}, and should be ${value}`).toBeLessThanOrEqual(near);
  expect(Math.abs(uFound - u) / Math.max(1e-3 * Math.abs(value), u, 1e-3), `u of ${name} is ${uFound}, and should be ${u}`).toBeLessThanOrEqual(1e-4);
}
