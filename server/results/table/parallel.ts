/** Faces that stand parallel to a plate, look at it and see it: light goes to and fro between them, and its ghosts are recorded. In plain numbers. */
import type { Thing } from '../../model/model.ts';
import { facing, firstMeeting, fromFrame, inFrame, NEARLY_PARALLEL, standsParallel, type Vector } from '../rules/table.ts';
import type { TableContext } from './context.ts';
import type { Ray } from './rays.ts';
import { likely, type Standing } from './standing.ts';

export interface ParallelFace {
  readonly plate: Thing;
  readonly face: Thing;
}

const FACES: readonly string[] = ['mirror', 'lens', 'collimator'];

export function parallelFaces(rays: Iterable<Ray>, things: ReadonlyMap<string, Standing>, { places }: TableContext): ParallelFace[] {
  const all = [...things.values()];
  const plates = all.filter(s => s.thing.kind.light === 'recorded');
  if (plates.length === 0) return [];
  const arriving = [...rays];
  return plates.flatMap(plate => {
    const normal = plate.normal();
    if (!normal) return [];
    // What the plate throws back goes to the side that light came from; behind it there is none.
    const sides = new Set(arriving.filter(r => r.end.id === plate.thing.id).map(r => sideOf(plate.at, normal, r.from)));
    return all.filter(s => FACES.includes(s.thing.kind.word)).flatMap((s): ParallelFace[] => {
      const n = faceNormal(s);
      if (!n || !standsParallel(n, normal, NEARLY_PARALLEL) || !sides.has(sideOf(plate.at, normal, s.at))) return [];
      // A mirror has one face, a lens two.
      if (s.thing.kind.light === 'turns' && sideOf(s.at, n, plate.at) < 0) return [];
      return sees(s, plate, all) ? [{ plate: plate.thing, face: s.thing }] : [];
    });
  });

  /** A lens stands square to its light unless it says otherwise. */
  function faceNormal(s: Standing): Vector | undefined {
    return s.thing.kind.light === 'turns' && !places.directions.facing(s.thing) ? undefined : s.normal();
  }
}

const sideOf = (at: Vector, normal: Vector, point: Vector): number => Math.sign((point[0] - at[0]) * normal[0] + (point[1] - at[1]) * normal[1] + (point[2] - at[2]) * normal[2]);

/** The middles of 11 × 11 fields of a plate, in halves of its width and height. */
const STEPS = Array.from({ length: 11 }, (_, i) => (2 * i - 10) / 11);
const SPOTS: readonly (readonly [number, number])[] = STEPS.flatMap(x => STEPS.map(y => [x, y] as const));
/** A ghost on less than that share of a plate is not worth turning a mirror for: a choice. */
const LEAST_SEEN = 0.1;

/** Whether the way square to the plate leads from enough of it to the face, with nothing between. Light within the 3° hardly strays from that over a table. */
function sees(face: Standing, plate: Standing, all: readonly Standing[]): boolean {
  const frame = facing(plate.at, plate.normal()!);
  const there = inFrame(frame, face.at);
  const between = all.filter(s => s !== face && s !== plate && HOLDS_BACK.has(s.thing.kind.light)).flatMap(likely);
  return SPOTS.filter(([x, y]) => {
    const spot: readonly [number, number] = [(x * plate.face.size[0]) / 2, (y * plate.face.size[1]) / 2];
    if (!isOn(face, spot[0] - there[0], spot[1] - there[1])) return false;
    const [from, to] = [fromFrame(frame, [...spot, 0]), fromFrame(frame, [...spot, there[2]])];
    return between.every(solid => firstMeeting(solid, from, to) === undefined);
  }).length >= LEAST_SEEN * SPOTS.length;
}

/** Light that comes to these goes no farther that way. What passes or shares it leaves the ghost some. */
const HOLDS_BACK: ReadonlySet<string> = new Set(['source', 'turns', 'scatters', 'ends']);

/** A spot off the middle of a face, m, that stands as good as parallel. */
function isOn({ face: { size: [w, h] }, form }: Standing, x: number, y: number): boolean {
  return form.face === 'round' ? Math.hypot(x, y) <= w / 2 : Math.abs(x) <= w / 2 && Math.abs(y) <= h / 2;
}
