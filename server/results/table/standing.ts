/** What stands on the table, as plain numbers: places, faces, mounts. Looked at before any cell is made of it. */
import type { BoundFact, Setup, Thing } from '../../model/model.ts';
import type { Arms } from '../../model/arms.ts';
import type { Cell, Graph } from '../graph.ts';
import type { Places } from '../places/places.ts';
import { clearance, coreAt, postUnder, solidOf, unit, type Form, type Solid, type Vector } from '../rules/table.ts';

export interface Extent {
  readonly size: Vector;
  /** the facts that say it; empty where it is assumed */
  readonly by: readonly BoundFact[];
}

/** A thing that stands somewhere. */
export interface Standing {
  readonly thing: Thing;
  readonly at: Vector;
  /** width, height and depth of its face, in m: the depth 0 but of a body */
  readonly face: Extent;
  /** with its mount */
  readonly whole: Vector;
  /** the farthest that any part of it reaches from its place, without the post */
  readonly bound: number;
  /** height of the top of its post above the table, m; 0 without one */
  readonly postTop: number;
  readonly form: Form;
  /** which way it faces, as plain numbers; found when somebody asks */
  normal(): Vector | undefined;
}

interface Context {
  readonly setup: Setup;
  readonly places: Places;
  readonly arms: Arms;
  readonly graph: Graph;
}

/** Things that hang far above the beams hang from a tower, not on a post of their own. */
const HIGHEST_POST = 0.15;

/** All things that stand somewhere and take room there, in the order of the text. */
export function standings(context: Context): Map<string, Standing> {
  const found = new Map<string, Standing>();
  const heights: number[] = [];
  for (const thing of context.setup.things.values()) {
    const place = thing.placement && context.places.of(thing);
    if (!place || !thing.kind.footprint || place.some(c => c.missing)) continue;
    const at = numbers(place, context.graph)!;
    heights.push(at[2]);
    found.set(thing.id, standing(thing, at, context));
  }
  const usual = heights.sort((a, b) => a - b)[Math.floor(heights.length / 2)] ?? 0;
  for (const [id, s] of found) if (s.at[2] > usual + HIGHEST_POST) found.set(id, { ...s, postTop: 0 });
  return found;
}

function standing(thing: Thing, at: Vector, context: Context): Standing {
  const f = thing.kind.footprint!;
  const face = extentOf(thing);
  const [w, h, d] = face.size;
  const mount = (2 * f.mount) / 1000;
  const whole: Vector = f.face === 'body' ? [w, h, d] : [w + mount, h + mount, f.depth / 1000];
  let normal: Vector | undefined | 'unasked' = 'unasked';
  return {
    thing, at, face, whole,
    bound: Math.hypot(whole[0], whole[1]) / 2 + (f.lies === 'behind' ? whole[2] : whole[2] / 2),
    postTop: f.post ? Math.max(0, at[2] - whole[1] / 2) : 0,
    form: { face: f.face, lies: f.lies },
    normal: () => (normal === 'unasked' ? (normal = normalOf(thing, at, context)) : normal),
  };
}

/** Width, height and depth of the face by its facts, else as assumed. */
export function extentOf(thing: Thing): Extent {
  const f = thing.kind.footprint!;
  const depth = thing.facts.get('depth');
  const deep = depth?.value.kind === 'quantity' ? depth.value.quantity.value : f.depth / 1000;
  for (const phrase of f.by) {
    const fact = thing.facts.get(phrase) ?? thing.recordedOn?.facts.get(phrase);
    if (fact?.value.kind === 'sizes') {
      const [w, h, d] = fact.value.parts.map(p => p.value);
      return { size: [w!, h!, f.face === 'body' ? (d ?? deep) : 0], by: [fact] };
    }
    if (fact?.value.kind === 'quantity') {
      const d = fact.value.quantity.value;
      return { size: [d, d, f.face === 'body' ? d : 0], by: [fact] };
    }
  }
  return { size: [f.assumed[0] / 1000, f.assumed[1] / 1000, f.face === 'body' ? deep : 0], by: [] };
}

/** A body turns its front to the plate that it is recorded on; everything else faces as it is written, or as its beam needs. */
function normalOf(thing: Thing, at: Vector, { places, arms, graph }: Context): Vector | undefined {
  if (thing.kind.footprint!.face === 'body') {
    const plate = arms.arms.find(a => a.object?.id === thing.id)?.plate;
    const seen = plate && places.of(places.own(plate));
    const to = seen && numbers(seen, graph);
    return to && direction(at, to);
  }
  const way = places.directions.facing(thing);
  if (way) return numbers(way, graph);
  // What the light goes straight through, and cards that end it, mostly stand square to it.
  const leg = places.ways.to(thing).find(l => l.target);
  const from = leg && places.directions.startOf(leg);
  const start = from && places.of(places.own(from));
  const p = start && numbers(start, graph);
  return p && (thing.kind.light === 'passes' || thing.kind.light === 'ends' || thing.kind.light === 'scatters') ? direction(at, p) : undefined;
}

function direction(from: Vector, to: Vector): Vector | undefined {
  const way = unit([to[0] - from[0], to[1] - from[1], to[2] - from[2]]);
  return way.every(c => c === 0) ? undefined : way;
}

export function numbers(cells: readonly Cell[], graph: Graph): Vector | undefined {
  const v = cells.map(c => graph.value(c));
  return v.includes(undefined) ? undefined : [v[0]!, v[1]!, v[2]!];
}

// On a table that is full each is held against many others, and against all the light.
const solids = new WeakMap<Standing, { likely?: readonly Solid[]; sure?: Solid }>();
function solidsOf(s: Standing): { likely?: readonly Solid[]; sure?: Solid } {
  let known = solids.get(s);
  if (!known) solids.set(s, known = {});
  return known;
}

/** What it holds back with its mount and post, as its sizes are written and assumed. */
export const likely = (s: Standing): readonly Solid[] => solidsOf(s).likely ??= [solidOf(s.form, s.at, s.normal(), s.whole), ...(s.postTop > 0 ? [postUnder(s.at, s.postTop)] : [])];

/** The same without what is surely guessed too large, because one end of a leg lies within it. */
export function beyondEnds(s: Standing, { from, to }: { readonly from: Vector; readonly to: Vector }): Solid[] {
  return likely(s).filter(solid => [from, to].every(p => clearance(solid, p, p).clearance > 0));
}

/** What it holds back whatever its mount is. */
export const sure = (s: Standing): Solid => solidsOf(s).sure ??= written(s);
function written(s: Standing): Solid {
  const normal = s.normal();
  return s.face.by.length > 0 && (normal || s.form.face === 'body') ? solidOf({ ...s.form, lies: 'around' }, s.at, normal, s.face.size) : coreAt(s.at);
}

/** A body without corners: as it is written, else as the vocabulary takes it. */
export function isRounded({ kind, facts }: Thing): boolean {
  const shape = facts.get('shape')?.value;
  return kind.footprint?.face === 'body' && (shape?.kind !== 'words' || shape.text === 'rounded' || shape.text === 'sphere');
}
