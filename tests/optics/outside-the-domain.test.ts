import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as air from '../../server/optics/air.ts';
import * as cavity from '../../server/optics/coherence/cavity.ts';
import * as coherenceLength from '../../server/optics/coherence/coherence-length.ts';
import * as domains from '../../server/optics/coherence/domains.ts';
import * as equalModes from '../../server/optics/coherence/equal-modes.ts';
import * as gaussianGain from '../../server/optics/coherence/gaussian-gain.ts';
import * as lineShapes from '../../server/optics/coherence/line-shapes.ts';
import * as unknownModes from '../../server/optics/coherence/unknown-modes.ts';
import * as weightedModes from '../../server/optics/coherence/weighted-modes.ts';
import * as depth from '../../server/optics/depth.ts';
import * as drift from '../../server/optics/drift.ts';
import * as exposure from '../../server/optics/exposure.ts';
import * as glass from '../../server/optics/glass.ts';
import * as light from '../../server/optics/light.ts';
import * as power from '../../server/optics/power.ts';
import { isWithin, nearestWithin } from '../../server/optics/range.ts';
import * as tape from '../../server/optics/tape.ts';
import * as visibility from '../../server/optics/visibility.ts';
import { between } from './outside.ts';

/** Anything that the type number allows, the awkward ones often. */
const any = fc.oneof(
  fc.double(),
  fc.constantFrom(0, -0, 1, -1, 0.5, 1e-300, 1e300, Number.MIN_VALUE, Number.MAX_VALUE, Infinity, -Infinity, NaN),
  between(-10, 10),
  between(-30, 30).map((power) => 10 ** power),
);
const shape = fc.constantFrom(...lineShapes.lineShapes);
const meaning = fc.constantFrom(...coherenceLength.coherenceLengthMeanings);
const material = fc.constantFrom(glass.acrylic, glass.borosilicateCrown, glass.fusedSilica, glass.sodaLime);

type Call = readonly [name: string, call: (...numbers: number[]) => unknown]

/** Every public function, with its arguments taken from five numbers, a line shape, a meaning and a glass. */
function calls(s: lineShapes.LineShape, m: coherenceLength.CoherenceLengthMeaning, g: glass.Glass): Call[] {
  const plain = (name: string, f: (...numbers: never[]) => unknown): Call => [name, f as (...numbers: number[]) => unknown];
  return [
    ['lineCoherence', (a, b) => lineShapes.lineCoherence(s, a, b)],
    ['lineCoherencePartials', (a, b) => lineShapes.lineCoherencePartials(s, a, b)],
    ['lineCoherenceReach', (a, b) => lineShapes.lineCoherenceReach(s, a, b)],
    ['coherenceLength', (a) => coherenceLength.coherenceLength(m, s, a)],
    ['linewidthOfCoherenceLength', (a) => coherenceLength.linewidthOfCoherenceLength(m, s, a)],
    plain('linewidthOfWavelengthWidth', coherenceLength.linewidthOfWavelengthWidth),
    plain('modeSpacing', cavity.modeSpacing),
    plain('revivalDistance', cavity.revivalDistance),
    plain('revivalDistanceOfModeSpacing', cavity.revivalDistanceOfModeSpacing),
    plain('nearestRevival', cavity.nearestRevival),
    plain('equalModesCoherence', equalModes.equalModesCoherence),
    plain('equalModesCoherencePartials', equalModes.equalModesCoherencePartials),
    plain('equalModesReach', equalModes.equalModesReach),
    plain('gaussianGainCoherence', gaussianGain.gaussianGainCoherence),
    plain('gaussianGainCoherenceSlope', gaussianGain.gaussianGainCoherenceSlope),
    ['weightedModesCoherence', (a, b, c, d) => weightedModes.weightedModesCoherence([a, b], c, d)],
    ['weightedModesCoherenceSlope', (a, b, c, d) => weightedModes.weightedModesCoherenceSlope([a, b], c, d)],
    ['plausibleModeCounts', (a, b, c) => unknownModes.plausibleModeCounts({ from: a, to: b }, c)],
    ['unknownModesCoherence', (a, b, c, d) => unknownModes.unknownModesCoherence({ fewest: a, most: b }, c, d)],
    plain('airIndex', air.airIndex),
    plain('wavelengthInAir', air.wavelengthInAir),
    plain('wavelengthInVacuum', air.wavelengthInVacuum),
    plain('saturationPressure', air.saturationPressure),
    ['refractiveIndex', (a) => glass.refractiveIndex(g, a)],
    ['groupIndex', (a) => glass.groupIndex(g, a)],
    plain('plateCoherencePath', glass.plateCoherencePath),
    plain('depthPathChange', depth.depthPathChange),
    plain('pathWalk', depth.pathWalk),
    ['tapeError', (a) => tape.tapeError('II', a, true)],
    plain('driftContrast', drift.driftContrast),
    plain('longestExposure', drift.longestExposure),
    plain('exposureTime', exposure.exposureTime),
    plain('reciprocityTime', exposure.reciprocityTime),
    plain('lightInPlane', light.lightInPlane),
    plain('angleByReadings', light.angleByReadings),
    plain('lightRatio', light.lightRatio),
    plain('headArea', light.headArea),
    plain('densityTransmission', power.densityTransmission),
    plain('splitterShare', power.splitterShare),
    ['shareAtMark', (a, b, c, d, e) => power.shareAtMark([a, b], [c, d], e)],
    ['weightsAtMark', (a, b, c) => power.weightsAtMark([a, b], c)],
    plain('ratioVisibility', visibility.ratioVisibility),
    plain('ratioVisibilitySlope', visibility.ratioVisibilitySlope),
    plain('recordedBrightness', visibility.recordedBrightness),
    plain('brightnessInStops', visibility.brightnessInStops),
  ];
}

/** All functions that take a number and that the list above has to name. */
function publicFunctions(): string[] {
  const modules = [air, cavity, coherenceLength, equalModes, gaussianGain, lineShapes, unknownModes, weightedModes, depth, drift, exposure, glass, light, power, tape, visibility];
  const names = modules.flatMap((module) => Object.entries(module).flatMap(([name, value]) => (typeof value === 'function' ? [name] : [])));
  // One takes no number; the other answers true or false.
  return names.filter((name) => name !== 'coherenceLengthFactor' && name !== 'areModeCounts').sort();
}

describe('numbers outside the domain', () => {
  it('are tried on every public function', () => {
    expect(calls('gaussian', 'integral', glass.acrylic).map(([name]) => name).sort()).toEqual(publicFunctions());
  });

  it('give a finite result everywhere, never NaN, never an exception', () => {
    fc.assert(
      fc.property(fc.array(any, { minLength: 5, maxLength: 5 }), shape, meaning, material, (numbers, s, m, g) => {
        for (const [name, call] of calls(s, m, g)) {
          const result = call(...numbers);
          const values = typeof result === 'number' ? [result] : Object.values(result as object);
          expect(values.every(Number.isFinite), `${name}(${numbers.join(', ')}) gave ${JSON.stringify(result)}`).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('count as the nearest number inside', () => {
    const { linewidths, pathDifferences } = domains;
    expect(lineShapes.lineCoherence('gaussian', -5, 1)).toBe(lineShapes.lineCoherence('gaussian', linewidths.from, 1));
    expect(lineShapes.lineCoherence('lorentzian', 1e2, 1e9)).toBe(lineShapes.lineCoherence('lorentzian', 1e2, pathDifferences.to));
    expect(air.airIndex(633e-9, 1000, 1e5, 2, 1)).toBe(air.airIndex(633e-9, 373.15, 1e5, 1, 2e-3));
    expect(glass.refractiveIndex(glass.acrylic, 405e-9)).toBe(glass.refractiveIndex(glass.acrylic, glass.acrylic.wavelengths.from));
    expect(visibility.brightnessInStops(0)).toBe(visibility.brightnessInStops(visibility.brightnesses.from));
  });

  it('can be told beforehand', () => {
    const range = { from: 1, to: 2 };
    expect([0.99, 1, 1.5, 2, 2.01, NaN, Infinity].map((value) => isWithin(range, value))).toEqual([false, true, true, true, false, false, false]);
    fc.assert(
      fc.property(any, (value) => {
        const nearest = nearestWithin(range, value);
        expect(isWithin(range, nearest)).toBe(true);
        if (isWithin(range, value)) expect(nearest).toBe(value);
      }),
    );
    expect(isWithin(glass.acrylic.wavelengths, 405e-9)).toBe(false);
  });
});
