/** No number, however odd, makes a function of polarization or of surfaces throw or give anything but finite numbers. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import * as field from '../../server/optics/polarization/field.ts';
import * as incidence from '../../server/optics/polarization/incidence.ts';
import * as overlap from '../../server/optics/polarization/overlap.ts';
import * as pass from '../../server/optics/polarization/pass.ts';
import * as scatter from '../../server/optics/polarization/scatter.ts';
import * as states from '../../server/optics/polarization/states.ts';
import * as fresnel from '../../server/optics/surfaces/fresnel.ts';
import * as ghosts from '../../server/optics/ghosts/ghosts.ts';
import * as plainPlate from '../../server/optics/surfaces/plain-plate.ts';
import * as refract from '../../server/optics/surfaces/refract.ts';
import * as secondSpot from '../../server/optics/ghosts/second-spot.ts';
import type { Vector } from '../../server/optics/vectors.ts';
import { between } from './outside.ts';

const any = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -0, 1, -1, 0.5, Math.PI / 2, 1e-300, 1e300, Number.MIN_VALUE, Number.MAX_VALUE, Infinity, -Infinity, NaN),
  between(-10, 10),
  between(-30, 30).map(power => 10 ** power),
);
const vector: fc.Arbitrary<Vector> = fc.tuple(any, any, any);
const anyField = fc.record({ direction: vector, re: vector, im: vector });
const weight = fc.constantFrom<pass.FaceWeight>('power', 'amplitude', 'none');
const turning = fc.constantFrom<field.Turning>('clockwise', 'counter-clockwise');

interface Given { f: field.Field; g: field.Field; v: Vector; w: Vector; a: number; b: number; c: number; d: number; weight: pass.FaceWeight; turning: field.Turning }
const given: fc.Arbitrary<Given> = fc.record({ f: anyField, g: anyField, v: vector, w: vector, a: any, b: any, c: any, d: any, weight, turning });

/** Every public function with arguments of every kind. */
const calls: Readonly<Record<string, (x: Given) => unknown>> = {
  axisAt: x => field.axisAt(x.v, x.a),
  linearField: x => field.linearField(x.v, x.a),
  verticalField: x => field.verticalField(x.v),
  horizontalField: x => field.horizontalField(x.v),
  circularField: x => field.circularField(x.v, x.turning),
  fieldPower: x => field.fieldPower(x.f),
  ellipseOf: x => field.ellipseOf(x.f),
  cleaned: x => field.cleaned(x.f),
  sAxis: x => incidence.sAxis(x.v, x.w),
  sShare: x => incidence.sShare(x.f, x.v),
  polarizedLight: x => states.lightPower(states.polarizedLight(x.f)),
  unpolarizedLight: x => states.unpolarizedLight(x.v),
  lightPower: x => states.lightPower([...states.polarizedLight(x.f), ...states.unpolarizedLight(x.v)]),
  each: x => states.each(states.polarizedLight(x.f), f => pass.mirrored(f, x.v)),
  mirrored: x => pass.mirrored(x.f, x.v),
  coated: x => pass.coated(x.f, x.v, { s: [x.a, x.b], p: [x.c, x.d] }),
  mirrorAmplitudes: x => pass.mirrorAmplitudes({ s: x.a, p: x.b }, x.c),
  splitReflected: x => pass.splitReflected(x.f, x.v, { s: x.a, p: x.b }, x.c),
  splitThrough: x => pass.splitThrough(x.f, x.v, { s: x.a, p: x.b }, x.c),
  polarizerPassed: x => pass.polarizerPassed(x.f, x.a),
  retarded: x => pass.retarded(x.f, x.a, x.b),
  halfWavePassed: x => pass.halfWavePassed(x.f, x.a),
  quarterWavePassed: x => pass.quarterWavePassed(x.f, x.a),
  delayAt: x => pass.delayAt(x.a, x.b, x.c),
  attenuated: x => pass.attenuated(x.f, x.a),
  refractedField: x => pass.refractedField(x.f, x.v, x.a, x.b, x.weight),
  refractedLight: x => pass.refractedLight([...states.polarizedLight(x.f), ...states.unpolarizedLight(x.w)], x.v, x.a, x.b, x.weight),
  faceReflected: x => pass.faceReflected(x.f, x.v, x.a, x.b),
  scatteredBack: x => scatter.scatteredBack([...states.polarizedLight(x.f), ...states.unpolarizedLight(x.w)], x.v, x.a),
  scatteredThrough: x => scatter.scatteredThrough([...states.polarizedLight(x.f), ...states.unpolarizedLight(x.w)], x.v, x.a),
  fieldOverlap: x => overlap.fieldOverlap(x.f, x.g),
  layerOverlap: x => overlap.layerOverlap(x.f, x.g, x.v, x.a, x.weight),
  interferingShare: x => overlap.interferingShare(states.polarizedLight(x.f), scatter.scatteredBack(states.polarizedLight(x.g), x.v, x.a)),
  layerInterferingShare: x => overlap.layerInterferingShare(states.unpolarizedLight(x.v), states.polarizedLight(x.g), x.w, x.a, x.weight),
  fresnelAmplitudes: x => fresnel.fresnelAmplitudes(x.a, x.b, x.c),
  reflectedShares: x => fresnel.reflectedShares(x.a, x.b, x.c),
  passedShares: x => fresnel.passedShares(x.a, x.b, x.c),
  refractionAngle: x => fresnel.refractionAngle(x.a, x.b, x.c),
  criticalAngle: x => fresnel.criticalAngle(x.a, x.b),
  brewsterAngle: x => fresnel.brewsterAngle(x.a, x.b),
  plainPlateShares: x => plainPlate.plainPlateShares(x.a, x.b),
  reflectedDirection: x => refract.reflectedDirection(x.v, x.w),
  refractedDirection: x => refract.refractedDirection(x.v, x.w, x.a, x.b),
  twoBounceContrast: x => ghosts.twoBounceContrast(x.a),
  backFaceContrast: x => ghosts.backFaceContrast(x.a),
  ghostContrasts: x => ghosts.ghostContrasts(x.f, x.v, x.a),
  lightGhostContrasts: x => ghosts.lightGhostContrasts([{ field: x.f, state: 0, steady: true }, { field: x.g, state: 1, steady: true }], x.v, x.a),
  ghostFringeStep: x => ghosts.ghostFringeStep(x.a, x.b, x.c),
  wedgeFringeSpacing: x => ghosts.wedgeFringeSpacing(x.a, x.b, x.c, x.d),
  secondSpotOffset: x => secondSpot.secondSpotOffset(x.a, x.b, x.c),
  secondSpotAngle: x => secondSpot.secondSpotAngle(x.a, x.b, x.c),
  secondSpotShare: x => secondSpot.secondSpotShare(x.a, x.b),
};

/** True or false, and the arithmetic of fields that are clean already. */
const OTHERS = ['along', 'component', 'composed', 'product', 'standsParallel', 'weakened'];

it('all public functions are tried', () => {
  const names = [field, incidence, overlap, pass, scatter, states, fresnel, ghosts, plainPlate, refract, secondSpot]
    .flatMap(module => Object.entries(module as Record<string, unknown>).flatMap(([name, value]) => (typeof value === 'function' ? [name] : [])));
  expect([...Object.keys(calls), ...OTHERS].sort()).toEqual(names.sort());
});

it.each(Object.entries(calls))('%s stays finite', (name, call) => {
  fc.assert(fc.property(given, x => {
    const result = call(x);
    const odd = numbersIn(result).filter(n => !Number.isFinite(n));
    expect(odd, `${name} gave ${JSON.stringify(result)}`).toEqual([]);
  }), { numRuns: 300 });
});

it('standsParallel answers true or false', () => {
  fc.assert(fc.property(vector, vector, any, (a, b, c) => { expect(typeof ghosts.standsParallel(a, b, c)).toBe('boolean'); }));
});

it('shares and contrasts lie between 0 and 1', () => {
  fc.assert(fc.property(given, x => {
    const names = ['sShare', 'fieldOverlap', 'layerOverlap', 'interferingShare', 'layerInterferingShare', 'reflectedShares', 'passedShares', 'plainPlateShares', 'twoBounceContrast', 'backFaceContrast', 'ghostContrasts', 'secondSpotShare'];
    for (const name of names) for (const n of numbersIn(calls[name]!(x))) { expect(n, name).toBeGreaterThanOrEqual(0); expect(n, name).toBeLessThanOrEqual(1 + 1e-12); }
  }));
});

function numbersIn(result: unknown): number[] {
  if (typeof result === 'number') return [result];
  return typeof result === 'object' && result !== null ? Object.values(result).flatMap(numbersIn) : [];
}
