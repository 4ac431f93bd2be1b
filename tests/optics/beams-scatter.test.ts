/** Light thrown back by objects: Lambert's disc, conservation of energy, the lobe, symmetry. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diffuseLight, glossLight, scatteredLight, type Patch } from '../../server/optics/beams/scatter.ts';
import type { Vector } from '../../server/optics/vectors.ts';
import { between, expectNear, expectPrinted, integral, publishedValue } from './outside.ts';

const MM = 1e-3;
const Z: Vector = [0, 0, 1];
const patch: Patch = { at: [0, 0, 0], normal: Z, area: 1e-8, light: 2, reflectance: 0.5 };
const SENT = 1e-8;

/** A disc round the z axis that faces along it, in patches, seen from (aside, 0, distance) by a surface parallel to it. */
function disc(radius: number, light: number, reflectance: number, distance: number, aside: number): number {
  const [rings, sectors] = [100, 200];
  let sum = 0;
  for (let i = 0; i < rings; i++) {
    for (let j = 0; j < sectors; j++) {
      const [s, f] = [((i + 0.5) / rings) * radius, (2 * Math.PI * (j + 0.5)) / sectors];
      const area = (2 * Math.PI * s * (radius / rings)) / sectors;
      sum += diffuseLight({ at: [s * Math.cos(f), s * Math.sin(f), 0], normal: Z, area, light, reflectance }, [aside, 0, distance], Z);
    }
  }
  return sum;
}

describe('a matt disc', () => {
  it('reproduces the published light on its axis', () => {
    const value = publishedValue('lambert-disc');
    const light = value.input('P_W') / (Math.PI * value.input('R_m') ** 2);
    const sum = disc(value.input('R_m'), light, value.input('rho'), value.input('d_m'), 0);
    // 20 000 patches: their own extent counts for dA/(π d²) = 10⁻⁶; the rule of midpoints for 10⁻⁶.
    expectNear(sum, 0.01567064055, 4e-6 * 0.0157);
    // In one piece it is exact, as the patch counts as a disc of its area.
    value.check(diffuseLight({ at: [0, 0, 0], normal: Z, area: Math.PI * value.input('R_m') ** 2, light, reflectance: value.input('rho') }, [0, 0, value.input('d_m')], Z));
  });

  // 4 mW on a disc of 50 mm (2.03718 W/m²), R_d 0.5, plate at 200 mm; by double quadrature elsewhere.
  const light = 0.004 / (Math.PI * 0.025 ** 2);
  it('of 50 mm with 4 mW on it has 2.03718 W/m², gives 1.56706 µW/cm² on axis and 0.0101347 W/m² 100 mm off it', () => {
    expectPrinted(light, '2.03718');
    expectPrinted(diffuseLight({ at: [0, 0, 0], normal: Z, area: Math.PI * 0.025 ** 2, light, reflectance: 0.5 }, [0, 0, 0.2], Z) / 0.01, '1.56706');
    expectNear(disc(0.025, light, 0.5, 0.2, 0.1), 0.0101347, 1e-7);
    // cos⁴ of 26.57°, 0.64, of the light on axis: 0.0100292, 1 % below.
    expectPrinted(diffuseLight({ at: [0, 0, 0], normal: Z, area: Math.PI * 0.025 ** 2, light, reflectance: 0.5 }, [0, 0, 0.2], Z) * 0.64, '0.0100292');
  });

  it('as a point would give 0.0159155', () => {
    // A patch a million times smaller with as much more light on it has no extent.
    expectPrinted(diffuseLight({ at: [0, 0, 0], normal: Z, area: Math.PI * 0.025 ** 2 * 1e-6, light: light * 1e6, reflectance: 0.5 }, [0, 0, 0.2], Z), '0.0159155');
  });

  it('of any size gives R E a²/(a² + d²), and touching it R E', () => {
    fc.assert(fc.property(between(1, 100), between(1, 500), between(0.01, 1), (a, d, reflectance) => {
      const exact = (reflectance * a * a) / (a * a + d * d);
      expectNear(diffuseLight({ at: [0, 0, 0], normal: Z, area: Math.PI * (a * MM) ** 2, light: 1, reflectance }, [0, 0, d * MM], Z), exact, 1e-12);
    }));
    expectNear(disc(50 * MM, 1, 0.8, 50 * MM, 0), 0.4, 1e-4);
  });
});

/** Light of 1 m² round the patch, on a sphere of radius 1 m centred on it, within its upper half; poles along `pole` in the plane y = 0. */
function sphere(light: (point: Vector) => number, tilt: number, to: number): number {
  const at = (angle: number, f: number): Vector => {
    const [x, y, z] = [Math.sin(angle) * Math.cos(f), Math.sin(angle) * Math.sin(f), Math.cos(angle)];
    return [Math.cos(tilt) * x + Math.sin(tilt) * z, y, Math.cos(tilt) * z - Math.sin(tilt) * x];
  };
  return integral(angle => Math.sin(angle) * integral(f => light(at(angle, f)), 0, 2 * Math.PI, 120), 0, to, 400);
}

describe('what a patch throws back', () => {
  it('diffusely adds up to its share of the light', () => {
    expectNear(sphere(p => diffuseLight(patch, p, p), 0, Math.PI / 2), SENT, 1e-6 * SENT);
  });

  it.each([[0, 0.1], [0.5, 0.1], [-0.8, 0.05], [0, 0.6]])('into a lobe, light at %f rad, half width %f rad, adds up to its share of the light', (slant, half) => {
    const light: Vector = [Math.sin(slant), 0, -Math.cos(slant)];
    expectNear(sphere(p => glossLight(patch, light, half, p, p), slant, Math.PI / 2), SENT, 1e-5 * SENT);
  });

  it('is never more than that share, however slanted and wide', () => {
    fc.assert(fc.property(between(-1.5, 1.5), between(0.05, 1.2), (slant, half) => {
      const light: Vector = [Math.sin(slant), 0, -Math.cos(slant)];
      expect(sphere(p => glossLight(patch, light, half, p, p), slant, Math.PI / 2)).toBeLessThan(SENT * (1 + 1e-4));
    }), { numRuns: 30 });
  });

  it('within a few percent all of it while the mirror direction is two half widths clear of the surface', () => {
    for (const half of [0.05, 0.2, 0.4]) {
      const slant = Math.PI / 2 - 2 * half;
      const light: Vector = [Math.sin(slant), 0, -Math.cos(slant)];
      expect(sphere(p => glossLight(patch, light, half, p, p), slant, Math.PI / 2)).toBeGreaterThan(0.97 * SENT);
    }
  });

  it('falls to half at the half width from the mirror direction', () => {
    fc.assert(fc.property(between(0.002, 0.5), between(-0.5, 0.5), fc.boolean(), (half, slant, side) => {
      const light: Vector = [Math.sin(slant), 0, -Math.cos(slant)];
      const at = (angle: number): number => { const p: Vector = [Math.sin(angle), 0, Math.cos(angle)]; return glossLight({ ...patch, area: 1e-14 }, light, half, p, p); };
      expectNear(at(slant + (side ? half : -half)) / at(slant), 0.5, 1e-6);
    }));
  });

  it('is brightest where a mirror would send it, by the strength of the lobe, and by the cosine on a slanted surface', () => {
    // The law of reflection by hand: u − 2(u·n)n, with n of thirds. (n + 1)/2π W per solid angle of each watt, half at the half width.
    const strength = (Math.LN2 / -Math.log(Math.cos(0.3)) + 1) / (2 * Math.PI);
    const cases: readonly (readonly [Vector, Vector, Vector])[] = [
      [[1 / 3, 2 / 3, 2 / 3], [0, 0, -1], [4 / 9, 8 / 9, -1 / 9]],
      [[2 / 3, 1 / 3, 2 / 3], [-1, 0, 0], [-1 / 9, 4 / 9, 8 / 9]],
      [[2 / 3, 2 / 3, 1 / 3], [0, -1, 0], [8 / 9, -1 / 9, 4 / 9]],
    ];
    for (const [normal, light, mirror] of cases) {
      const small: Patch = { ...patch, normal, area: 1e-14 };
      expectNear(glossLight(small, light, 0.3, mirror, mirror) / (1e-14 * strength), 1, 1e-9);
      // 60° from it: half
      const aside: Vector = [mirror[1], -mirror[0], 0];
      const length = Math.hypot(...aside);
      const slanted = mirror.map((c, i) => c / 2 + (Math.sqrt(3) / 2) * (aside[i]! / length)) as unknown as Vector;
      expectNear(glossLight(small, light, 0.3, mirror, slanted) / (1e-14 * strength), 0.5, 1e-9);
    }
  });

  it('is nowhere brighter than the share of the light on the patch, however near', () => {
    fc.assert(fc.property(between(-6, 1), between(0.002, 1), fc.boolean(), (power, half, glossy) => {
      const p: Vector = [0, 0, 10 ** power];
      const light = glossy ? glossLight(patch, [0, 0, -1], half, p, Z) : diffuseLight(patch, p, Z);
      expect(light).toBeLessThanOrEqual(0.5 * 2 * (1 + 1e-12));
    }));
  });

  it('goes to the front only, and needs light from there', () => {
    expect(diffuseLight(patch, [0.1, 0, -1], Z)).toBe(0);
    expect(glossLight(patch, [0, 0, -1], 0.3, [0.1, 0, -1], Z)).toBe(0);
    expect(glossLight(patch, [0, 0, 1], 0.3, [0.1, 0, 1], Z)).toBe(0);
    // Grazing, so that a wide lobe reaches past the surface, from either side.
    expect(glossLight(patch, [1, 0, 0.1], 0.5, [1, 0, 0.1], Z)).toBe(0);
    expect(glossLight(patch, [1, 0, -0.1], 0.5, [1, 0, -0.1], Z)).toBe(0);
  });

  it('partly matt and partly glossy is the mixture of both', () => {
    const light: Vector = [0.3, 0.1, -1];
    const [point, normal]: [Vector, Vector] = [[0.2, 0, 0.5], [0, 1, 1]];
    expectNear(scatteredLight(patch, { share: 0, halfWidth: 0.2 }, light, point, normal), diffuseLight(patch, point, normal), 0);
    expectNear(scatteredLight(patch, { share: 1, halfWidth: 0.2 }, light, point, normal), glossLight(patch, light, 0.2, point, normal), 0);
    const quarter = 0.75 * diffuseLight(patch, point, normal) + 0.25 * glossLight(patch, light, 0.2, point, normal);
    expectNear(scatteredLight(patch, { share: 0.25, halfWidth: 0.2 }, light, point, normal), quarter, 1e-15 * quarter);
  });

  it('is the same in a mirror, in proportion to light and area, and in other units of length', () => {
    const part = between(-1, 1);
    const gloss = { share: 0.3, halfWidth: 0.2 };
    fc.assert(fc.property(part, part, part, part, between(0.1, 1), between(0.2, 5), (x, y, u, v, z, k) => {
      const one = scatteredLight(patch, gloss, [u, v, -1], [x, y, z], [u, y, 1]);
      const close = (other: number): void => expectNear(other, one, 1e-9 * one + 1e-12 * SENT);
      close(scatteredLight(patch, gloss, [u, -v, -1], [x, -y, z], [u, -y, 1]));
      close(scatteredLight({ ...patch, light: k * patch.light }, gloss, [u, v, -1], [x, y, z], [u, y, 1]) / k);
      close(scatteredLight({ ...patch, area: k * k * patch.area }, gloss, [u, v, -1], [k * x, k * y, k * z], [u, y, 1]));
    }));
  });
});
