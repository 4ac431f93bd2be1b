/** The legs on the table as light takes them: from where to where, how wide what matters of it is, and how wide it is in all. */
import type { Arm, Arms } from '../../model/arms.ts';
import type { Leg, Setup, Thing } from '../../model/model.ts';
import { Beams } from '../beams/beams.ts';
import type { Graph } from '../graph.ts';
import { legStart } from '../places/light-ways.ts';
import type { Places } from '../places/places.ts';
import type { Vector } from '../rules/table.ts';
import { extentOf, numbers } from './standing.ts';

export interface Ray {
  readonly leg: Leg;
  readonly start: Thing;
  readonly end: Thing;
  readonly from: Vector;
  readonly to: Vector;
  /** radius at start and end of the light that reaches what it is meant for, m; 0 where nothing tells */
  useful: readonly [number, number];
  /** radius at start and end to 1/e² of the middle, m; 0 where nothing tells */
  whole: readonly [number, number];
  /** it is light that something scatters, or that a hologram sends into its image */
  scattered: boolean;
}

interface Context {
  readonly setup: Setup;
  readonly places: Places;
  readonly arms: Arms;
  readonly beams: Beams;
  readonly graph: Graph;
}

/** All legs whose ends stand somewhere, in the order of the text. */
export function raysOf(context: Context): Map<Leg, Ray> {
  const { setup, places, graph, arms } = context;
  const rays = new Map<Leg, Ray>();
  for (const beam of setup.beams.values()) for (const leg of beam.legs) {
    const [start, end] = [legStart(leg), leg.target].map(t => t && places.own(t)) as [Thing | undefined, Thing | undefined];
    const [a, b] = [start?.placement && places.of(start), end?.placement && places.of(end)];
    const [from, to] = [a && numbers(a, graph), b && numbers(b, graph)];
    if (!start || !end || !from || !to || Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]) < 1e-9) continue;
    rays.set(leg, { leg, start, end, from, to, useful: [0, 0], whole: [0, 0], scattered: false });
  }
  if (rays.size > 0) for (const arm of arms.arms) widen(arm, rays, context);
  return rays;
}

/** It is written which way it faces, whatever its beam needs. */
export const isTurned = ({ placement: p }: Thing): boolean => p?.heading !== undefined || typeof p?.facing === 'object';

/** Half of the narrower side of a face that is written, m. */
export function halfOf(thing: Thing): number {
  if (!thing.kind.footprint) return 0;
  const { size, by } = extentOf(thing);
  return by.length > 0 ? Math.min(size[0], size[1]) / 2 : 0;
}

/** The light of a leg comes from something that scatters, or from a hologram's image. */
export function isScattered(path: readonly Leg[], i: number): boolean {
  const before = path[i - 1]?.target?.kind.light;
  return before === 'scatters' || (before === 'diffracts' && path[i]!.beam.port === 'diffracted');
}

function widen(arm: Arm, rays: ReadonlyMap<Leg, Ray>, { beams, graph, places }: Context): void {
  const { path } = arm;
  const own = (leg: Leg): Thing => places.own(leg.target!);
  if (!Beams.areShaped(arm) && !path.some((_, i) => isScattered(path, i))) return;
  const shaped = Beams.areShaped(arm);
  // Light is followed up to the first thing that scatters it; from there each leg goes from a whole thing to a whole thing.
  const first = path.findIndex((_, i) => isScattered(path, i));
  const end = first < 0 ? path.length : first;
  const widths = path.slice(0, end).map(leg => (shaped ? graph.value(beams.radius(leg)) ?? 0 : 0));
  const goal = halfOf(own(path[end - 1]!));
  const there = widths[end - 1]!;
  const useful = widths.map(w => (goal > 0 && there > 0 ? Math.min(w, (goal * w) / there) : 0));
  path.forEach((leg, i) => {
    const ray = rays.get(leg);
    if (!ray) return;
    ray.scattered ||= i >= end;
    const at = (list: readonly number[]): readonly [number, number] => (i >= end ? [halfOf(own(path[i - 1]!)), halfOf(own(leg))] : [list[i - 1] ?? list[0]!, list[i]!]);
    const most = (a: readonly [number, number], b: readonly [number, number]): readonly [number, number] => [Math.max(a[0], b[0]), Math.max(a[1], b[1])];
    ray.useful = most(ray.useful, at(useful));
    ray.whole = most(ray.whole, at(widths));
  });
}
