/**
 * A laser beam that is carried along an arm: by its complex beam parameter q = past + i rayleigh, one for each of two axes across the
 * light, so that it may be astigmatic. Functions take a beam as it is at one place and give it as it is at the next.
 */
import { wavelengths } from '../coherence/domains.ts';
import { nearestWithin, type Range } from '../range.ts';
import { beamQualities, beamRadii, curvatures, distances, halfAngles, halfFolds, nearestFocalLength } from './domains.ts';

/** The two axes across the light: level as `leftOf`, upright as `above` of the vectors. A fold in the table's plane is level. */
export const beamAxes = ['level', 'upright'] as const;
export type BeamAxis = (typeof beamAxes)[number];
export type Both = Readonly<Record<BeamAxis, number>>;

/** How far the light is past its focus (below 0: before it), and the Rayleigh range of that focus; m. */
export interface BeamParameter {
  readonly past: number
  readonly rayleigh: number
}

/** A beam at one place: wavelength in air, m, and beam quality M² with it. */
export interface Beam extends Readonly<Record<BeamAxis, BeamParameter>> {
  readonly wavelength: number
  readonly quality: number
}

/** A beam at one place as the light itself shows it: radius, m, and curvature of the wavefront, 1/m. */
export interface Section {
  readonly radius: Both
  readonly curvature: Both
}

/** Distances past a focus, m; wide, as a parallel beam has its focus anywhere. */
export const pasts: Range = { from: -1e12, to: 1e12 };
/** Rayleigh ranges of a beam that is carried, m. */
export const rayleighs: Range = { from: 1e-12, to: 1e12 };

/**
 * A round beam of this radius here.
 *
 * @param radius w at 1/e², m; see `beamRadii`
 * @param curvature 1/R of its wavefront, 1/m: 0 parallel, as at a laser's waist; 1/L where it spreads from a point L behind; see `curvatures`
 * @param wavelength in air, m; see `wavelengths` of coherence
 * @param quality M², 1; see `beamQualities`
 * Source: 1/q = 1/R − i M² λ/(π w²): Kogelnik & Li, Applied Optics 5, 1550 (1966) (from memory).
 */
export function beamFromRadius(radius: number, curvature: number, wavelength: number, quality: number): Beam {
  const light = { wavelength: nearestWithin(wavelengths, wavelength), quality: nearestWithin(beamQualities, quality) };
  const parameter = parameterOf(nearestWithin(beamRadii, radius), nearestWithin(curvatures, curvature), spreadOf(light));
  return { level: parameter, upright: parameter, ...light };
}

/**
 * A round beam at the focus from which it spreads at this half angle.
 *
 * @param halfAngle slope of the radius far away, rad; see `halfAngles`
 *
 * Other arguments as `beamFromRadius`. Source: `farHalfAngle` solved for the waist.
 */
export function beamFromHalfAngle(halfAngle: number, wavelength: number, quality: number): Beam {
  const light = { wavelength: nearestWithin(wavelengths, wavelength), quality: nearestWithin(beamQualities, quality) };
  return beamFromRadius(spreadOf(light) / nearestWithin(halfAngles, halfAngle), 0, light.wavelength, light.quality);
}

/**
 * The beam a length further on.
 *
 * @param length m, below 0 backwards; see `distances`
 * Source: q grows by the length (Kogelnik & Li 1966; from memory).
 */
export function carried(beam: Beam, length: number): Beam {
  const further = nearestWithin(distances, length);
  return changed(beam, ({ past, rayleigh }) => ({ past: past + further, rayleigh }));
}

/**
 * The beam behind a thin lens that stands here squarely, with the beam through its middle.
 *
 * @param focalLength f, m: above 0 gathers, below 0 spreads; size see `focalSizes`
 *
 * Validity: a lens without aberrations, wide enough not to cut the beam; see `openingShare`.
 * Source: 1/q′ = 1/q − 1/f (Kogelnik & Li 1966; from memory).
 */
export function throughLens(beam: Beam, focalLength: number): Beam {
  const f = nearestFocalLength(focalLength);
  return changed(beam, parameter => focused(parameter, f));
}

/** `throughLens` of one axis alone. */
export function parameterThroughLens(parameter: BeamParameter, focalLength: number): BeamParameter {
  return orderlyParameter(focused(orderlyParameter(parameter), nearestFocalLength(focalLength)));
}

/**
 * The beam behind a spherical focal mirror that stands here and turns the light: f cos α along the plane of the fold, f / cos α across.
 *
 * @param focalLength f, m: above 0 a hollow mirror, below 0 a bulging one; size see `focalSizes`
 * @param halfFold α, half the angle between the light's way there and its way back, rad; see `halfFolds`
 * @param folded the axis that lies in the plane of the fold: level for a fold in the table's plane
 *
 * Validity: astigmatism only; coma, which grows with α and the width of the beam, is left out. A mirror cut from beside the axis of a
 * paraboloid, with its focus in the pinhole, has neither: use `throughLens` with its distance from the focus.
 * Source: Coddington's equations for a mirror (Born & Wolf, Principles of Optics; from memory).
 */
export function offFocalMirror(beam: Beam, focalLength: number, halfFold: number, folded: BeamAxis): Beam {
  const f = nearestFocalLength(focalLength);
  const cos = Math.cos(nearestWithin(halfFolds, halfFold));
  return changed(beam, (parameter, axis) => focused(parameter, axis === folded ? f * cos : f / cos));
}

/**
 * The beam made parallel here, as wide as it is: behind a collimator that stands where it ought to. Its focal length is then the
 * distance to the focus, `toFocus` with the sign turned.
 */
export function collimatedHere(beam: Beam): Beam {
  const { level, upright } = radiusHere(beam);
  const light = orderly(beam);
  return { ...light, level: parameterOf(level, 0, spreadOf(light)), upright: parameterOf(upright, 0, spreadOf(light)) };
}

/** Radius w of the beam here, m, along each axis. */
export function radiusHere({ level, upright, wavelength, quality }: Beam): Both {
  return { level: parameterRadius(level, wavelength, quality), upright: parameterRadius(upright, wavelength, quality) };
}

/** `radiusHere` of one axis alone. */
export function parameterRadius(parameter: BeamParameter, wavelength: number, quality: number): number {
  const { past, rayleigh } = orderlyParameter(parameter);
  const spread = spreadOf({ wavelength: nearestWithin(wavelengths, wavelength), quality: nearestWithin(beamQualities, quality) });
  return Math.sqrt(spread / rayleigh) * Math.sqrt(past * past + rayleigh * rayleigh);
}

/** Curvature 1/R of the wavefront here, 1/m, along each axis: above 0 where the light spreads. */
export function curvatureHere(beam: Beam): Both {
  return sections(beam)(0).curvature;
}

/** `radiusHere` and `curvatureHere` of the beam carried by each length that the function is asked for: for many places along one beam. */
export function sections(beam: Beam): (length: number) => Section {
  const { level, upright, ...light } = orderly(beam);
  const spread = spreadOf(light);
  const [a, b] = [Math.sqrt(spread / level.rayleigh), Math.sqrt(spread / upright.rayleigh)];
  return (length) => {
    const further = nearestWithin(distances, length);
    const [x, y] = [level.past + further, upright.past + further];
    const [r, s] = [x * x + level.rayleigh * level.rayleigh, y * y + upright.rayleigh * upright.rayleigh];
    return { radius: { level: a * Math.sqrt(r), upright: b * Math.sqrt(s) }, curvature: { level: x / r, upright: y / s } };
  };
}

/**
 * How far ahead the focus lies, m, along each axis. Below 0 it lies behind: the light has passed it, or only seems to come from it
 * (a virtual focus).
 */
export function toFocus(beam: Beam): Both {
  // Adding 0 keeps a focus that is here from being −0.
  return figures(beam, ({ past }) => 0 - past);
}

/** Radius w₀ at the focus, m, along each axis. */
export function focusRadius(beam: Beam): Both {
  return figures(beam, ({ rayleigh }, spread) => Math.sqrt(spread * rayleigh));
}

/** Half angle of the beam far from its focus, as a slope, rad, along each axis. Valid below about 0.3 rad. */
export function spreadingHalfAngle(beam: Beam): Both {
  return figures(beam, ({ rayleigh }, spread) => Math.sqrt(spread / rayleigh));
}

/** M² λ / π, m: what radius times half angle never falls below. */
function spreadOf({ wavelength, quality }: { readonly wavelength: number; readonly quality: number }): number {
  return (quality * wavelength) / Math.PI;
}

function parameterOf(radius: number, curvature: number, spread: number): BeamParameter {
  const narrow = spread / (radius * radius);
  const size = curvature * curvature + narrow * narrow;
  return { past: nearestWithin(pasts, curvature / size), rayleigh: nearestWithin(rayleighs, narrow / size) };
}

function focused({ past, rayleigh }: BeamParameter, f: number): BeamParameter {
  const size = (f - past) ** 2 + rayleigh ** 2;
  return { past: (f * (past * (f - past) - rayleigh ** 2)) / size, rayleigh: (f * f * rayleigh) / size };
}

/** The beam with every number in its range. */
function orderly(beam: Beam): Beam {
  return { level: orderlyParameter(beam.level), upright: orderlyParameter(beam.upright), wavelength: nearestWithin(wavelengths, beam.wavelength), quality: nearestWithin(beamQualities, beam.quality) };
}

function orderlyParameter({ past, rayleigh }: BeamParameter): BeamParameter {
  return { past: nearestWithin(pasts, past), rayleigh: nearestWithin(rayleighs, rayleigh) };
}

function changed(beam: Beam, change: (parameter: BeamParameter, axis: BeamAxis) => BeamParameter): Beam {
  const before = orderly(beam);
  return orderly({ ...before, level: change(before.level, 'level'), upright: change(before.upright, 'upright') });
}

function figures(beam: Beam, figure: (parameter: BeamParameter, spread: number) => number): Both {
  const tidy = orderly(beam);
  const spread = spreadOf(tidy);
  return { level: figure(tidy.level, spread), upright: figure(tidy.upright, spread) };
}
