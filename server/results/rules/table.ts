/** Rules of what stands on the table: how near a beam passes a thing, how much of it a face catches, how a mount is set. */
import { openingShare } from '../../optics/beams/clip.ts';
import { pinholeFit, pinholeToChoose } from '../../optics/beams/pinhole.ts';
import { clearance, type Passing } from '../../optics/solids/clearance.ts';
import { facing, fromFrame, inFrame, upright } from '../../optics/solids/frame.ts';
import { gapBetween, type Body } from '../../optics/solids/gap.ts';
import { firstMeeting, meetingMoved } from '../../optics/solids/meeting.ts';
import { beyondTable } from '../../optics/solids/plane.ts';
import { post, type Solid } from '../../optics/solids/solid.ts';
import { NEARLY_PARALLEL, standsParallel } from '../../optics/ghosts/ghosts.ts';
import { reflectedDirection } from '../../optics/surfaces/refract.ts';
import { above, dot, leftOf, unit, type Vector } from '../../optics/vectors.ts';
import type { Rule } from '../graph.ts';

export type { Body, Passing, Solid, Vector };
export { above, beyondTable, clearance, dot, facing, firstMeeting, fromFrame, gapBetween, inFrame, leftOf, meetingMoved, NEARLY_PARALLEL, reflectedDirection, standsParallel, unit };

/** A thing as it stands: its form, its place and normal, width, height and depth in m. Without a normal it is as round as it is wide. */
export interface Form {
  readonly face: 'round' | 'rectangular' | 'body';
  readonly lies: 'behind' | 'around';
}

/** What stands in the way of light. Of a thing whose facing nobody knows, the ball that holds its width. */
export function solidOf({ face, lies }: Form, at: Vector, normal: Vector | undefined, [w, h, d]: Vector): Solid {
  if (!normal) return ball(at, w / 2);
  const n = unit(normal);
  const back = lies === 'behind' ? d / 2 : 0;
  const middle: Vector = [at[0] - n[0] * back, at[1] - n[1] * back, at[2] - n[2] * back];
  // Many rays are held against it: its frame is made once.
  const frame = facing(middle, n);
  return face === 'round' ? { kind: 'cylinder', middle, axis: n, radius: w / 2, height: d, frame } : { kind: 'box', frame, size: [w, h, d] };
}

/** The part of a thing that stands in the way whatever its mount may be: nothing is thinner than a post. */
export const coreAt = (at: Vector): Solid => ball(at, POST_RADIUS);
/** Posts are half an inch thick (common practice). */
export const POST_RADIUS = 0.0127 / 2;
export const postUnder = (at: Vector, top: number): Solid => post([at[0], at[1], 0], POST_RADIUS, top);
const ball = (middle: Vector, radius: number): Solid => ({ kind: 'sphere', middle, radius, frame: upright(middle) });

const vector = (x: readonly number[], from: number): Vector => [x[from]!, x[from + 1]!, x[from + 2]!];

/** How far the axis of a leg passes from a thing: 0 where it runs into it. Inputs: both ends of the leg, the place of the thing, its normal where it has one, width, height, depth. */
export const passing = (form: Form, hasNormal: boolean): Rule => ({
  name: 'passing by', of: [form.face, form.lies, hasNormal], formula: 'least distance between the leg and the thing with its mount', source: 'geometry', curved: true,
  compute: x => {
    const normal = hasNormal ? vector(x, 9) : undefined;
    return clearance(solidOf(form, vector(x, 6), normal, vector(x, hasNormal ? 12 : 9)), vector(x, 0), vector(x, 3)).clearance;
  },
});

/** How far the place of a thing lies from the axis of a leg, whatever its size: what is unsure of it is unsure of every clearance. Inputs: both ends of the leg, the place. */
export const OFFSET: Rule = {
  name: 'offset from a leg', formula: 'distance of a point from the leg', source: 'geometry', curved: true,
  compute: x => clearance({ kind: 'sphere', middle: vector(x, 6), radius: 0 }, vector(x, 0), vector(x, 3)).clearance,
};

/** Heading of a normal in the plan, from the table's x axis, counter-clockwise from 0 to a whole turn. Inputs: its components. */
export const MOUNT_ANGLE: Rule = { name: 'mount angle', formula: 'atan2(y, x) of the normal', source: 'geometry', compute: ([x, y]) => (Math.hypot(x!, y!) < UPRIGHT ? Number.NaN : wholeTurn(Math.atan2(y!, x!))) };
/** What is nothing but rounding below 0 stays 0. */
const wholeTurn = (angle: number): number => (angle < -1e-12 ? angle + 2 * Math.PI : Math.max(0, angle));
/** A normal that is no more level than that heads nowhere. */
const UPRIGHT = 1e-9;

/** How far a normal is tipped out of the level, upwards above 0. Inputs: its components. */
export const MOUNT_TILT: Rule = { name: 'mount tilt', formula: 'atan2(z, √(x² + y²)) of the normal', source: 'geometry', compute: ([x, y, z]) => Math.atan2(z!, Math.hypot(x!, y!)) };

/** Share of a beam that a face catches. Inputs: past the focus and Rayleigh range along both axes, wavelength, quality, angle from the normal, width, height. */
export const landingShare = (shape: 'round' | 'rectangular'): Rule => ({
  name: 'share on a face', of: [shape], formula: 'part of exp(−2r²/w²) within the face, seen at its slant', source: 'Siegman, Lasers (1986), ch. 17 (from memory)',
  compute: ([past, rayleigh, pastUp, rayleighUp, wavelength, quality, angle, width, height]) => openingShare(
    { level: { past: past!, rayleigh: rayleigh! }, upright: { past: pastUp!, rayleigh: rayleighUp! }, wavelength: wavelength!, quality: quality! },
    { from: [0, 0, 0], along: [1, 0, 0] },
    { shape, centre: [0, 0, 0], normal: [Math.cos(angle!), Math.sin(angle!), 0], halfWidth: width! / 2, halfHeight: height! / 2 },
  ),
});

/** How wide a thing is across light that comes level to it, `angle` from the line of sight along which width and depth are told: of a rounded one the outline of an ellipsoid, of any other that of a box. */
const widthAcross = (round: boolean, width: number, depth: number, angle: number): number => {
  const [a, b] = [width * Math.abs(Math.cos(angle)), depth * Math.abs(Math.sin(angle))];
  return round ? Math.hypot(a, b) : a + b;
};

/** Share of a beam that falls on an object in its middle. Inputs: the six numbers of the beam, angle between light and line of sight, width, height and depth as seen along that. */
export const caughtShare = (round: boolean): Rule => ({
  name: 'share on an object', of: [round], formula: `part of exp(−2r²/w²) within the outline that the light sees, ${round ? '√((width · cos ψ)² + (depth · sin ψ)²)' : 'width · cos ψ + depth · sin ψ'} by height`, source: 'Siegman, Lasers (1986), ch. 17 (from memory)',
  compute: x => { const [angle, width, height, depth] = x.slice(6) as [number, number, number, number]; return landingShare(round ? 'round' : 'rectangular').compute([...x.slice(0, 6), 0, widthAcross(round, width, depth, angle), height]); },
});

/**
 * How much of what is to be lit a spread beam reaches by way of a face: 1 and more is all of it. Inputs: radius of the beam at the face and at what is lit, angle on the face, its width and height, and the
 * width and height that are to be lit, as seen along the light.
 */
export const reach = (shape: 'round' | 'rectangular'): Rule => ({
  name: 'reach of a face', of: [shape], formula: 'face, seen at its slant / (what is to be lit · w at the face / w there)', source: 'geometry: rays keep their place in a beam, in radii', curved: true,
  compute: ([w, wThere, angle, width, height, litWidth, litHeight]) => {
    const scale = w! / wThere!;
    const [a, b] = [(litWidth! * scale) / (width! * Math.cos(angle!)), (litHeight! * scale) / height!];
    return 1 / (shape === 'round' ? Math.hypot(a, b) : Math.max(a, b));
  },
});

/** A pinhole as a multiple of the one to choose. Inputs: diameter, wavelength, focal length, radius of the beam on the lens. */
export const PINHOLE_FIT: Rule = { name: 'fit of a pinhole', formula: 'D / (1.3 · λ f / w)', source: 'an optics supplier’s tutorial on spatial filters', compute: ([d, wavelength, f, w]) => pinholeFit(d!, wavelength!, Math.abs(f!), w!) };
/** Diameter of the pinhole to choose. Inputs as above without the first. */
export const PINHOLE_TO_CHOOSE: Rule = { name: 'pinhole to choose', formula: '1.3 · λ f / w', source: 'an optics supplier’s tutorial on spatial filters', compute: ([wavelength, f, w]) => pinholeToChoose(wavelength!, Math.abs(f!), w!) };
