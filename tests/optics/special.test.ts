/** Special functions against cephes 3, against the error function of mathjs 15, and against power series at its 64 digits. */
import * as cephes from 'cephes';
import fc from 'fast-check';
import { all, create, type BigNumber } from 'mathjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { besselJ0, erf } from '../../server/optics/special.ts';
import { between, expectNear, expectPrinted } from './outside.ts';

const exact = create(all!, { number: 'BigNumber', precision: 64 });

/** A sum of terms, each made from the last, at 64 digits until they no longer count. */
function series(first: BigNumber, next: (term: BigNumber, n: number) => BigNumber): BigNumber {
  let [sum, term] = [first, first];
  for (let n = 1; term.abs().greaterThan(1e-30); n++) {
    term = next(term, n);
    sum = sum.plus(term);
  }
  return sum;
}

beforeAll(async () => { await cephes.compiled; });

describe('the Bessel function J₀', () => {
  // Abramowitz & Stegun (1964), tables 9.1 and 9.5 (from memory).
  it.each([[0, '1'], [1, '0.7651976866'], [2, '0.2238907791'], [5, '-0.1775967713'], [10, '-0.2459357645'], [2.4048255577, '0.0000000000']] as const)('at %f is %s', (x, printed) => expectPrinted(besselJ0(x), printed));

  it('is that of cephes', () => {
    fc.assert(fc.property(between(-200, 200), x => { expectNear(besselJ0(x), cephes.j0(x), 2e-15, `J0(${x})`); }), { numRuns: 5000 });
  });

  it('is its power series Σ (−x²/4)ⁿ/n!² at 64 digits', () => {
    fc.assert(fc.property(between(0, 40), x => {
      const quarter = exact.bignumber(x).pow(2).div(-4);
      expectNear(besselJ0(x), series(exact.bignumber(1), (term, n) => term.times(quarter).div(n * n)).toNumber(), 1e-15, `J0(${x})`);
    }), { numRuns: 200, examples: [[20], [20 + 2 ** -48]] }); // both sides of where another series takes over
  });
});

describe('the error function', () => {
  // Abramowitz & Stegun (1964), table 7.1 (from memory).
  it.each([[0, '0'], [0.5, '0.5204998778'], [1, '0.8427007929'], [2, '0.9953222650']] as const)('at %f is %s', (x, printed) => expectPrinted(erf(x), printed));

  it('is that of cephes and that of mathjs', () => {
    fc.assert(fc.property(between(-7, 7), x => {
      for (const other of [cephes.erf(x), exact.erf(x)]) expectNear(erf(x), other, 3e-15 * Math.abs(other), `erf(${x})`);
    }), { numRuns: 5000 });
  });

  it('is its power series 2/√π Σ (−1)ⁿ x²ⁿ⁺¹/(n! (2n+1)) at 64 digits', () => {
    fc.assert(fc.property(between(0, 6), x => {
      const square = exact.bignumber(x).pow(2);
      const sum = series(exact.bignumber(x), (term, n) => term.times(square).times(-(2 * n - 1)).div(n * (2 * n + 1)));
      const value = sum.times(2).div(exact.bignumber(Math.PI).sqrt()).toNumber();
      expectNear(erf(x), value, 2e-15 * value, `erf(${x})`);
    }), { numRuns: 200 });
  });

  it('is odd, exactly 0 at 0 and never beyond 1, so that a share is never more than all', () => {
    expect(erf(0)).toBe(0);
    for (let x = 1 / 1024; x < 8; x += 1 / 1024) {
      expect(erf(x), `erf(${x})`).toBeLessThanOrEqual(1);
      expect(erf(-x)).toBe(-erf(x));
    }
  });
});

it('numbers outside all domains give finite results', () => {
  for (const x of [NaN, Infinity, -Infinity, 1e300, -1e300, 5e-324, -0]) for (const f of [besselJ0, erf]) expect(Math.abs(f(x)), `${f.name}(${x})`).toBeLessThanOrEqual(1);
});
