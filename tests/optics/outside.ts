// Numerical tools and published values that the checks of the optics functions stand on; nothing here uses the code under test.
import fc from 'fast-check';
import { expect } from 'vitest';
import published from './published-values.json' with { type: 'json' };

interface Published {
  id: string
  inputs: Record<string, unknown>
  expected: unknown
  tolerance: string
}

/** The published or independently computed value of this id, with its inputs; its source and provenance stand in the file. */
export function publishedValue(id: string): { input: (name: string) => number; check: (result: number) => void } {
  const entry = (published as Published[]).find((candidate) => candidate.id === id);
  if (entry === undefined || typeof entry.expected !== 'number') throw new Error(`no published number ${id}`);
  const { expected, inputs, tolerance } = entry;
  const [kind, size] = tolerance.split(' ');
  const allowed = Number(size) * (kind === 'rel' ? Math.abs(expected) : 1);
  return {
    input: (name) => {
      const value = inputs[name];
      if (typeof value !== 'number') throw new Error(`${id} has no number ${name}`);
      return value;
    },
    check: (result) => expectNear(result, expected, allowed, id),
  };
}

/** The inputs and the expected figures of this id, where they are several. */
export function publishedFigures(id: string): { readonly inputs: unknown; readonly expected: unknown } {
  const entry = (published as Published[]).find((candidate) => candidate.id === id);
  if (entry === undefined) throw new Error(`nothing published is called ${id}`);
  return entry;
}

/** Ids of the published values that begin so. */
export function publishedIds(start: string): string[] {
  return (published as Published[]).map((entry) => entry.id).filter((id) => id.startsWith(start));
}

export function expectNear(result: number, expected: number, allowed: number, label = ''): void {
  expect(Math.abs(result - expected), `${label}: ${result} should be ${expected} ± ${allowed}`).toBeLessThanOrEqual(allowed);
}

/** The result rounds to a number as printed in a table: half a unit of its last digit either way. */
export function expectPrinted(result: number, printed: string): void {
  const decimals = printed.split('.')[1]?.length ?? 0;
  expectNear(result, Number(printed), 0.5 * 10 ** -decimals * (1 + 1e-9), printed);
}

/** Numbers spread evenly between two ends, both included. `fc.double` is not: it favours numbers near 0 by many powers of ten. */
export function between(from: number, to: number): fc.Arbitrary<number> {
  const steps = 2 ** 31 - 1;
  return fc.integer({ min: 0, max: steps }).map((i) => from + ((to - from) * i) / steps);
}

/** Central difference of fourth order. */
export function centralDifference(f: (x: number) => number, x: number, step: number): number {
  return (8 * (f(x + step) - f(x - step)) - (f(x + 2 * step) - f(x - 2 * step))) / (12 * step);
}

/** Simpson's rule over an even number of steps. */
export function integral(f: (x: number) => number, from: number, to: number, steps: number): number {
  const h = (to - from) / steps;
  let sum = f(from) + f(to);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return (sum * h) / 3;
}
