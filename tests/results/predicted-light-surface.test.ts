/** The light of an object patch by patch: the quick sum against the functions that it puts together, each of which is held against others. */
import { expect, test } from 'vitest';
import { beamFromRadius, throughLens, type Beam } from '../../server/optics/beams/beam.ts';
import { glossLight, scatteredLight } from '../../server/optics/beams/scatter.ts';
import { lightOnPlane, rayAt } from '../../server/optics/beams/spread.ts';
import { lightFromSurface } from '../../server/optics/maps/lit-object.ts';
import { facing } from '../../server/optics/solids/frame.ts';
import { surfacePatches, type Patch } from '../../server/optics/surface/patches.ts';
import type { Vector } from '../../server/optics/vectors.ts';
import { handStrip, objectLight } from '../../server/results/rules/object-light.ts';

const inner = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const narrow = throughLens(beamFromRadius(0.4e-3, 0, 632.8e-9, 1.2), -0.01);
const beam: Beam = { ...narrow, level: { ...narrow.level, past: 0.5 }, upright: { ...narrow.upright, past: 0.7 } };
const axis = { from: [0.01, -0.02, 0.003] as Vector, along: [0.5, 0.8, -0.1] as Vector };
const eye: Vector = [0.02, -0.3, 0.05];
const normal: Vector = [0.2, 1, 0];
const patches = surfacePatches({ kind: 'sphere', middle: [0, 0, 0], radius: 0.03 }, 300);

/** Each patch by itself; `on`: turned so that the lobe goes on the way of the light. */
const each = (p: Patch, on: boolean): { readonly light: number; readonly ray: Vector; readonly faces: boolean } => {
  const ray = rayAt(beam, axis, p.point);
  return { light: lightOnPlane(beam, axis, 1, p.point, p.normal), ray, faces: on ? inner(ray, p.normal) > 0 : inner(ray, p.normal) < 0 };
};

test.each([0, 0.3, 1])('what is thrown back, a share of %s of it mirror-like', (gloss) => {
  const sum = patches.reduce((s, p) => {
    const { light, ray, faces } = each(p, false);
    return faces ? s + scatteredLight({ at: p.point, normal: p.normal, area: p.area, light, reflectance: 1 }, { share: gloss, halfWidth: 0.3 }, ray, eye, normal) : s;
  }, 0);
  const quick = lightFromSurface(patches, beam, axis, { kind: 'back', gloss, halfWidth: 0.3 }, eye, normal);
  expect(sum).toBeGreaterThan(0);
  expect(Math.abs(quick / sum - 1)).toBeLessThan(1e-9);
});

test('what goes on, round the way of the light: as a mirror lobe of light that comes in mirrored', () => {
  const screen = surfacePatches({ kind: 'box', frame: facing([0, 0, 0], [0, -1, 0]), size: [0.1, 0.1, 0] }, 200).filter(p => p.normal[1] < 0);
  const from = { from: [0, 0.01, 0] as Vector, along: [0.1, -0.9, 0.05] as Vector };
  const sum = screen.reduce((s, p) => {
    const ray = rayAt(beam, from, p.point);
    const k = 2 * inner(ray, p.normal);
    const mirrored: Vector = [ray[0] - k * p.normal[0], ray[1] - k * p.normal[1], ray[2] - k * p.normal[2]];
    return s + glossLight({ at: p.point, normal: p.normal, area: p.area, light: lightOnPlane(beam, from, 1, p.point, p.normal), reflectance: 1 }, mirrored, 0.2, eye, normal);
  }, 0);
  expect(Math.abs(lightFromSurface(screen, beam, from, { kind: 'on', halfWidth: 0.2 }, eye, normal) / sum - 1)).toBeLessThan(1e-9);
});

test('single points are lit and seen from every side', () => {
  const point: Patch = { point: [0, 0, 0], normal: [0, 0, 0], area: 1e-6 };
  const light = lightOnPlane(beam, axis, 1, [0, 0, 0], rayAt(beam, axis, [0, 0, 0]));
  const r2 = inner(eye, eye);
  const slant = Math.abs(inner(eye, normal)) / Math.sqrt(r2 * inner(normal, normal));
  expect(Math.abs(lightFromSurface([point], beam, axis, { kind: 'back', gloss: 0.5, halfWidth: 0.3 }, eye, normal) / ((light * 1e-6 * slant) / (Math.PI * r2 + 1e-6)) - 1)).toBeLessThan(1e-6);
});

test.each([['round', 0.5, 0.5], ['wider than high', 2, 0.5], ['higher than wide', 0.5, 2]])('a beam far narrower than the object, %s, lights it with all of its power', (_, level, upright) => {
  // 0.2 × 0.2 × 0.001 m, white and matt, met squarely by 1 W: Lambert’s cosine law has P / (π r²) for who looks at it squarely, r = 0.4 m to its middle less 0.5 mm to its front.
  const rule = objectLight({ shape: 'box', lying: 'upright', count: 0, byAngle: true, plateByAngle: true });
  // A beam of w mm that runs side by side: Rayleigh range π w² / λ.
  const front = [level, upright].flatMap(w => [0, (Math.PI * (w * 1e-3) ** 2) / 632.8e-9]);
  expect(Math.abs(rule.compute([...front, 632.8e-9, 1, 0.4, 0, 0, 0.3, 0, 0.2, 0.2, 0.001]) * Math.PI * 0.3995 ** 2 - 1)).toBeLessThan(1e-4);
});

test('what is no number, and what lies at one place, gives none', () => {
  const bad: Patch[] = [{ point: [0, 0, 0], normal: [0, 0, 1], area: 0 }];
  expect(lightFromSurface(bad, beam, axis, { kind: 'back', gloss: 0, halfWidth: Number.NaN }, [0, 0, 0], [0, 0, 0])).toBe(0);
  expect(lightFromSurface([], beam, axis, { kind: 'back', gloss: 0, halfWidth: 0.3 }, eye, normal)).toBe(0);
});

test('a test strip steps by √2 about the middle, as a hand can time it, over as much as is unsure', () => {
  // 20 s · 2^(±½), 2^(±1): 10, 14.14, 20, 28.28, 40 s; from 10 s in whole seconds, from 20 in steps of two (rounding of a tenth of the time at most).
  expect(handStrip(20, 18, 22)).toEqual([10, 14, 20, 28, 40]);
  const wide = handStrip(20, 8, 60);
  expect(wide.length).toBe(7);
  expect(Math.min(...wide)).toBeLessThan(8);
  expect(new Set(handStrip(1, 0.9, 1.1)).size).toBe(handStrip(1, 0.9, 1.1).length);
});
