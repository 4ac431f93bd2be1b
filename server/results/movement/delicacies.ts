/** How delicate the things are on which an object arm and its reference do not agree, as far as angles of light are known. */
import { objectAt } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { NUMBER, type Unit } from '../../model/units.ts';
import type { Beams } from '../beams/beams.ts';
import { extentOf, sidesOfThing } from '../places/extents.ts';
import type { Fringes } from '../fringes/fringes.ts';
import type { Cell } from '../graph.ts';
import type { LegCells } from '../legs/leg-cells.ts';
import { legStart } from '../legs/legs.ts';
import type { Pair, PlateResults } from '../paths/pairs.ts';
import type { Direction } from '../places/directions.ts';
import type { Places } from '../places/places.ts';
import { againstBeams } from '../rules/fringes.ts';
import { BY_PATH, delicacy, mostDelicate, OBJECT, SIDEWAYS } from '../rules/movement.ts';
import type { Values } from '../values.ts';

/** In which direction a thing is most delicate. */
export type Along = 'along its normal' | 'along its surface' | 'between its surface and its normal' | 'along the line halfway between the light on it and the light from it' | 'across the beam';

export interface Found {
  readonly thing: Thing;
  readonly against?: Thing;
  readonly along: Along;
  readonly pair: Pair;
  /** path change per movement, 1 */
  readonly size: number;
  readonly make: (name: string, unit: Unit) => Cell;
}

interface Asked { readonly values: Values; readonly places: Places; readonly beams: Beams; readonly fringes: Fringes; readonly legs: LegCells }
interface Term { readonly weight: 1 | -1; readonly direction: Direction }

/** Less than this, of the path by which a thing moves, is no matter. */
const LEAST = 0.01;

export function delicaciesOf(pair: Pair, plate: PlateResults, asked: Asked): Found[] {
  const wavelength = asked.values.fact(pair.arm.laser, 'wavelength');
  if (!wavelength || wavelength.missing) return [];
  const [object, reference] = [pair.arm.path, pair.reference.path];
  let shared = 0;
  while (shared < Math.min(object.length, reference.length) && object[shared] === reference[shared]) shared++;
  // A beam that goes through its plate to the object has all before it in common: the plate moves against the object, or the object against the plate.
  const single = shared === reference.length;
  const terms = termsOf(object.slice(shared), reference.slice(shared), asked.places);
  const placed = [...terms].flatMap(([thing, list]) => byDirections(thing, list, pair, wavelength, asked) ?? []);
  const has = (thing: Thing): boolean => placed.some(f => f.thing.id === thing.id);
  const rest = [...(has(plate.plate) ? [] : plateByAngles(plate.plate, pair, wavelength, asked)), ...(single || has(pair.arm.object!) ? [] : objectByAngle(pair, wavelength, asked))];
  const all = [...placed, ...rest];
  if (single) return all.filter(f => f.thing.id === plate.plate.id).map(f => ({ ...f, against: pair.arm.object! }));
  return [...all, ...straightThrough(object.slice(shared), has, pair, wavelength, asked), ...spreaders(pair.arm.object!, object.slice(shared, objectAt(pair.arm) + 1), pair, wavelength, asked), ...spreaders(plate.plate, reference.slice(shared), pair, wavelength, asked)];
}

/** The light that comes to each thing and goes from it, behind where the arms part. Things of which not all light is known are left out. */
function termsOf(object: readonly Leg[], reference: readonly Leg[], places: Places): Map<Thing, Term[]> {
  const terms = new Map<Thing, Term[]>();
  const unknown = new Set<Thing>();
  const add = (thing: Thing | undefined, weight: 1 | -1, direction: Direction | undefined): void => {
    if (!thing) return;
    const own = places.own(thing);
    if (!direction || direction.some(c => c.missing)) { unknown.add(own); return; }
    const list = terms.get(own) ?? [];
    terms.set(own, list);
    list.push({ weight, direction });
  };
  const along = (legs: readonly Leg[], arriving: 1 | -1): void => {
    for (const leg of legs) {
      const direction = places.directions.of(leg);
      add(legStart(leg), arriving === 1 ? -1 : 1, direction);
      add(leg.target, arriving, direction);
    }
  };
  along(object, 1);
  along(reference, -1);
  for (const thing of unknown) terms.delete(thing);
  return terms;
}

function byDirections(thing: Thing, terms: readonly Term[], pair: Pair, wavelength: Cell, { values: { graph }, places }: Asked): Found | undefined {
  const { light } = thing.kind;
  if (light === 'source' || light === 'passes' || light === 'ends' || light === 'none') return undefined;
  const weights = terms.map(t => t.weight);
  const inputs = terms.flatMap(t => t.direction);
  const gradient = mostDelicate(weights, inputs.map(c => graph.value(c)!));
  const size = Math.hypot(...gradient);
  if (size < LEAST) return undefined;
  const along: Along = light === 'turns' || light === 'shares' ? 'along its normal' : light === 'recorded' ? againstNormal(gradient, places.directions.facing(thing)?.map(c => graph.value(c))) : 'along the line halfway between the light on it and the light from it';
  return { thing, along, pair, size, make: (name, unit) => graph.derive(name, delicacy(weights), [...inputs, wavelength], unit.dim, `delicacy of ${thing.id}`, { unit }) };
}

/** Between which of both the direction lies in which a plate is most delicate: within 30° of one of them it is that. */
function againstNormal(gradient: readonly number[], normal: readonly (number | undefined)[] | undefined): Along {
  if (!normal || normal.some(c => c === undefined)) return 'between its surface and its normal';
  const across = Math.abs(gradient.reduce((s, g, i) => s + g * normal[i]!, 0)) / Math.hypot(...gradient);
  return across > COS_30 ? 'along its normal' : across < SIN_30 ? 'along its surface' : 'between its surface and its normal';
}
const COS_30 = Math.cos(Math.PI / 6);
const SIN_30 = 0.5;

/** A plate of which only the angles are known at which its beams arrive. */
function plateByAngles(plate: Thing, pair: Pair, wavelength: Cell, { values: { graph }, fringes }: Asked): Found[] {
  const f = fringes.of(pair);
  if (!f) return [];
  const change = (along: 'worst' | 'normal'): number => againstBeams(f.from.known, along).compute(f.from.inputs.map(c => graph.value(c) ?? Number.NaN));
  const size = change('worst');
  if (!(size >= LEAST)) return [];
  const along = change('normal') / size > COS_30 ? 'along its normal' : change('normal') / size < SIN_30 ? 'along its surface' : 'between its surface and its normal';
  return [{
    thing: plate, along, pair, size,
    make: (name, unit) => graph.derive(name, BY_PATH, [graph.derive(`${name}~path`, againstBeams(f.from.known, 'worst'), f.from.inputs, NUMBER, `path change as ${plate.id} moves`), wavelength], unit.dim, `delicacy of ${plate.id}`, { unit }),
  }];
}

/** An object of which it is written from where it is lit. */
function objectByAngle(pair: Pair, wavelength: Cell, { values }: Asked): Found[] {
  const object = pair.arm.object!;
  const psi = object.facts.has('lit at') ? values.fact(object, 'lit at') : undefined;
  if (!psi || psi.missing) return [];
  const size = 2 * Math.abs(Math.cos(values.graph.value(psi)! / 2));
  return size < LEAST ? [] : [{
    thing: object, along: 'along the line halfway between the light on it and the light from it', pair, size,
    make: (name, unit) => values.graph.derive(name, OBJECT, [psi, wavelength], unit.dim, `delicacy of ${object.id}`, { unit }),
  }];
}

/** Ground glass, or a leaf before it, that light crosses straight: on the axis it may move, the light that it sends to the corners of what is behind it changes its path. */
function straightThrough(legs: readonly Leg[], has: (thing: Thing) => boolean, pair: Pair, wavelength: Cell, { values, places, legs: lengths }: Asked): Found[] {
  return legs.flatMap((leg, i): Found[] => {
    const [thing, on] = [leg.target, legs[i + 1]];
    const [length, lit] = [on && lengths.get(on), on?.target];
    if (thing?.kind.light !== 'scatters' || has(thing) || !on || !length || length.missing || !lit || !places.directions.of(leg) || !places.directions.of(on)) return [];
    const sides = lit.kind.light === 'recorded' ? sidesOfThing(lit, values) : extentOf(lit, undefined, values).sides;
    return sides ? sideways(thing, [length, values.graph.input(`${thing.id}.point`, { value: 0, dim: length.dim }, 'written', 'Rayleigh range of a point'), sides[0]!, sides[1]!, wavelength], pair, values) : [];
  });
}

function sideways(thing: Thing, inputs: readonly Cell[], pair: Pair, { graph }: Values): Found[] {
  if (inputs.some(c => c.missing)) return [];
  const size = SIDEWAYS.compute(inputs.map(c => graph.value(c)!)) * graph.value(inputs.at(-1)!)!;
  return size < LEAST ? [] : [{ thing, along: 'across the beam', pair, size, make: (name, unit) => graph.derive(name, SIDEWAYS, inputs, unit.dim, `delicacy of ${thing.id}`, { unit }) }];
}

/** Lenses that spread the light of an arm over what it lights, as long as nothing bends it behind them. */
function spreaders(lit: Thing, legs: readonly Leg[], pair: Pair, wavelength: Cell, { values, beams }: Asked): Found[] {
  const at = legs.findLastIndex(l => l.target?.kind.word === 'spreader' || l.target?.kind.word === 'lens' || l.target?.kind.word === 'collimator' || l.target?.facts.has('focal length') === true);
  const lens = at < 0 ? undefined : legs[at]!.target!;
  if (lens?.kind.word !== 'spreader') return [];
  const { past, rayleigh } = beams.at(legs.at(-1)!).level;
  const [width, height] = (lit.kind.light === 'recorded' ? sidesOfThing(lit, values) : extentOf(lit, undefined, values).sides) ?? [];
  return width && height ? sideways(lens, [past, rayleigh, width, height, wavelength], pair, values) : [];
}
