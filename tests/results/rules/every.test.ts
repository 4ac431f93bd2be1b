/** Every rule of the folder: a figure by hand, slopes against differences, linear where it says so, and told from its like. The list is `every.ts`; `listed.test.ts` holds that none is missing. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Rule } from '../../../server/results/graph.ts';
import { expectNear } from '../read.ts';
import { apart, EVERY, type Use } from './every.ts';

const named = (u: Use): string => `${u.rule.name} (${(u.rule.of ?? []).filter(v => typeof v !== 'object').join(' ')}) at ${u.at.map(v => Number(v.toPrecision(3))).join(', ')}`;

describe('a figure by hand', () => {
  test.each(EVERY.map(u => [named(u), u] as const))('%s', (_, { again, at, is }) => {
    // Of what is nothing only rounding is left.
    expectNear(again().compute(at), is, is === 0 ? 1e-12 : 1e-9 * Math.abs(is));
  });
});

const inputs = (u: Use): fc.Arbitrary<number[]> => fc.tuple(...u.between!.map(b => (typeof b === 'number' ? fc.constant(b) : fc.integer({ min: 0, max: 1e6 }).map(part => b[0] + (part / 1e6) * (b[1] - b[0])))));

describe('stated slopes', () => {
  test('each rule that states slopes has inputs to try them at', () => {
    for (const u of EVERY) if (u.rule.partials) expect(u.between?.length, named(u)).toBe(u.at.length);
  });
  test.each(EVERY.filter(u => u.rule.partials).map(u => [named(u), u] as const))('%s', (_, u) => {
    const { rule, between } = u;
    let compared = 0;
    fc.assert(fc.property(inputs(u), x => {
      const stated = rule.partials!(x);
      expect(stated).toHaveLength(x.length);
      between!.forEach((b, i) => {
        if (typeof b === 'number') return;
        const found = slope(rule, x, i, b);
        if (!found) return;
        compared++;
        expectNear(stated[i]!, found.value, 1e-5 * Math.abs(found.value) + 3 * found.unsure, `by input ${i} at ${x.join(', ')}`);
      });
    }), { numRuns: 40, seed: 1 });
    expect(compared).toBeGreaterThan(20);
  });
});

/** By central differences of two steps, with how far they can be trusted; nothing at a kink or at the end of what the rule takes. */
function slope(rule: Rule, x: readonly number[], i: number, [from, to]: readonly [number, number]): { readonly value: number; readonly unsure: number } | undefined {
  const [h, most] = [(to - from) * 1e-4, Math.max(Math.abs(from), Math.abs(to))];
  const at = (by: number): number => rule.compute(x.map((v, k) => (k === i ? v + by : v)));
  const here = at(0);
  const [coarse, fine] = [h, h / 2].map(s => (at(s) - at(-s)) / (2 * s)) as [number, number];
  const [left, right] = [(here - at(-h)) / h, (at(h) - here) / h];
  const value = (4 * fine - coarse) / 3;
  // As large as rounding makes it.
  const rounding = (1e-14 * Math.max(Math.abs(here), Math.abs(at(h)))) / h;
  const size = Math.max(Math.abs(left), Math.abs(right));
  if (![value, rounding].every(Number.isFinite) || Math.abs(left - right) > 0.05 * size + rounding) return undefined;
  // Slopes that a rule finds by steps have rounding of their own: it is small beside what the input is of.
  return { value, unsure: Math.abs(fine - coarse) + rounding + 5e-9 * size + (5e-9 * Math.abs(here) + 1e-10) / most };
}

describe('a rule that says that it is linear', () => {
  test.each(EVERY.filter(u => u.rule.linear).map(u => [named(u), u] as const))('%s: halfway between two inputs it is halfway between both figures', (_, u) => {
    fc.assert(fc.property(inputs(u), inputs(u), (x, y) => {
      const [a, b] = [u.rule.compute(x), u.rule.compute(y)];
      expectNear(u.rule.compute(x.map((v, i) => (v + y[i]!) / 2)), (a + b) / 2, 1e-12 * (Math.abs(a) + Math.abs(b) + 1));
    }), { numRuns: 40 });
  });
});

describe('rules that are made', () => {
  const told = ({ name, formula, of }: Rule): readonly unknown[] => [name, formula, ...(of ?? [])];
  test.each(apart().map(([a], i) => [a.name, i] as const))('%s is told from another of its kind', (_, i) => {
    const [a, b] = apart()[i]!;
    expect(told(a)).not.toEqual(told(b));
  });
});
