/** Faces that stand parallel to a plate and look at it: light goes to and fro between them, and its ghosts are recorded. */
import type { Setup, Thing } from '../../model/model.ts';
import type { Cell } from '../graph.ts';
import type { Places } from '../places/places.ts';
import { looksAt, NEARLY_PARALLEL, standsParallel } from '../rules/polarization.ts';
import type { Values } from '../values.ts';

export interface ParallelFace {
  readonly plate: Thing;
  readonly face: Thing;
}

const FACES: readonly string[] = ['mirror', 'lens', 'collimator'];

/** Looks at plain numbers; directions that nobody has asked for yet are made. */
export function parallelFaces(setup: Setup, values: Values, places: Places): ParallelFace[] {
  const { graph } = values;
  const numbers = (cells: readonly Cell[] | undefined): number[] | undefined => {
    const found = cells?.map(c => graph.value(c));
    return found?.every(v => v !== undefined) ? (found) : undefined;
  };
  if (places.none) return [];
  const things = [...setup.things.values()].filter(t => places.isPlaced(t));
  const plates = things.filter(t => t.kind.light === 'recorded');
  if (plates.length === 0) return [];
  const faces = things.filter(t => FACES.includes(t.kind.word)).flatMap(face => {
    const [at, normal] = [numbers(places.of(face)), numbers(normalOf(face, places))];
    return at && normal ? [{ face, at, normal }] : [];
  });
  return plates.flatMap(plate => {
    const [at, normal] = [numbers(places.of(plate)), numbers(places.directions.facing(plate))];
    if (!at || !normal) return [];
    return faces.filter(f => standsParallel(vector(f.normal), vector(normal), NEARLY_PARALLEL) && looksAt(f.at, at, f.normal, f.face.kind.light === 'turns', (acrossOf(plate, 0.1) + acrossOf(f.face, 0.05)) / 2)).map(f => ({ plate, face: f.face }));
  });
}

/** A lens stands square to its light unless it says otherwise. */
function normalOf(face: Thing, places: Places): readonly Cell[] | undefined {
  const written = places.directions.facing(face);
  if (written || face.kind.light === 'turns') return written;
  const [passage] = places.directions.passages(face);
  return passage && places.directions.of(passage.arriving);
}

/** The larger of both sides, or the diameter; else a usual size. */
function acrossOf(thing: Thing, usual: number): number {
  const [size, diameter] = [thing.facts.get('size')?.value, thing.facts.get('diameter')?.value];
  if (size?.kind === 'sizes') return Math.max(...size.parts.map(p => p.value));
  return diameter?.kind === 'quantity' ? diameter.quantity.value : usual;
}

const vector = (v: readonly number[]): readonly [number, number, number] => [v[0]!, v[1]!, v[2]!];
