/** Rules of beams: how far they are past the focus that they spread from, its Rayleigh range, and how wide they are. */
import { beamFromRadius, offFocalMirror, parameterRadius, parameterThroughLens, sections, type Beam, type BeamParameter } from '../../optics/beams/beam.ts';
import { pinholeShare } from '../../optics/beams/pinhole.ts';
import type { Rule } from '../graph.ts';

const SOURCE = 'Kogelnik & Li, Applied Optics 5, 1550 (1966)';

/** What a lens does to a focus does not depend on the wavelength, which is in the Rayleigh range. */
const beamOf = (past: number, rayleigh: number, wavelength = 633e-9, quality = 1): Beam => ({ level: { past, rayleigh }, upright: { past, rayleigh }, wavelength, quality });

/** How far a beam is past its waist where it leaves the laser: the waist is there. Input: the beam's diameter. */
export const PAST_START: Rule = { name: 'at the waist', formula: '0: the waist is where the beam leaves', linear: true, compute: () => 0, partials: () => [0] };
/** Inputs: diameter at the waist, wavelength, beam quality. */
export const RAYLEIGH_START: Rule = {
  name: 'Rayleigh range', formula: 'π w² / (M² λ)', source: SOURCE, compute: ([d, wavelength, quality]) => beamFromRadius(d! / 2, 0, wavelength!, quality!).level.rayleigh,
  partials: x => { const z = RAYLEIGH_START.compute(x); return [(2 * z) / x[0]!, -z / x[1]!, -z / x[2]!]; },
};
/** Beam quality by the divergence that is written. Inputs: full angle, diameter at the waist, wavelength. */
export const BEAM_QUALITY: Rule = {
  name: 'beam quality', formula: 'M² = π · divergence · diameter / (4 λ), at least 1', source: 'ISO 11146 (from memory)', compute: ([full, d, wavelength]) => Math.max(1, (Math.PI * full! * d!) / (4 * wavelength!)),
};
/** A length further on. Inputs: how far past the focus before, and the length. */
export const PAST_ON: Rule = { name: 'further on', formula: 'distance past the focus + length', linear: true, compute: ([past, length]) => past! + length!, partials: () => [1, 1] };

const lens = (what: keyof BeamParameter): Rule['compute'] => ([past, rayleigh, f]) => parameterThroughLens({ past: past!, rayleigh: rayleigh! }, f!)[what];
/** Behind a lens. Inputs: how far past the focus and its Rayleigh range before the lens, focal length. */
export const PAST_LENS: Rule = { name: 'past the focus behind a lens', formula: '1/q′ = 1/q − 1/f', source: SOURCE, compute: lens('past') };
export const RAYLEIGH_LENS: Rule = { name: 'Rayleigh range behind a lens', formula: '1/q′ = 1/q − 1/f', source: SOURCE, compute: lens('rayleigh') };

const mirror = (what: keyof BeamParameter, level: boolean): Rule['compute'] => ([past, rayleigh, f, fold]) => offFocalMirror(beamOf(past!, rayleigh!), f!, fold!, 'level')[level ? 'level' : 'upright'][what];
/** Behind a curved mirror that folds the light in the table's plane. Inputs as for a lens, and the angle of incidence. `level`: along the fold. */
export const foldedPast = (level: boolean): Rule => ({ name: 'past the focus behind a curved mirror', of: [level], formula: level ? '1/q′ = 1/q − 1/(f cos α)' : '1/q′ = 1/q − cos α / f', source: 'Coddington’s equations for a mirror (Born & Wolf)', compute: mirror('past', level) });
export const foldedRayleigh = (level: boolean): Rule => ({ name: 'Rayleigh range behind a curved mirror', of: [level], formula: level ? '1/q′ = 1/q − 1/(f cos α)' : '1/q′ = 1/q − cos α / f', source: 'Coddington’s equations for a mirror (Born & Wolf)', compute: mirror('rayleigh', level) });

/** Radius to 1/e² of the middle. Inputs: how far past the focus, its Rayleigh range, wavelength, beam quality. */
export const BEAM_RADIUS: Rule = { name: 'radius of a beam', formula: 'w₀ √(1 + (z / z_R)²)', source: SOURCE, compute: ([past, rayleigh, wavelength, quality]) => parameterRadius({ past: past!, rayleigh: rayleigh! }, wavelength!, quality!) };
/** Its radius w, m, and the curvature of its wave front, 1/m: 1 by the radius of that. Inputs as above. */
export const sectionHere = ([past, rayleigh, wavelength, quality]: readonly number[]): { readonly w: number; readonly bend: number } => {
  const { radius, curvature } = sections(beamOf(past!, rayleigh!, wavelength, quality))(0);
  return { w: radius.level, bend: curvature.level };
};
export const BEAM_DIAMETER: Rule = { name: 'diameter of a beam', formula: '2 · radius', linear: true, compute: ([w]) => 2 * w!, partials: () => [2] };

/** Share of a clean beam that a pinhole in the focus of a lens lets through. Inputs: diameter of the pinhole, wavelength, focal length, radius of the beam on the lens. */
export const PINHOLE_SHARE: Rule = {
  name: 'share through a pinhole', formula: '1 − exp(−(π²/2) (D / D₉₉)²), D₉₉ = λ f / w: w the radius of the beam on the lens', source: 'Siegman, Lasers (1986) ch. 17 (from memory): part of a Gaussian beam within a circle', curved: true,
  compute: ([d, wavelength, f, w]) => pinholeShare(d!, wavelength!, f!, w!),
};
/** Power behind a lens with a pinhole. Inputs: power before it, its loss, share that the pinhole lets through. */
export const BEHIND_PINHOLE: Rule = {
  name: 'power behind a pinhole', formula: 'power · (1 − loss) · share through the pinhole', compute: ([p, loss, share]) => p! * (1 - loss!) * share!, partials: ([p, loss, share]) => [(1 - loss!) * share!, -p! * share!, p! * (1 - loss!)],
};
