/** Splitter settings and beam ratios, against conservation of energy and published values. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { objectShare, ratioOfShare, singleBeamRatio, totalLight } from '../../server/optics/beams/split.ts';
import { between, expectNear, expectPrinted, publishedValue } from './outside.ts';

describe('the share for the object', () => {
  it('reproduces the published 4 : 1', () => {
    const value = publishedValue('splitter-K4');
    value.check(objectShare(value.input('K'), value.input('A_r'), value.input('A_o')));
  });

  // By hand, A_r/(A_r + K A_o).
  it.each([[4, 0.1, 0.02, '0.555556'], [1, 0.1, 0.02, '0.833333'], [10, 0.3, 0.005, '0.857143']] as const)('for K %f, A_r %f, A_o %f is %s', (k, r, o, printed) => expectPrinted(objectShare(k, r, o), printed));

  it('gives that ratio, and no power is lost', () => {
    fc.assert(fc.property(between(-3, 3), between(-3, 3), between(-2, 2), between(0.1, 50), (r, o, k, milliwatts) => {
      const [reference, object, ratio, power] = [10 ** r, 10 ** o, 10 ** k, milliwatts * 1e-3];
      const share = objectShare(ratio, reference, object);
      // The light of each arm by itself.
      const [fromReference, fromObject] = [power * (1 - share) * reference, power * share * object];
      // The last bit of the share is a bit of what is left of it: the nearer it is to 1, the less is known of 1 − ρ.
      const allowed = (4 * Number.EPSILON * ratio) / (1 - share);
      expectNear(fromReference / fromObject, ratio, allowed);
      expectNear(ratioOfShare(share, reference, object), ratio, allowed);
      expectNear(totalLight(power, share, reference, object), fromReference + fromObject, 1e-12 * (fromReference + fromObject));
    }));
  });

  it('of all or nothing has the ratio at an end', () => {
    expect(ratioOfShare(0, 0.1, 0.02)).toBe(1e9);
    expect(ratioOfShare(1, 0.1, 0.02)).toBe(1e-9);
  });
});

describe('a single-beam hologram of an object that touches', () => {
  // By hand: 1/(R_d · 0.96²), one bare face of glass of 4 % between layer and object.
  it.each([[0.1, '10.9'], [0.3, '3.6'], [0.5, '2.2'], [0.8, '1.36']] as const)('of reflectance %f has a ratio of %s', (reflectance, printed) => expectPrinted(singleBeamRatio(reflectance, 0.96), printed));
});
