/** Angles of light: at plates, on objects, on mirrors. As written, else by the places of the things on the beam. */
import { objectAt, type Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { ANGLE, ONE_DEGREE, parseUnit } from '../../model/units.ts';
import type { Cell } from '../graph.ts';
import type { Places } from './places.ts';
import { comesFrom, type From } from '../rules/fringes.ts';
import { FOLD, FROM_NORMAL, INCIDENCE, LIT_AT } from '../rules/geometry.ts';
import { weighted } from '../rules/lengths.ts';
import type { Values } from '../values.ts';

/** An angle, and what it is known from. What is written wins. */
export interface Angle {
  readonly cell: Cell;
  readonly written?: Cell;
  readonly byPlaces?: Cell;
}

/** Light that comes this nearly along a plate runs past it: next to nothing enters its face, rad. */
export const EDGE_ON = (86 * Math.PI) / 180;

const DEGREE = parseUnit('°')!;

/** Not a guess. */
export const isKnown = (a: Angle): boolean => a.cell === a.written || a.cell === a.byPlaces;

const AS_WRITTEN = weighted('as written', 'the angle that is written', [1]);

/** Angle at which an arm arrives at the middle of its plate, from the plate's normal: 0 squarely. Undefined where neither the text nor the places tell it. */
export function arrivalAngle(plate: Thing, arm: Arm, places: Places, values: Values): Angle | undefined {
  const { graph } = values;
  const name = `${plate.id}.${arm.name}.angle`;
  const words = `angle of ${arm.name} at ${plate.id}`;
  const fact = `${arm.role} angle`;
  const written = plate.facts.has(fact) ? values.fact(plate, fact) : undefined;
  const [normal, light] = [places.directions.facing(places.own(plate)), places.directions.of(arm.path[arm.path.length - 1]!)];
  const byPlaces = normal && light && graph.derive(written ? `${name} by places` : name, FROM_NORMAL, [...normal, ...light], ANGLE, words);
  if (written) return { cell: graph.derive(name, AS_WRITTEN, [written], ANGLE, words, written.unit ? { unit: written.unit } : {}), written, ...(byPlaces ? { byPlaces } : {}) };
  return byPlaces && { cell: byPlaces, byPlaces };
}

/** Light mostly comes to a plate at 30° to 60° from its normal: what is taken where nothing tells. */
export function assumedAngle(name: string, words: string, reason: string, { graph }: Values): Cell {
  return graph.find(name) ?? graph.input(name, { value: 45 * ONE_DEGREE, dim: ANGLE, unit: DEGREE, spread: { kind: 'within', amount: 15 * ONE_DEGREE } }, 'assumed', words, { reason });
}

/** From where the reference of a plate comes, where its angle is written: as written, else level. */
export function referenceFrom(plate: Thing, values: Values): From {
  const word = values.words(plate, 'reference from');
  return word === 'above' || word === 'below' ? word : 'the side';
}

/** The same by the places; undefined where they do not tell it, or the light comes nearly squarely. */
export function placedFrom({ byPlaces }: Angle, { graph }: Values): From | undefined {
  const [nx, ny, nz, x, y, z] = byPlaces?.missing ? [] : byPlaces?.inputs.map(c => graph.value(c)) ?? [];
  return nx === undefined || ny === undefined || nz === undefined || x === undefined || y === undefined || z === undefined ? undefined : comesFrom([nx, ny, nz], [x, y, z]);
}

/** Angle between the light on the object of an arm and the line of sight from its plate: 0 from the front. Assumed where neither the text nor the places tell it. */
export function litAt(plate: Thing, arm: Arm, places: Places, values: Values): Angle | undefined {
  const object = arm.object!;
  const written = object.facts.has('lit at') ? values.fact(object, 'lit at') : undefined;
  const at = objectAt(arm);
  const [onto, on] = [arm.path[at], arm.path[at + 1]];
  const [light, sight] = [onto && places.directions.of(onto), on?.target && places.directions.between(places.own(object), places.own(on.target))];
  const byPlaces = light && sight && values.graph.derive(`${plate.id}.${arm.name}.lighting angle${written ? ' by places' : ''}`, LIT_AT, [...light, ...sight], ANGLE, `angle at which ${object.id} is lit`);
  const cell = written ?? (byPlaces?.missing ? undefined : byPlaces) ?? values.fact(object, 'lit at');
  return cell && { cell, ...(written ? { written } : {}), ...(byPlaces ? { byPlaces } : {}) };
}

/** Angle of incidence on a mirror, or on a splitter that reflects: `M1.incidence`. Undefined where the beam's places do not tell it. */
export function incidence(thing: Thing, places: Places, values: Values): Cell | undefined {
  const name = `${thing.id}.incidence`;
  const known = values.graph.find(name);
  if (known) return known;
  const [light] = places.directions.turns(places.own(thing));
  return light && values.graph.derive(name, INCIDENCE, [...light.arriving, ...light.leaving], ANGLE, `angle of incidence on ${thing.id}`);
}

/** Angle by which a mirror turns the light, or a splitter what it reflects: `M1.fold`. 180° sends it back. */
export function fold(thing: Thing, places: Places, values: Values): Cell | undefined {
  const name = `${thing.id}.fold`;
  const angle = incidence(thing, places, values);
  return values.graph.find(name) ?? (angle && values.graph.derive(name, FOLD, [angle], ANGLE, `angle by which ${thing.id} turns the light`));
}

/** The angle at a mirror that a name asks for: it is made for those that ask. */
export function foldNamed(name: string, places: Places, values: Values): Cell | undefined {
  const [, id, what] = /^(.*)\.(incidence|fold)$/.exec(name) ?? [];
  const thing = id === undefined ? undefined : places.named(id);
  return thing && (what === 'fold' ? fold : incidence)(thing, places, values);
}
