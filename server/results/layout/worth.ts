/** How far places are from being a layout: 0 where everything has its room, the paths match, and the light comes as it should. In millimetres and degrees, plain numbers. */
import { ONE_DEGREE } from '../../model/units.ts';
import type { Ways } from './ways.ts';

export type Places = readonly (readonly [number, number])[];

/** Between things, and between light and things that it is to pass, mm. */
const AIR = 15;
/** No two things that light goes between stand nearer, mm; with things within more. */
const SHORTEST = 120;
const EACH_WITHIN = 110;
/** Light is turned by so much at the least and at the most, degrees: else it runs along the mirror, or back. */
const TURNS = [25, 150] as const;
/** Between the light on an object and the plate, as seen from the object, degrees. */
const FRONT = [18, 55] as const;
const REFERENCE = [30, 55] as const;
/** From the object to the plate, mm. */
const VIEW = [180, 320] as const;

export function worth({ pieces, stretches, turns, matches, seen }: Ways, at: Places, [w, h]: readonly [number, number], matched: number): number {
  let sum = 0;
  const short = (is: number, least: number): void => { if (is < least) sum += (least - is) ** 2; };
  const within = (is: number, [low, high]: readonly [number, number]): void => { if (is < low) sum += (10 * (low - is)) ** 2; else if (is > high) sum += (10 * (is - high)) ** 2; };
  for (let i = 0; i < pieces.length; i++) {
    const [x, y] = at[i]!;
    const room = Math.min(pieces[i]!.room, 60) + 5;
    if (pieces[i]!.stand.kind !== 'laser') { short(x, room); short(y, room); short(w - x, room); short(h - y, room); }
    for (let k = 0; k < i; k++) short(far(at[i]!, at[k]!), (pieces[i]!.stand.kind === 'laser' ? 40 : pieces[i]!.room) + (pieces[k]!.stand.kind === 'laser' ? 40 : pieces[k]!.room) + AIR);
  }
  for (const s of stretches) {
    const [a, b] = [at[s.from]!, at[s.to]!];
    short(far(a, b), SHORTEST + EACH_WITHIN * s.within.length);
    for (let i = 0; i < pieces.length; i++) {
      if (i === s.from || i === s.to) continue;
      const t = along(a, b, at[i]!);
      const light = s.light[0] + t * (s.light[1] - s.light[0]);
      short(far(at[i]!, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]), (pieces[i]!.stand.kind === 'laser' ? 40 : pieces[i]!.room) + light + AIR);
    }
  }
  for (const { from, at: m, to } of turns) within(180 - angle(at[m]!, at[from]!, at[to]!), TURNS);
  for (const { plate, object, lit, reference, behind, angle: wanted } of seen) {
    within(far(at[plate]!, at[object]!) / 10, [VIEW[0] / 10, VIEW[1] / 10]);
    within(angle(at[object]!, at[plate]!, at[lit]!), FRONT);
    if (reference === undefined) continue;
    const is = angle(at[plate]!, at[object]!, at[reference]!);
    const off = behind ? 180 - is : is;
    within(off, wanted === undefined ? REFERENCE : [wanted / ONE_DEGREE - 1, wanted / ONE_DEGREE + 1]);
  }
  for (const { object, reference } of matches) {
    const length = (all: typeof object): number => all.reduce((l, s) => l + far(at[s.from]!, at[s.to]!), 0);
    const off = Math.abs(length(object) - length(reference));
    if (off > matched) sum += Math.min(off - matched, 60) ** 2 + 10 * Math.max(0, off - 60);
  }
  return sum;
}

const far = (a: readonly [number, number], b: readonly [number, number]): number => Math.sqrt((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2);
/** Where on the way from a to b it is nearest to p, as a share. */
function along(a: readonly [number, number], b: readonly [number, number], p: readonly [number, number]): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const l = dx * dx + dy * dy;
  return l === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / l));
}
/** Between two things as seen from a third, degrees. */
function angle(from: readonly [number, number], a: readonly [number, number], b: readonly [number, number]): number {
  const [ax, ay, bx, by] = [a[0] - from[0], a[1] - from[1], b[0] - from[0], b[1] - from[1]];
  return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) / ONE_DEGREE;
}
