/** Figures over a plate on an even net, in plain numbers: at its middle, its edges and its corners the same that the cells have. */
import { lasersAt, type Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { sidesOfThing } from '../places/extents.ts';
import type { Cell } from '../graph.ts';
import type { Over } from '../light/predicted.ts';
import type { PlateLight } from '../light/plate-light.ts';
import type { Pair } from '../paths/pairs.ts';
import type { Results } from '../plan.ts';
import { mismatchesOver } from '../rules/maps.ts';
import type { OnPlate } from '../rules/object-light.ts';
import type { PairMap } from './maps.ts';

export const OVER = ['light', 'ratio', 'brightness'] as const;
export type OverWhat = (typeof OVER)[number];

export interface OverPlate {
  readonly what: OverWhat;
  readonly plate: Thing;
  /** m */
  readonly sides: readonly [number, number];
  /** points along a side, from edge to edge; odd, so that the middle is one */
  readonly count: number;
  /** row by row from the upper left corner, for somebody on the side that the reference comes from */
  readonly values: readonly number[];
  /** what they are: `light at P1` */
  readonly words: string;
  /** the values are shares of that in the middle, which nothing tells */
  readonly relative: boolean;
  /** the cell of the middle */
  readonly cell?: Cell;
  /** what of the light nobody has metered, so that the middle is known by the plan, to that cell's band */
  readonly unmetered: readonly ('reference' | 'object light')[];
  /** from where the reference comes along the plate: to the right and up, 1 if it grazed the plate; undefined where only its angle is known */
  readonly from?: readonly [number, number];
  readonly notes: readonly string[];
}

/** What tells a figure over a plate; a sentence where nothing does. */
type Source = { readonly values: (at: readonly OnPlate[]) => readonly number[]; readonly parts: number; readonly byAngle: boolean } & Pick<OverPlate, 'words' | 'relative' | 'cell' | 'unmetered' | 'notes'>;

/** Why there is no such map, in a sentence. */
export function unmapped(r: Results, plate: Thing, what: OverWhat): string | undefined {
  const source = sourceOf(r, plate, what);
  return typeof source === 'string' ? source : undefined;
}

export function overPlate(r: Results, plate: Thing, what: OverWhat): OverPlate | undefined {
  const source = sourceOf(r, plate, what);
  if (typeof source === 'string') return undefined;
  const [w, h] = sidesOfThing(plate, r.values)!.map(c => r.graph.value(c)!) as [number, number];
  // Of what is summed over thousands of parts for each point, half as fine a net looks the same.
  const count = source.parts > MANY ? COARSE : FINE;
  const { flipped, from } = side(r, plate);
  const steps = Array.from({ length: count }, (_, i) => (2 * i) / (count - 1) - 1);
  const values = source.values(steps.flatMap(up => steps.map((right): OnPlate => [flipped ? -right : right, -up])));
  if (values.some(v => !Number.isFinite(v))) return undefined;
  const { words, relative, cell, unmetered, notes, byAngle } = source;
  return { what, plate, sides: [w, h], count, values, words, relative, unmetered, notes, ...(cell ? { cell } : {}), ...(!byAngle && from ? { from } : {}) };
}
const [FINE, COARSE, MANY] = [25, 13, 600];

/** Whether somebody before the face of a plate has the reference behind it, and sees right and left the other way round; and from where it comes for who sees it. */
function side({ places, graph, arms }: Results, plate: Thing): { readonly flipped: boolean; readonly from?: readonly [number, number] } {
  const reference = arms.arms.find(a => a.plate === plate && a.role === 'reference');
  const [normal, light] = [places.directions.facing(places.own(plate)), reference && places.directions.of(reference.path.at(-1)!)];
  if (!normal || !light || [...normal, ...light].some(c => c.missing)) return { flipped: false };
  const [n, d] = [normal, light].map(v => v.map(c => graph.value(c)!)) as [number[], number[]];
  const flipped = n.reduce((sum, c, i) => sum + c * d[i]!, 0) > 0;
  const [x, y] = comesAlong(n, d);
  return { flipped, from: [flipped ? -x : x, y] };
}

/** The way that light comes from, along a plate: to the right and up for who looks at its face. */
function comesAlong([nx, ny, nz]: readonly number[], [x, y, z]: readonly number[]): readonly [number, number] {
  const level = Math.hypot(nx!, ny!);
  const [rx, ry] = level > 0 ? [-ny! / level, nx! / level] : [1, 0];
  // up = normal × right
  const u = [-nz! * ry, nz! * rx, nx! * ry - ny! * rx];
  return [-(x! * rx + y! * ry), -(x! * u[0]! + y! * u[1]! + z! * u[2]!)];
}

function sourceOf(r: Results, plate: Thing, what: OverWhat): Source | string {
  if (!sidesOfThing(plate, r.values)) return `How large ${plate.id} is, is not written: give it a “size”.`;
  if (what === 'brightness') return brightnessOver(r, plate);
  // Of several lasers each makes a picture of its own, and that of the first is drawn.
  const [laser] = lasersAt(plate, r.arms.arms);
  const own = r.arms.arms.filter(a => a.plate === plate && a.laser === laser);
  const [references, objects] = [own.filter(a => a.role === 'reference'), own.filter(a => a.role === 'object')];
  const [reference] = references;
  if (!reference) return `No reference reaches ${plate.id}.`;
  const over = r.light.sharesOver(reference);
  if (!over) return `How the light of ${reference.name} lies over ${plate.id} is not known: that takes a lens that spreads it, and how far that is.`;
  const light = r.light.plates.find(p => p.plate === plate);
  return what === 'ratio' ? ratioOver(r, plate, [reference, over], references, objects, light) : lightOver(r, plate, [reference, over], objects, light);
}

const value = (r: Results, cell: Cell | undefined): number | undefined => (cell ? r.graph.value(cell) : undefined);

const unmetered = ({ predicted }: PlateLight): OverPlate['unmetered'] => [...(predicted.reference ? ['reference' as const] : []), ...(predicted.object ? ['object light' as const] : [])];

function ratioOver(r: Results, plate: Thing, [reference, over]: readonly [Arm, Over], references: readonly Arm[], objects: readonly Arm[], light: PlateLight | undefined): Source | string {
  if (objects.length === 0) return `No object light reaches ${plate.id}.`;
  if (references.length > 1) return `Several references reach ${plate.id}: how the ratio lies over it is not worked out.`;
  if (objects.some(a => a.beam === reference.beam)) return `One beam makes the hologram on ${plate.id}: its ratio goes by how the object scatters, and how it lies over the plate is not worked out.`;
  const from = objectsOver(r, objects);
  if (typeof from === 'string') return from;
  const ratio = value(r, light?.ratio);
  return {
    values: at => { const o = from.at(at); return over.at(at).map((v, i) => ((ratio ?? 1) * v) / o[i]!); }, parts: from.parts, byAngle: over.byAngle, relative: ratio === undefined, unmetered: light?.predicted.ratio ? unmetered(light) : [],
    words: `beam ratio at ${plate.id}`, ...(ratio !== undefined ? { cell: light!.ratio } : {}), notes: [],
  };
}

/** All object light over a plate, beside that in the middle: of several beams each has its own part of it. */
function objectsOver(r: Results, objects: readonly Arm[]): Pick<Over, 'at' | 'parts'> | string {
  const each: { readonly over: Over; readonly light: number }[] = [];
  for (const a of objects) {
    const [over, light] = [r.light.sharesOver(a), objects.length === 1 ? 1 : value(r, r.graph.find(`${a.plate.id}.${a.name}.light`))];
    if (!over || light === undefined) return `How the light of ${a.name} lies over ${a.plate.id} is not known: that takes an object with a size, lit by a beam that something spreads, and how far it is.`;
    each.push({ over, light });
  }
  const all = each.reduce((sum, e) => sum + e.light, 0);
  return { parts: Math.max(...each.map(e => e.over.parts)), at: (points: Parameters<Over['at']>[0]) => each.map(e => e.over.at(points)).reduce((sum, shares, k) => sum.map((s, i) => s + (all > 0 ? (each[k]!.light / all) * shares[i]! : 0)), points.map(() => 0)) };
}

function lightOver(r: Results, plate: Thing, [reference, over]: readonly [Arm, Over], objects: readonly Arm[], light: PlateLight | undefined): Source {
  const notes = light?.reference?.corners ? [`A corner of ${plate.id} was metered; how the light falls off is drawn by the plan.`] : [];
  const from = objects.length === 0 || objects.some(a => a.beam === reference.beam) ? '' : objectsOver(r, objects);
  const [l, o] = [value(r, light?.referenceLight), value(r, light?.objectLight)];
  if (light && l !== undefined && o !== undefined && typeof from !== 'string') {
    return {
      values: at => { const shares = from.at(at); return over.at(at).map((v, i) => l * v + o * shares[i]!); },
      parts: from.parts, byAngle: over.byAngle, relative: false, unmetered: unmetered(light), words: `light at ${plate.id}`, cell: light.light, notes,
    };
  }
  const alone = objects.length > 0 ? ['The light of the object is not in it: how that lies over the plate is not known.'] : [];
  return {
    values: at => over.at(at).map(v => (l ?? 1) * v), parts: over.parts, byAngle: over.byAngle, relative: l === undefined, unmetered: light ? unmetered(light).filter(of => of === 'reference') : [],
    words: `light of the reference at ${plate.id}`, ...(l !== undefined ? { cell: light!.referenceLight } : {}), notes: [...alone, ...notes],
  };
}

/** Of the first object beam whose mismatch is known over the plate. */
function brightnessOver(r: Results, plate: Thing): Source | string {
  const pairs = r.plates.find(p => p.plate === plate)?.pairs ?? [];
  const [first] = pairs;
  if (!first) return `No object beam and reference of one laser meet at ${plate.id}.`;
  const found = pairs.flatMap((pair): (readonly [Pair, PairMap])[] => { const map = r.maps.of(pair); return map ? [[pair, map]] : []; })[0];
  if (!found) return `How the paths to ${plate.id} differ from point to point is known where the plate and what lights it stand somewhere and have a size.`;
  const [{ arm, coherence, parts }, map] = found;
  if (!coherence || coherence.inputs.some(c => c.missing)) return `How well the light of ${arm.laser.id} holds together is not written: give it a “coherence length”, or a “tube length”.`;
  const x = map.inputs.map(c => r.graph.value(c)!);
  const rest = coherence.inputs.map(c => r.graph.value(c)!);
  const cell = parts.find(p => p.part === 'middle')?.brightness;
  const of = map.layout.form === 'hologram' ? `the middle of ${arm.object!.id}` : `the middle of ${arm.object!.id}${pairs.length > 1 ? ` in the light of ${arm.name}` : ''}`;
  return {
    values: at => mismatchesOver(map.layout, x, at.map(([a, b]) => [a / 2, b / 2])).map(d => coherence.rule.compute([d, ...rest])), parts: 1, byAngle: false, relative: false, unmetered: [],
    words: `brightness with which ${of} records at ${plate.id}`, ...(cell && !cell.missing ? { cell } : {}), notes: [],
  };
}
