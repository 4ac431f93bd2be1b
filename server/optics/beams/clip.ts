/** How much of a beam goes through an opening: the face of a mirror, a lens, the plate itself. */
import { nearestWithin } from '../range.ts';
import type { Vector } from '../vectors.ts';
import { facing, turnedIntoFrame } from '../solids/frame.ts';
import { fromTo, type Axis } from './axis.ts';
import { sections, type Beam } from './beam.ts';
import { halfSizes } from './domains.ts';
import { adaptiveIntegral } from './quadrature.ts';

/** A flat opening in space: its width lies level, its height at right angles to it. A round one has its radius for both, an oval one not. */
export interface Opening {
  readonly shape: 'rectangular' | 'round'
  readonly centre: Vector
  /** Either way. */
  readonly normal: Vector
  readonly halfWidth: number
  readonly halfHeight: number
}

/** How far the two rules of the integral may differ on a panel; the better one is then right to 10⁻¹⁰. */
const TOLERANCE = 1e-7;

/** Stretches of a side are not cut further than this: 50 halvings, beyond which a double tells no places apart. */
const SHORTEST = 2 ** -50;

/** A piece of the rim in radii of the beam where it is: the point, and how fast it moves. */
type Seen = (t: number) => { readonly x: number; readonly y: number; readonly dx: number; readonly dy: number };

/** A piece of the rim from t = 0 to 1: the point, and how fast it moves. */
type Piece = (t: number) => { readonly u: number; readonly v: number; readonly du: number; readonly dv: number };

/**
 * Share of a beam's power that goes through an opening, 1, wherever the beam meets it and at whatever slant; 0 where it passes by.
 *
 * @param beam as it is at the first point of its axis, round or astigmatic, spread or parallel
 * @param axis where it runs; coordinates see `coordinates` of vectors
 * @param opening half sizes see `halfSizes`
 *
 * Accuracy: 10⁻⁹ absolute, for the Gaussian profile that is assumed. Validity: a beam that spreads by less than about 0.3 rad. Where a
 * percent or more is cut off, the edge also throws fringes into what goes through.
 * Source: within a curve round the axis the power is 1/(2π) ∮ (1 − exp(−2ρ²)) dφ in x/w and y/w (Green's theorem), and these stay the
 * same along the rays, so that the rim may lie in any plane.
 */
export function openingShare(beam: Beam, axis: Axis, opening: Opening): number {
  const section = sections(beam);
  const rays = facing(axis.from, axis.along);
  const [level, upright] = facing(opening.centre, opening.normal).axes;
  // Along the beam, level and upright.
  const [middle, across, up] = [fromTo(axis.from, opening.centre), level, upright].map((v): Vector => { const [x, y, z] = turnedIntoFrame(rays, v); return [z, x, y]; }) as [Vector, Vector, Vector];
  const seen = (piece: Piece): Seen => (t) => {
    const { u, v, du, dv } = piece(t);
    const part = (i: 0 | 1 | 2): number => middle[i] + u * across[i] + v * up[i];
    const move = (i: 0 | 1 | 2): number => du * across[i] + dv * up[i];
    const { radius, curvature: bent } = section(part(0));
    const [x, y] = [part(1) / radius.level, part(2) / radius.upright];
    const [dx, dy] = [move(1) / radius.level - x * bent.level * move(0), move(2) / radius.upright - y * bent.upright * move(0)];
    return { x, y, dx, dy };
  };
  const sum = rim(opening).reduce((total, piece) => total + turnOf(seen(piece), 0, 1), 0);
  return Math.min(1, Math.abs(sum));
}

/** A stretch's part in the integral round the rim, in parts no longer than their distance from the axis, or than the beam: none hides a peak. */
function turnOf(seen: Seen, from: number, to: number): number {
  const middle = (from + to) / 2;
  const { x, y, dx, dy } = seen(middle);
  if (to - from > SHORTEST && Math.hypot(dx, dy) * (to - from) > 1 + Math.hypot(x, y)) return turnOf(seen, from, middle) + turnOf(seen, middle, to);
  return adaptiveIntegral((t) => {
    const { x, y, dx, dy } = seen(t);
    return within(x * x + y * y) * (x * dy - y * dx);
  }, from, to, TOLERANCE);
}

/** (1 − exp(−2ρ²)) / (2π ρ²), with its limit at ρ = 0. */
function within(square: number): number {
  return square < 1e-200 ? 1 / Math.PI : -Math.expm1(-2 * square) / (2 * Math.PI * square);
}

/** The rim in order, in pieces that are smooth. */
function rim({ shape, halfWidth, halfHeight }: Opening): Piece[] {
  const [a, b] = [nearestWithin(halfSizes, halfWidth), nearestWithin(halfSizes, halfHeight)];
  if (shape === 'round') {
    return [0, 1, 2, 3].map(quarter => (t) => {
      const angle = (Math.PI / 2) * (quarter + t);
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      return { u: a * cos, v: b * sin, du: (-Math.PI / 2) * a * sin, dv: (Math.PI / 2) * b * cos };
    });
  }
  const side = (u0: number, v0: number, du: number, dv: number): Piece => t => ({ u: u0 + t * du, v: v0 + t * dv, du, dv });
  return [side(a, -b, 0, 2 * b), side(a, b, -2 * a, 0), side(-a, b, 0, -2 * b), side(-a, -b, 2 * a, 0)];
}
