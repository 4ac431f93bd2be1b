/** Which side of an object is lit, and how much of that the plate sees: by the places, the sizes and the shape. Only where both stand somewhere. */
import { ontoObject, type Arm } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { LENGTH, NUMBER, parseUnit } from '../../model/units.ts';
import { Beams } from '../beams/beams.ts';
import { flatDepth, sidesOfThing } from '../places/extents.ts';
import type { Cell } from '../graph.ts';
import type { Pair } from '../paths/pairs.ts';
import { lightFrom, LOOKED_AT, lookedAt, type LookedAt } from '../rules/object.ts';
import { LYING, SHAPES, type Form } from '../rules/surface.ts';
import type { Values } from '../values.ts';
import type { Making } from '../making.ts';

/** An object in front of its plate, as the places have it. */
export interface Sight {
  readonly plate: Thing;
  readonly pair: Pair;
  readonly object: Thing;
  /** the leg by which the light comes to the object */
  readonly onto: Leg;
  /** where the plate and the object stand, and which way the light runs that falls on the object, three cells each */
  readonly at: readonly Cell[];
  readonly middle: readonly Cell[];
  readonly light: readonly Cell[];
  /** how far that light is past its focus, and that focus's Rayleigh range; undefined where it runs side by side */
  readonly spread?: readonly [Cell, Cell];
  readonly form: Form;
  /** width, height and depth; undefined where no size is written; none of single points */
  readonly sides?: readonly Cell[];
}

const [PERCENT, MM] = [parseUnit('%')!, parseUnit('mm')!];

export class ObjectLight {
  /** Objects that their plates see straight on, lit by a beam, both placed. */
  readonly sights: readonly Sight[];

  constructor(private readonly context: Making) {
    this.sights = context.plates.flatMap(({ plate, pairs }) => pairs.flatMap(pair => this.sightOf(plate, pair) ?? []));
    for (const s of this.sights) {
      const cell = this.look(s, 'lit side');
      if (!cell || cell.missing) continue;
      context.published.push(cell);
      for (const short of ['lit side', `${s.plate.id}.lit side`]) context.alias(short, cell);
    }
  }

  of(pair: Pair): Sight | undefined { return this.sights.find(s => s.pair === pair); }

  /** `P1.object.lit side`: share of what the plate sees that is lit; `….seen side`: share of what is lit that it sees; `….lit depth`. */
  ask(name: string): Cell | undefined {
    const what = LOOKED_AT.find(w => name.endsWith(`.${w}`));
    const sight = what && this.sights.find(s => name === `${nameOf(s)}.${what}` || (name === `${s.plate.id}.${what}` && this.sights.filter(o => o.plate === s.plate).length === 1));
    return sight && this.look(sight, what);
  }

  /** Undefined where no size is written. */
  look(s: Sight, what: LookedAt): Cell | undefined {
    if (!s.sides) return undefined;
    const { graph } = this.context.values;
    const name = `${nameOf(s)}.${what}`;
    const words = { 'lit side': `share of what ${s.plate.id} sees of ${s.object.id} that is lit`, 'seen side': `share of the lit side of ${s.object.id} that ${s.plate.id} sees`, 'lit depth': `depth of what is lit and seen of ${s.object.id}` }[what];
    return graph.find(name) ?? graph.derive(name, lookedAt(what, s.form, s.spread !== undefined), [...s.at, ...s.middle, ...s.light, ...(s.spread ?? []), ...s.sides], what === 'lit depth' ? LENGTH : NUMBER, words, { unit: what === 'lit depth' ? MM : PERCENT });
  }

  /** Where the light on the object comes from as the plate sees it: to the right, up, and from the plate's own side. */
  from(s: Sight): readonly [number, number, number] {
    const [at, middle, light] = [s.at, s.middle, s.light].map(cells => cells.map(c => this.context.values.graph.value(c)!));
    return lightFrom(at!, middle!, light!);
  }

  private sightOf(plate: Thing, pair: Pair): Sight | undefined {
    const { places, values, beams } = this.context;
    const object = pair.arm.object!;
    const last = pair.arm.path.at(-1)!;
    if (object.kind.word !== 'object' || places.ways.source(last) !== object || throughScreen(pair.arm, object)) return undefined;
    const onto = ontoObject(pair.arm);
    const [at, middle, light] = [places.of(places.own(plate)), places.of(places.own(object)), onto && places.directions.of(onto)];
    if (!onto || !at || !middle || !light || [...at, ...middle, ...light].some(c => c.missing)) return undefined;
    const spread = spreadOf(pair.arm, onto, beams);
    const form = formOf(object, values);
    const sides = sidesOfObject(object, pair.depth, values, form);
    return { plate, pair, object, onto, at, middle, light, form, ...(spread ? { spread } : {}), ...(sides ? { sides } : {}) };
  }
}

export const nameOf = (s: { readonly plate: Thing; readonly pair: Pair }): string => `${s.plate.id}.${s.pair.arm.name}`;

/** Light that a screen or another object scatters comes from all over that. */
const throughScreen = (arm: Arm, object: Thing): boolean => arm.path.some(l => l.target && l.target !== object && (l.target.kind.light === 'scatters' || l.target.kind.word === 'fill card'));

/** The focus that a beam spreads from as it arrives; undefined for light that runs side by side, or where nothing tells. */
export function spreadOf(arm: Arm, leg: Leg, beams: Beams): readonly [Cell, Cell] | undefined {
  if (!Beams.areShaped(arm)) return undefined;
  const { past, rayleigh } = beams.at(leg).level;
  return past.missing || rayleigh.missing ? undefined : [past, rayleigh];
}

/** What an object counts as: as written, else as the vocabulary assumes. */
export function formOf(object: Thing, values: Values): Form {
  const points = object.facts.get('points')?.value;
  return {
    shape: SHAPES.find(s => s === values.words(object, 'shape')) ?? 'rounded', lying: LYING.find(l => l === values.words(object, 'axis')) ?? 'upright', assumed: !object.facts.has('shape'),
    ...(points?.kind === 'places' ? { points: points.places.map(p => [p[0].value, p[1].value, p[2].value] as const) } : {}),
  };
}

export function sidesOfObject(object: Thing, depth: Cell | undefined, values: Values, form: Form): readonly Cell[] | undefined {
  if (form.points) return [];
  const sides = sidesOfThing(object, values) ?? [];
  const round = object.facts.has('diameter') ? values.fact(object, 'diameter') : undefined;
  const [width, height, deep] = [sides[0] ?? round, sides[1] ?? round, depth ?? sides[2] ?? round];
  const all = width && height && [width, height, deep ?? flatDepth(object, values)];
  return all && !all.some(c => c.missing) ? all : undefined;
}
