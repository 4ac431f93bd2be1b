/** What faces catch of the beams that fall on them. */
import { beamLegs, type Arm } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { LENGTH, NUMBER, parseUnit } from '../../model/units.ts';
import { Beams } from '../beams/beams.ts';
import type { Cell } from '../graph.ts';
import { incidence } from '../places/angles.ts';
import { landingShare, reach } from '../rules/table.ts';
import type { Ray } from './rays.ts';
import { extentOf, numbers } from './standing.ts';
import type { TableContext } from './context.ts';

/** A face that a beam falls on, and how much of it it catches. */
export interface Caught {
  readonly leg: Leg;
  readonly thing: Thing;
  /** a narrow beam: the share of it that the face catches; a spread one: how much of `lit` it reaches, 1 and more is all */
  readonly kind: 'share' | 'reach';
  readonly cell: Cell;
  /** what is lit in the end by way of the face */
  readonly lit: Thing;
  /** the size of the face is assumed */
  readonly assumed: boolean;
  /** width of the face, m */
  readonly width: number;
}

const CATCHES = new Set(['mirror', 'splitter', 'lens', 'collimator', 'polarizer', 'half-wave plate', 'attenuator']);
const MM = parseUnit('mm')!;
/** So many radii from the middle nothing of a beam is left that counts: exp(−2 · 2²) is 0.03 %. */
const WIDE = 2;
/** A face that misses less than that is wide enough. */
const SLACK = 0.95;

/** Faces that catch too little of a beam, each with its cell; the others are told apart in plain numbers. */
export function narrowFaces(rays: ReadonlyMap<Leg, Ray>, context: TableContext): Caught[] {
  const found = new Map<string, Caught>();
  for (const arm of context.arms.arms) {
    if (!Beams.areShaped(arm)) continue;
    const end = beamLegs(arm);
    for (const leg of arm.path.slice(0, end)) {
      const ray = rays.get(leg);
      if (!ray || !CATCHES.has(ray.end.kind.word)) continue;
      const c = caught(ray, arm, end, context, true);
      const known = c && found.get(leg.id);
      if (c && (!known || (known.kind === 'reach' && context.graph.value(c.cell)! < context.graph.value(known.cell)!))) found.set(leg.id, c);
    }
  }
  return [...found.values()];
}

/** How much of a beam the face at the end of a leg catches; with `only` where that may be too little. */
export function caught(ray: Ray, arm: Arm, end: number, context: TableContext, only = false): Caught | undefined {
  const { graph, beams, places, values } = context;
  const { leg, end: thing } = ray;
  const { size: [w, h], by } = extentOf(thing);
  const fold = incidence(thing, places, values);
  const angle = fold && !fold.missing ? graph.value(fold)! : 0;
  const radius = beams.radius(leg);
  const here = graph.value(radius);
  if (here === undefined) return undefined;
  const spread = arm.path.slice(0, arm.path.indexOf(leg)).some(l => l.target?.kind.word === 'spreader');
  const last = arm.path[end - 1]!;
  const lit = places.own(last.target!);
  const [width, height] = faceCells(thing, context);
  const face = thing.kind.footprint!.face === 'round' ? 'round' : 'rectangular';
  const tilt = fold && !fold.missing ? fold : context.squarely();
  const base = { leg, thing, lit, assumed: by.length === 0, width: w };
  if (!spread) {
    if (only && WIDE * here < Math.min(w * Math.cos(angle), h) / 2) return undefined;
    const { level, upright, wavelength, quality } = beams.at(leg);
    const name = `${leg.id}.landing share`;
    const cell = graph.find(name) ?? graph.derive(name, landingShare(face), [level.past, level.rayleigh, upright.past, upright.rayleigh, wavelength, quality, tilt, width, height], NUMBER, `share of ${leg.beam.id} that ${thing.id} catches`);
    return cell.missing ? undefined : { ...base, kind: 'share', cell };
  }
  const there = graph.value(beams.radius(last));
  if (there === undefined || lit === thing || !(extentOrNone(lit) > 0)) return undefined;
  const size = extentOf(lit).size;
  const seen = seenWidth(size[0], lit, rayTo(last, context), context);
  const reached = (SLACK * Math.min(w * Math.cos(angle), h)) / (Math.hypot(size[0], size[1]) * (here / there));
  if (only && reached > 1.5) return undefined;
  const name = `${leg.id}.reach`;
  const cell = graph.find(name) ?? graph.derive(name, reach(face), [radius, beams.radius(last), tilt, width, height, ...[seen, size[1]].map((v, i) => litCell(lit, v, i, arm, context))], NUMBER, `how much of ${lit.id} the light from ${thing.id} reaches`);
  return cell.missing ? undefined : { ...base, kind: 'reach', cell };
}

/** What a face has to catch of the light, or to reach of what is lit. */
export const leastOf = (c: Caught): number => (c.kind === 'share' ? 0.97 : SLACK);
export const isTooSmall = (c: Caught, graph: TableContext['graph']): boolean => graph.value(c.cell)! < leastOf(c);

const extentOrNone = (t: Thing): number => (t.kind.footprint && extentOf(t).by.length > 0 ? Math.min(extentOf(t).size[0], extentOf(t).size[1]) : 0);
const rayTo = (leg: Leg, { places, graph }: TableContext): readonly number[] | undefined => { const d = places.directions.of(leg); return d && numbers(d, graph); };

/** What is lit is narrower as seen along slanting light. */
function seenWidth(width: number, lit: Thing, along: readonly number[] | undefined, { places, graph }: TableContext): number {
  const way = lit.kind.light === 'recorded' ? places.directions.facing(lit) : undefined;
  const n = way && numbers(way, graph);
  if (!n || !along) return width;
  // The part of its slant that is level: an upright plate is as high as ever.
  const level = Math.hypot(n[0], n[1]) * Math.hypot(along[0]!, along[1]!);
  return level > 0 ? width * Math.abs(n[0] * along[0]! + n[1] * along[1]!) / level : width;
}

function litCell(lit: Thing, value: number, i: number, arm: Arm, { graph }: TableContext): Cell {
  const name = `${arm.plate.id}.${arm.name}.${i === 0 ? 'lit width' : 'lit height'}`;
  const fact = extentOf(lit).by[0]!;
  return graph.find(name) ?? graph.input(name, { value, dim: LENGTH, unit: MM }, 'written', `${i === 0 ? 'width of' : 'height of'} ${lit.id}${i === 0 ? ', seen along the light' : ''}`, { at: fact.at });
}

/** Width and height of a face as inputs: written or assumed. */
export function faceCells(thing: Thing, { graph }: Pick<TableContext, 'graph'>): readonly [Cell, Cell] {
  const { size, by } = extentOf(thing);
  const one = (what: string, value: number): Cell => {
    const name = `${thing.id}.face ${what}`;
    return graph.find(name) ?? (by[0] ? graph.input(name, { value, dim: LENGTH, unit: MM }, 'written', `${what} of the face of ${thing.id}`, { at: by[0].at })
      : graph.input(name, { value, dim: LENGTH, unit: MM, spread: { kind: 'factor', amount: 2 } }, 'assumed', `${what} of the face of ${thing.id}`, { reason: thing.kind.footprint!.why }));
  };
  return [one('width', size[0]), one('height', size[1])];
}
