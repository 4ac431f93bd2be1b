/** Numbers outside the domain of the functions of beams: a finite result everywhere, never NaN, never an exception. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import * as axes from '../../server/optics/beams/axis.ts';
import * as beams from '../../server/optics/beams/beam.ts';
import * as clip from '../../server/optics/beams/clip.ts';
import * as edge from '../../server/optics/beams/edge.ts';
import * as domains from '../../server/optics/beams/domains.ts';
import * as gaussian from '../../server/optics/beams/gaussian.ts';
import * as pinhole from '../../server/optics/beams/pinhole.ts';
import * as scatter from '../../server/optics/beams/scatter.ts';
import * as split from '../../server/optics/beams/split.ts';
import * as spread from '../../server/optics/beams/spread.ts';
import type { Vector } from '../../server/optics/vectors.ts';
import { between } from './outside.ts';

const any = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -0, 1, -1, 0.5, 1e-300, 1e300, Number.MIN_VALUE, Number.MAX_VALUE, Infinity, -Infinity, NaN),
  between(-10, 10),
  between(-30, 30).map(power => 10 ** power),
);
const wild: fc.Arbitrary<Vector> = fc.tuple(any, any, any);
const parameter = fc.record({ past: any, rayleigh: any });
const beam = fc.oneof(
  fc.record({ level: parameter, upright: parameter, wavelength: any, quality: any }),
  fc.tuple(any, any, any, any).map(([a, b, c, d]) => beams.beamFromRadius(a, b, c, d)),
);

type Call = readonly [name: string, call: () => unknown];

interface Input {
  n: readonly [number, number, number, number]
  beam: beams.Beam
  v: readonly [Vector, Vector, Vector, Vector]
  round: boolean
}

function calls({ n: [a, b, c, d], beam: light, v: [p, q, r, s], round }: Input): Call[] {
  const axis = { from: p, along: q };
  const patch = { at: p, normal: q, area: a, light: b, reflectance: c };
  return [
    ['rayleighRange', () => gaussian.rayleighRange(a, b, c)],
    ['radiusAt', () => gaussian.radiusAt(a, b, c, d)],
    ['farHalfAngle', () => gaussian.farHalfAngle(a, b, c)],
    ['beamQuality', () => gaussian.beamQuality(a, b, c)],
    ['peakLight', () => gaussian.peakLight(a, b)],
    ['lightOffAxis', () => gaussian.lightOffAxis(a, b, c)],
    ['edgeRatio', () => gaussian.edgeRatio(a, b)],
    ['circleShare', () => gaussian.circleShare(a, b)],
    ['rectangleShare', () => gaussian.rectangleShare(a, b, c)],
    ['radiusForEvenness', () => gaussian.radiusForEvenness(a, b)],
    ['beamFromRadius', () => beams.beamFromRadius(a, b, c, d)],
    ['beamFromHalfAngle', () => beams.beamFromHalfAngle(a, b, c)],
    ['carried', () => beams.carried(light, a)],
    ['throughLens', () => beams.throughLens(light, a)],
    ['parameterThroughLens', () => beams.parameterThroughLens(light.level, a)],
    ['parameterRadius', () => beams.parameterRadius(light.level, a, b)],
    ['offFocalMirror', () => beams.offFocalMirror(light, a, b, round ? 'level' : 'upright')],
    ['collimatedHere', () => beams.collimatedHere(light)],
    ['radiusHere', () => beams.radiusHere(light)],
    ['curvatureHere', () => beams.curvatureHere(light)],
    ['sections', () => beams.sections(light)(a)],
    ['toFocus', () => beams.toFocus(light)],
    ['focusRadius', () => beams.focusRadius(light)],
    ['spreadingHalfAngle', () => beams.spreadingHalfAngle(light)],
    ['contourDiameter', () => pinhole.contourDiameter(a, b, c)],
    ['pinholeToChoose', () => pinhole.pinholeToChoose(a, b, c)],
    ['pinholeFit', () => pinhole.pinholeFit(a, b, c, d)],
    ['pinholeShare', () => pinhole.pinholeShare(a, b, c, d)],
    ['finestRipple', () => pinhole.finestRipple(a, b, c)],
    ['objectiveFocalLength', () => pinhole.objectiveFocalLength(a, b)],
    ['openingShare', () => clip.openingShare(light, axis, { shape: round ? 'round' : 'rectangular', centre: r, normal: s, halfWidth: a, halfHeight: b })],
    ['edgeShares', () => edge.edgeShares(p, a, b, c, d)],
    ['lightOnPlane', () => spread.lightOnPlane(light, axis, a, r, s)],
    ['lightOverPlane', () => spread.lightOverPlane(light, axis, a, r, s)(b, c)],
    ['rayAt', () => spread.rayAt(light, axis, r)],
    ['diffuseLight', () => scatter.diffuseLight(patch, r, s)],
    ['glossLight', () => scatter.glossLight(patch, q, d, r, s)],
    ['scatteredLight', () => scatter.scatteredLight(patch, { share: a, halfWidth: d }, q, r, s)],
    ['objectShare', () => split.objectShare(a, b, c)],
    ['ratioOfShare', () => split.ratioOfShare(a, b, c)],
    ['totalLight', () => split.totalLight(a, b, c, d)],
    ['singleBeamRatio', () => split.singleBeamRatio(a, b)],
    ['nearestFocalLength', () => domains.nearestFocalLength(a)],
    ['fromTo', () => axes.fromTo(p, q)],
  ];
}

const numbers = (result: unknown): number[] => typeof result === 'number' ? [result] : Object.values(result as object).flatMap(numbers);
const input: fc.Arbitrary<Input> = fc.record({ n: fc.tuple(any, any, any, any), beam, v: fc.tuple(wild, wild, wild, wild), round: fc.boolean() });

it('are tried on every function', () => {
  const found = [gaussian, beams, pinhole, clip, edge, spread, scatter, split, domains, axes].flatMap(module => Object.entries(module).flatMap(([name, value]) => typeof value === 'function' ? [name] : []));
  const zeros: Input = { n: [0, 0, 0, 0], beam: beams.beamFromRadius(0, 0, 0, 0), v: [[0, 0, 0], [0, 0, 0], [0, 0, 0], [0, 0, 0]], round: true };
  // This takes what the others of the file have made finite.
  expect(calls(zeros).map(([name]) => name).sort()).toEqual(found.filter(name => name !== 'inner').sort());
});

it('give a finite result', () => {
  fc.assert(fc.property(input, (given) => {
    for (const [name, call] of calls(given)) {
      const result = call();
      expect(numbers(result).every(Number.isFinite), `${name} of ${JSON.stringify(given)} gave ${JSON.stringify(result)}`).toBe(true);
    }
  }), { numRuns: 1000 });
});

it('count as the nearest number inside', () => {
  expect(gaussian.radiusAt(-1, 1, 0, 0)).toBe(domains.beamRadii.from);
  expect(gaussian.circleShare(1, -5)).toBe(0);
  expect(domains.nearestFocalLength(0)).toBe(domains.focalSizes.from);
  expect(domains.nearestFocalLength(-Infinity)).toBe(-domains.focalSizes.to);
  expect(split.objectShare(NaN, 1, 1)).toBe(split.objectShare(0, 1, 1));
});
