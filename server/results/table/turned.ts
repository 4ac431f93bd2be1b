/** Mirrors that turn nothing, and plates that are turned round. In plain numbers. */
import type { Arm } from '../../model/arms.ts';
import type { Leg, Thing } from '../../model/model.ts';
import { isTurned, type Ray } from './rays.ts';
import type { Standing } from './standing.ts';
import type { TableContext } from './context.ts';

/** A mirror by which the light goes straight on. */
export interface Straight {
  readonly mirror: Thing;
  readonly from: Thing;
  readonly to: Thing;
  readonly leg: Leg;
  /** by how much it turns the light, rad */
  readonly by: number;
}

/** Light that is turned by less meets a mirror within 2° of its plane: one of 50 mm is then 1.7 mm wide, rad. */
const NO_TURN = (4 * Math.PI) / 180;

/** A spot on a beam stands square to it where nothing turns it: such a mirror would have to stand along the light. */
export function straightMirrors(rays: ReadonlyMap<Leg, Ray>): Straight[] {
  const seen = new Set<string>();
  return [...rays.values()].flatMap((ray): Straight[] => {
    if (ray.end.kind.light !== 'turns' || seen.has(ray.end.id)) return [];
    const on = ray.leg.beam.legs[ray.leg.beam.legs.indexOf(ray.leg) + 1];
    const next = on && rays.get(on);
    if (!next) return [];
    const [a, b] = [way(ray), way(next)];
    const by = Math.atan2(Math.hypot(a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]), a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
    if (by >= NO_TURN) return [];
    seen.add(ray.end.id);
    return [{ mirror: ray.end, from: ray.start, to: next.end, leg: ray.leg, by }];
  });
}

const way = ({ from, to }: Ray): readonly [number, number, number] => [to[0] - from[0], to[1] - from[1], to[2] - from[2]];

/** A plate to whose back all its light comes. */
export interface TurnedRound {
  readonly plate: Thing;
  readonly object: Thing;
  readonly reference: Arm;
  /** from where the reference comes */
  readonly from: Thing;
  /** which way it would have to head, rad; undefined where its normal is not level */
  readonly heading?: number;
}

/** Light that runs along a plate comes to neither side. */
const ALONG = Math.sin((4 * Math.PI) / 180);

export function turnedRound(rays: ReadonlyMap<Leg, Ray>, things: ReadonlyMap<string, Standing>, { arms }: TableContext): TurnedRound[] {
  return [...things.values()].flatMap((s): TurnedRound[] => {
    if (s.thing.kind.light !== 'recorded' || !isTurned(s.thing)) return [];
    const n = s.normal();
    const own = arms.arms.filter(a => a.plate.id === s.thing.id);
    const [reference, object] = [own.find(a => a.role === 'reference'), own.find(a => a.role === 'object')?.object];
    if (!n || !reference || !object) return [];
    const last = own.map(a => rays.get(a.path.at(-1)!));
    const behind = (r: Ray): boolean => { const w = way(r); return w[0] * n[0] + w[1] * n[1] + w[2] * n[2] > ALONG * Math.hypot(...w); };
    if (!last.every(r => r && behind(r))) return [];
    const from = rays.get(reference.path.at(-1)!)!.start;
    const turn = Math.atan2(-n[1], -n[0]);
    return [{ plate: s.thing, object, reference, from, ...(Math.abs(n[2]) < 0.01 ? { heading: turn < -1e-9 ? turn + 2 * Math.PI : Math.max(0, turn) } : {}) }];
  });
}
