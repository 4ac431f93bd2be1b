/** Light that goes where nobody wants it: outputs that no beam uses, and reference light that reaches the object. In plain numbers. */
import type { Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { clearance, dot, facing, firstMeeting, solidOf, unit, type Vector } from '../rules/table.ts';
import { isNear } from './blocked.ts';
import { isTurned, type Ray } from './rays.ts';
import { likely, numbers, type Standing } from './standing.ts';
import type { TableContext } from './context.ts';

/** An output of a splitter, or of a hologram, that no beam uses and no card ends. */
export interface Unused {
  readonly thing: Thing;
  readonly port: 'through' | 'reflected';
  /** what it falls on; undefined where it goes off the table, or nobody can tell where it goes */
  readonly on?: Thing;
  /** where a stop would catch it; undefined where nobody can tell */
  readonly stop?: Vector;
}

/** Stray light is followed so far, m. */
const FAR = 5;
/** A stop stands so far behind, m, or half-way to what is lit. */
const STOP_BEHIND = 0.15;

export function unusedOutputs(things: ReadonlyMap<string, Standing>, context: TableContext): Unused[] {
  const { setup, places } = context;
  // A stop that stands nowhere, and that no beam leads to, may be meant for it.
  const loose = [...setup.things.values()].some(t => (t.kind.word === 'beam stop' || t.kind.word === 'black card') && !t.placement && places.ways.to(t).length === 0);
  return [...things.values()].flatMap(s => {
    const { thing } = s;
    if (loose || (thing.kind.light !== 'shares' && thing.kind.light !== 'diffracts')) return [];
    const passages = places.ways.through(thing);
    const used = new Set(passages.map(p => p.port));
    if (passages.length === 0 || used.has(undefined)) return [];
    const port = thing.kind.light === 'diffracts' ? (used.has('diffracted') && !used.has('through') ? 'through' : undefined) : !used.has('through') ? 'through' : !used.has('reflected') ? 'reflected' : undefined;
    return port ? unused(s, port, passages[0]!, things, context) : [];
  });
}

function unused(s: Standing, port: 'through' | 'reflected', passage: ReturnType<TableContext['places']['ways']['through']>[number], things: ReadonlyMap<string, Standing>, { places, graph }: TableContext): Unused[] {
  const from = places.directions.startOf(passage.arriving);
  const start = from && places.of(places.own(from));
  const a = start && numbers(start, graph);
  const way = a && outputWay(s, port, a);
  if (!way) return [{ thing: s.thing, port }];
  const end: Vector = [s.at[0] + way[0] * FAR, s.at[1] + way[1] * FAR, s.at[2] + way[2] * FAR];
  let [nearest, on]: [number, Thing | undefined] = [Infinity, undefined];
  for (const other of things.values()) {
    if (other.thing.id === s.thing.id) continue;
    for (const solid of likely(other)) {
      const met = firstMeeting(solid, s.at, end);
      if (met !== undefined && met < nearest) [nearest, on] = [met, other.thing];
    }
  }
  if (on?.kind.light === 'ends') return [];
  const d = Math.min(STOP_BEHIND, nearest / 2);
  return [{ thing: s.thing, port, ...(on ? { on } : {}), stop: [s.at[0] + way[0] * d, s.at[1] + way[1] * d, s.at[2] + way[2] * d] }];
}

function outputWay(s: Standing, port: 'through' | 'reflected', from: Vector): Vector | undefined {
  const u: Vector = [s.at[0] - from[0], s.at[1] - from[1], s.at[2] - from[2]];
  const l = Math.hypot(...u);
  if (l < 1e-9) return undefined;
  const way: Vector = [u[0] / l, u[1] / l, u[2] / l];
  if (port === 'through') return way;
  const n = isTurned(s.thing) ? s.normal() : undefined;
  if (!n) return undefined;
  const k = 2 * (way[0] * n[0] + way[1] * n[1] + way[2] * n[2]);
  return [way[0] - k * n[0], way[1] - k * n[1], way[2] - k * n[2]];
}

/** Light of a reference that reaches an object beside the plate. */
export interface Spill {
  readonly arm: Arm;
  readonly object: Thing;
  readonly ray: Ray;
  /** from the axis of the reference to the object, m, and the radius of the light there */
  readonly off: number;
  readonly radius: number;
  /** where a card keeps it off the object and out of the light for the plate */
  readonly card: Vector;
}

/** Between what is needed and the object there must be room for a card, m. */
const ROOM = 0.002;

export function spills(rays: ReadonlyMap<TableContext['arms']['arms'][number]['path'][number], Ray>, things: ReadonlyMap<string, Standing>, { arms }: TableContext): Spill[] {
  const found: Spill[] = [];
  for (const arm of arms.arms) {
    const last = arm.path.at(-1)!;
    const ray = rays.get(last);
    if (arm.role !== 'reference' || !ray || ray.scattered || ray.whole[1] === 0) continue;
    for (const object of new Set(arms.arms.flatMap(a => (a.plate === arm.plate && a.object?.kind.light === 'scatters' ? [a.object] : [])))) {
      const s = things.get(object.id);
      // In single-beam the reference is what lights the object.
      if (!s || arms.arms.some(a => a.plate === arm.plate && a.object === object && a.path.includes(last)) || found.some(f => f.object === object) || !isNear(s, ray, ray.whole)) continue;
      const spill = spilled(ray, s, things);
      if (spill) found.push({ arm, object, ray, ...spill });
    }
  }
  return found;
}

function spilled(ray: Ray, s: Standing, things: ReadonlyMap<string, Standing>): Omit<Spill, 'arm' | 'object' | 'ray'> | undefined {
  const { from, to, whole, useful } = ray;
  const solid = solidOf(s.form, s.at, s.normal(), s.whole);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
  const reaches = clearance(solid, from, to, ...whole);
  const axis = clearance(solid, from, to);
  const at = (r: readonly [number, number], d: number): number => r[0] + ((r[1] - r[0]) * d) / length;
  const u: Vector = [(to[0] - from[0]) / length, (to[1] - from[1]) / length, (to[2] - from[2]) / length];
  const across = unit([s.at[0] - from[0] - u[0] * axis.along, s.at[1] - from[1] - u[1] * axis.along, s.at[2] - from[2] - u[2] * axis.along]);
  const needed = reachOf(things.get(ray.end.id), across) ?? useful[1];
  const need = (d: number): number => (Math.min(needed, whole[1]) * at(whole, d)) / whole[1];
  const room = axis.clearance - need(axis.along);
  // Behind the plate it lies in the plate's own light; in the light for the plate it is in the way, which is another finding.
  if (reaches.clearance >= 0 || axis.along >= length * 0.999 || axis.along <= length * 1e-3 || room < ROOM) return undefined;
  if ([...things.values()].some(t => t.thing.id !== s.thing.id && t.thing.id !== ray.start.id && t.thing.id !== ray.end.id && likely(t).some(o => firstMeeting(o, from, s.at) !== undefined))) return undefined;
  // The card stands at half of the way, between what the plate needs and the line to the object's near edge.
  const d = axis.along / 2;
  const edge = need(d) + (axis.clearance / 2 - need(d)) / 2;
  const card: Vector = [from[0] + u[0] * d + across[0] * edge, from[1] + u[1] * d + across[1] * edge, from[2] + u[2] * d + across[2] * edge];
  return { off: axis.clearance, radius: at(whole, axis.along), card };
}

/** How far a face whose size is written reaches towards a side, m. */
function reachOf(s: Standing | undefined, side: Vector): number | undefined {
  const n = s?.normal();
  if (!s || !n || s.face.by.length === 0) return undefined;
  const [right, up] = facing(s.at, n).axes;
  const parts = [(s.face.size[0] / 2) * Math.abs(dot(right, side)), (s.face.size[1] / 2) * Math.abs(dot(up, side))] as const;
  return s.form.face === 'round' ? Math.hypot(...parts) : parts[0] + parts[1];
}
