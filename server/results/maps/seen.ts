/** What a plate sees of what stands before it: its parts, how well lit each is beside the others, and how brightly it records. Only where plate, object and their light stand somewhere and have a size. */
import type { Thing } from '../../model/model.ts';
import { sidesOfThing } from '../places/extents.ts';
import type { Cell } from '../graph.ts';
import { screenBefore } from '../light/screen-light.ts';
import type { Results } from '../plan.ts';
import { minus } from '../rules/object.ts';
import { sighted, type Sighted } from '../rules/seen.ts';
import type { Form } from '../rules/surface.ts';
import type { Vector } from '../rules/table.ts';
import { inSight } from './in-sight.ts';

/** An object as its plate may see it, or what stands for one. Shares of the best lit part of all. */
export interface SeenObject extends Sighted {
  readonly object: Thing;
  /** a window is flat: a first hologram, or what is lit of ground glass */
  readonly shape: Form['shape'] | 'window';
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

/** Why a plate sees nothing that could be drawn, in a sentence. */
export function unseen(r: Results, plate: Thing): string | undefined {
  const sights = r.object.sights.filter(s => s.plate === plate);
  const sizeless = sights.find(s => !s.sides)?.object ?? (sights.length > 0 && !sidesOfThing(plate, r.values) ? plate : undefined);
  if (sizeless) return noSize(sizeless);
  if (inSight(r, plate).length > 0) return undefined;
  if (sights.length > 0) return unspread(plate, sights[0]!.object);
  const arm = r.arms.arms.find(a => a.plate === plate && a.object);
  const object = arm?.object;
  if (!object) return `Nothing sends object light to ${plate.id}.`;
  const screen = screenBefore(arm)?.screen;
  const isObject = object.kind.word === 'object';
  if (!isObject && object.kind.light !== 'diffracts') return `${plate.id} sees the light of ${object.id}, and not an object.`;
  const all = [object, plate, ...(screen ? [screen] : [])];
  if (all.some(t => { const at = r.places.of(r.places.own(t)); return !at || at.some(c => c.missing); })) return `What ${plate.id} sees of ${object.id} is known where ${all.length > 2 ? `${all.map(t => t.id).join(', ')} all` : 'both'} stand somewhere.`;
  if (isObject && !screen) return `What ${plate.id} sees of ${object.id} is known where a beam lights ${object.id} straight on, or one ground glass or diffuser right before it.`;
  const bare = all.find(t => !sidesOfThing(t, r.values) && !t.facts.has('diameter') && !t.facts.has('points'));
  return bare ? noSize(bare) : unspread(plate, object);
}

const noSize = (thing: Thing): string => `How large ${thing.id} is, is not written: give it a “size”.`;
const unspread = (plate: Thing, object: Thing): string => `Where the reference of ${plate.id} comes from, or how the beams spread, is not known, so that nothing tells which parts of ${object.id} record.`;

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

function make(r: Results, plate: Thing): PlateView | undefined {
  const lit = inSight(r, plate);
  const [first] = lit;
  if (!first) return undefined;
  const pairs = [...new Set(lit.map(l => l.pair))];
  const others = r.arms.arms.filter(a => a.plate === plate && a.role === 'object' && !pairs.some(p => p.arm === a));
  const notes = [...others.map(a => `${a.name}: the light that it brings is not in the picture`), ...lit.flatMap(l => l.note ?? [])];
  const powers = new Map(pairs.map(p => { const c = r.light.powers.ofArm(p.arm); return [p, c.missing ? undefined : r.graph.value(c)]; }));
  const compared = pairs.length === 1 ? first.told : lit.every(l => l.told && (powers.get(l.pair) ?? 0) > 0);
  if (!compared && pairs.length > 1) notes.push(`nothing tells how the powers of ${pairs.map(p => p.arm.name).join(' and ')} compare, so that each counts as if it lit the middle alike`);
  const objects = [...new Set(lit.map(l => l.thing))].map((object): SeenObject => {
    const own = lit.filter(l => l.thing === object);
    const { layout: { form }, x, middle, darkest } = own[0]!;
    const seen = sighted(own[0]!.layout, x);
    const light = new Float64Array(seen.patches.length);
    const bright = new Float64Array(seen.patches.length);
    let known = true;
    for (const l of own) {
      const on = l.light(seen, compared);
      const weight = compared && pairs.length > 1 ? powers.get(l.pair)! : 1;
      const recorded = l.recorded(seen);
      known &&= recorded !== undefined;
      for (let k = 0; k < light.length; k++) { light[k]! += weight * on[k]!; bright[k]! += weight * on[k]! * (recorded?.[k] ?? 0); }
    }
    return {
      object, ...(form === 'hologram' ? { shape: 'window', assumed: false } : { shape: form.shape, assumed: form.assumed }), ...seen, middle: minus(middle, first.middle), light, ...(known ? { bright } : {}),
      ...(own.length === 1 && darkest ? { darkest } : {}),
    };
  });
  const most = Math.max(...objects.flatMap(o => o.light.reduce((a, b) => Math.max(a, b), 0)));
  for (const { light, bright } of objects) for (let k = 0; k < light.length; k++) { light[k] = most > 0 ? light[k]! / most : 0; if (bright) bright[k] = most > 0 ? bright[k]! / most : 0; }
  const { plate: at, right, up } = objects[0]!;
  return { plate, objects, at, right, up, notes };
}
