/** An object that ground glass or a diffuser lights, in plain numbers: each part of it gets light from all over the screen, and each point of the screen makes fringes of its own. */
import { radiusHere } from '../../optics/beams/beam.ts';
import { lobeHalfWidths } from '../../optics/beams/scatter.ts';
import { rayAt } from '../../optics/beams/spread.ts';
import { lightFromSurface } from '../../optics/maps/lit-object.ts';
import { packed } from '../../optics/maps/points.ts';
import { nearestWithin } from '../../optics/range.ts';
import { facing, fromFrame } from '../../optics/solids/frame.ts';
import type { Patch } from '../../optics/surface/patches.ts';
import { pathTo } from '../../optics/surface/source.ts';
import { distance, dot, unit, type Vector } from '../../optics/vectors.ts';
import { reachOf, recordedBy, sceneOf, tableOf, type Layout } from './maps.ts';
import { minus, sourceOf } from './object.ts';
import { beamOf, BEHIND } from './object-light.ts';
import { HERE } from './surface.ts';

/** A screen as the beam lights it; m, from the middle of what it lights. */
export interface Screen {
  readonly at: Vector;
  /** the way its face looks, either way */
  readonly normal: Vector;
  readonly sides: readonly [number, number];
  /** the way of the light that falls on it */
  readonly along: Vector;
  /** the six numbers of the beam there */
  readonly beam: readonly number[];
  /** of the lobe in which it passes light on, rad */
  readonly halfWidth: number;
}

/** A point of a screen, which stands for what lies about it. */
export interface Spot {
  readonly patch: Patch;
  /** how much longer the way to it is than to the middle of the screen */
  readonly longer: number;
}

/** Across the light, and up it. */
const ACROSS = 7;
/** So many radii from its middle a beam has all but 1 % of its light. */
const EDGE = 1.5;

/** What is lit of a screen, in even cells. */
export function spotsOf({ at, normal, sides, along, beam }: Screen): readonly Spot[] {
  // Light goes on behind the face that it falls on.
  const frame = facing(at, dot(normal, along) > 0 ? normal : minus(HERE, normal));
  const { level, upright } = radiusHere(beamOf(beam));
  const [w, h] = [Math.min(sides[0], 2 * EDGE * level), Math.min(sides[1], 2 * EDGE * upright)];
  const source = sourceOf(at, along, beam[0], beam[1]);
  const steps = Array.from({ length: ACROSS }, (_, i) => (i + 0.5) / ACROSS - 0.5);
  return steps.flatMap(up => steps.map((right): Spot => {
    const point = fromFrame(frame, [right * w, up * h, 0]);
    return { patch: { point, normal: frame.axes[2], area: (w * h) / ACROSS ** 2 }, longer: pathTo(source, point) - pathTo(source, at) };
  }));
}

/** Light of each spot of a screen on each part, W/m² for each watt on the screen if it lost nothing; spot by spot. */
export function softLight(screen: Screen, spots: readonly Spot[], patches: readonly Patch[]): readonly Float64Array[] {
  const beam = beamOf(screen.beam);
  const axis = { from: screen.at, along: screen.along };
  return spots.map(({ patch }) => Float64Array.from(patches, ({ point, normal }) => {
    const toward = minus(patch.point, point);
    const single = normal[0] === 0 && normal[1] === 0 && normal[2] === 0;
    if (!single && dot(normal, toward) <= 0) return 0;
    return lightFromSurface([patch], beam, axis, { kind: 'on', halfWidth: screen.halfWidth }, point, single ? unit(toward) : normal);
  }));
}

/**
 * Brightness with which each part records, averaged over the screen by the light that each of its spots gives the part, and over the plate. Inputs as `sceneOf` takes them, with the mismatch by the
 * middle of the screen, and light on the object that runs side by side.
 */
export function softRecorded(layout: Layout, x: readonly number[], screen: Screen, spots: readonly Spot[], each: readonly Float64Array[], patches: readonly Patch[], brightness: (mismatch: number) => number): Float64Array {
  const s = sceneOf(layout, x);
  const [sum, all] = [new Float64Array(patches.length), new Float64Array(patches.length)];
  for (const on of each) on.forEach((v, i) => { all[i]! += v; });
  const lit = patches.map((_, i) => i).filter(i => all[i]! > 0);
  const points = packed(lit.map(i => patches[i]!.point));
  const way = (p: Vector): number => distance(p[0], p[1], p[2]);
  const scenes = spots.map(({ patch: { point }, longer }) => ({ ...s, light: { kind: 'point' as const, at: point }, mismatch: s.mismatch + longer + way(point) - way(screen.at) }));
  const middle = reachOf({ ...s, light: { kind: 'point', at: screen.at } }, points);
  const reach = middle + Math.max(0, ...spots.map(({ patch: { point }, longer }) => Math.abs(longer) + way(minus(point, screen.at))));
  const table = tableOf(brightness, reach);
  scenes.forEach((scene, k) => {
    const own = recordedBy(scene, points, table);
    lit.forEach((i, j) => { sum[i]! += (each[k]![i]! * own[j]!) / all[i]!; });
  });
  return sum;
}

/** How bright a screen looks from a point, beside a dull white surface in the same light: of each part. */
export function glow({ at, along, beam, halfWidth }: Screen, parts: readonly Patch[], eye: Vector): Float64Array {
  const power = Math.LN2 / -Math.log(Math.cos(nearestWithin(lobeHalfWidths, halfWidth)));
  const front = beamOf(beam);
  return Float64Array.from(parts, ({ point, normal }) => {
    const to = unit(minus(eye, point));
    const [turned, leaving] = [dot(rayAt(front, { from: at, along }, point), to), Math.abs(dot(normal, to))];
    // The lobe of straight on has (n + 1)/2π of the light in each solid angle, a dull surface cos θ/π.
    return turned > 0 && leaving > GRAZING ? ((power + 1) / 2) * turned ** power / leaving : 0;
  });
}
const GRAZING = 1e-3;

/** From behind an object the plate sees the screen itself. Both from the middle of the object. */
export const isBehind = (screen: Vector, plate: Vector): boolean => dot(unit(screen), unit(plate)) < Math.cos(BEHIND);

/** How much longer than by the middle of the object the straight way from the screen past it to the plate is, m: never above 0. */
export const pastObject = (screen: Vector, plate: Vector): number => distance(...minus(plate, screen)) - distance(...screen) - distance(...plate);
