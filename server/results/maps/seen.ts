/** What a plate sees of the objects before it: their parts, how well lit each is beside the others, and how brightly it records. Only where plate, object and their light stand somewhere and have a size. */
import type { Thing } from '../../model/model.ts';
import { Beams } from '../beams/beams.ts';
import type { Cell } from '../graph.ts';
import { sidesOfThing } from '../fringes/extents.ts';
import { beamNumbers } from '../light/yield.ts';
import type { Sight } from '../object/object.ts';
import type { Results } from '../plan.ts';
import { lightOnParts, placeOfPart, recordedParts, sighted, type Sighted } from '../rules/seen.ts';
import type { Form } from '../rules/surface.ts';
import type { Vector } from '../rules/table.ts';
import type { PairMap } from './maps.ts';


/** An object as its plate may see it. Shares of the best lit part of all. */
export interface SeenObject extends Sighted {
  readonly object: Thing;
  readonly shape: Form['shape'];
  /** no shape is written */
  readonly assumed: boolean;
  /** from the middle of the first object, m */
  readonly middle: Vector;
  /** light on each part */
  readonly light: Float64Array;
  /** with what brightness it then records; without, nothing tells how well the laser's light holds together */
  readonly bright?: Float64Array;
  /** the part that records worst of those that are lit and seen, about the object, and how brightly it does; of light from one side */
  readonly darkest?: { readonly at: Vector; readonly cell: Cell };
}

export interface PlateView {
  readonly plate: Thing;
  readonly objects: readonly SeenObject[];
  /** middle of the plate from the middle of the first object, half of its width and half of its height as somebody sees it who looks through it at the object, m */
  readonly at: Vector;
  readonly right: Vector;
  readonly up: Vector;
  /** beams that light an object and are left out, and how beams are weighed that nothing compares */
  readonly notes: readonly string[];
}

/** Why a plate sees no object that could be drawn, in a sentence. */
export function unseen(r: Results, plate: Thing): string | undefined {
  const sights = r.object.sights.filter(s => s.plate === plate);
  if (sights.length === 0) {
    const object = r.arms.arms.find(a => a.plate === plate && a.object)?.object;
    return !object ? `Nothing sends object light to ${plate.id}.`
      : object.kind.word !== 'object' ? `${plate.id} sees the light of ${object.id}, and not an object straight on.`
      : `What ${plate.id} sees of ${object.id} is known where both stand somewhere and a beam lights ${object.id} straight on, not by way of ground glass or a card.`;
  }
  const sizeless = sights.find(s => !s.sides)?.object ?? (sidesOfThing(plate, r.values) ? undefined : plate);
  if (sizeless) return `How large ${sizeless.id} is, is not written: give it a “size”.`;
  return sights.some(s => r.maps.of(s.pair)) ? undefined : `Where the reference of ${plate.id} comes from, or how the beams spread, is not known, so that nothing tells which parts of ${sights[0]!.object.id} record.`;
}

const views = new WeakMap<Results, Map<Thing, PlateView>>();

/** Worked out once: where the eye is changes none of it. Undefined where `unseen` says why. */
export function seenFrom(r: Results, plate: Thing): PlateView | undefined {
  let of = views.get(r);
  if (!of) views.set(r, of = new Map<Thing, PlateView>());
  const known = of.get(plate);
  if (known) return known;
  if (unseen(r, plate) !== undefined) return undefined;
  const made = make(r, plate);
  if (made) of.set(plate, made);
  return made;
}

interface Lit { readonly sight: Sight; readonly map: PairMap & { readonly layout: { readonly form: Form } }; readonly x: readonly number[] }

function make(r: Results, plate: Thing): PlateView | undefined {
  const value = (c: Cell): number => r.graph.value(c) ?? Number.NaN;
  const lit = r.object.sights.filter(s => s.plate === plate).flatMap((sight): Lit[] => {
    const map = r.maps.of(sight.pair);
    return map && map.layout.form !== 'hologram' ? [{ sight, map: map as Lit['map'], x: map.inputs.map(value) }] : [];
  });
  const [first] = lit;
  if (!first) return undefined;
  const notes: string[] = [];
  const others = r.arms.arms.filter(a => a.plate === plate && a.role === 'object' && !lit.some(l => l.sight.pair.arm === a));
  for (const a of others) notes.push(`${a.name}: the light that it brings is not in the picture`);
  const beams = lit.map(l => beamOf(r, l));
  const powers = lit.map(l => r.light.powers.ofArm(l.sight.pair.arm)).map(c => (c.missing ? undefined : value(c)));
  const weighed = lit.length === 1 || (beams.every(b => b) && powers.every(p => p !== undefined && p > 0));
  if (!weighed) notes.push(`nothing tells how the powers of ${lit.map(l => l.sight.pair.arm.name).join(' and ')} compare, so that each counts as if it lit the middle alike`);
  const from = first.sight.middle.map(value);
  const objects = [...new Set(lit.map(l => l.sight.object))].map((object): SeenObject => {
    const own = lit.filter(l => l.sight.object === object);
    const { sight, map, x } = own[0]!;
    const seen = sighted(map.layout, x);
    const light = new Float64Array(seen.patches.length);
    const bright = new Float64Array(seen.patches.length);
    let known = true;
    for (const l of own) {
      const i = lit.indexOf(l);
      const along = l.sight.light.map(value) as unknown as Vector;
      const on = lightOnParts(l.map.layout, l.x, seen.patches, along, weighed ? beams[i] : undefined);
      const weight = weighed && lit.length > 1 ? powers[i]! : 1;
      const recorded = recordedOf(r, l, seen);
      known &&= recorded !== undefined;
      for (let k = 0; k < light.length; k++) { light[k]! += weight * on[k]!; bright[k]! += weight * on[k]! * (recorded?.[k] ?? 0); }
    }
    const { darkest, darkestBrightness } = map.found ?? {};
    return {
      object, shape: map.layout.form.shape, assumed: map.layout.form.assumed, ...seen, middle: sight.middle.map((c, i) => value(c) - from[i]!) as unknown as Vector, light, ...(known ? { bright } : {}),
      ...(own.length === 1 && darkest && darkestBrightness && !darkestBrightness.missing ? { darkest: { at: placeOfPart(map.layout, x, darkest), cell: darkestBrightness } } : {}),
    };
  });
  const most = Math.max(...objects.flatMap(o => o.light.reduce((a, b) => Math.max(a, b), 0)));
  for (const { light, bright } of objects) for (let k = 0; k < light.length; k++) { light[k] = most > 0 ? light[k]! / most : 0; if (bright) bright[k] = most > 0 ? bright[k]! / most : 0; }
  const { plate: at, right, up } = objects[0]!;
  return { plate, objects, at, right, up, notes };
}

/** The beam as it meets the object; undefined where nothing tells how wide it is. */
function beamOf({ graph, beams }: Results, { sight }: Lit): readonly number[] | undefined {
  if (!Beams.areShaped(sight.pair.arm)) return undefined;
  const cells = beamNumbers(beams.at(sight.onto));
  return cells.some(c => c.missing) ? undefined : cells.map(c => graph.value(c)!);
}

function recordedOf({ graph }: Results, { sight, map, x }: Lit, { patches }: Sighted): Float64Array | undefined {
  const { coherence } = sight.pair;
  if (!coherence || coherence.inputs.some(c => c.missing)) return undefined;
  const rest = coherence.inputs.map(c => graph.value(c)!);
  return recordedParts(map.layout, x, patches, d => coherence.rule.compute([d, ...rest]));
}
