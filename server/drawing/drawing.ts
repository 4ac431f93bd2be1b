/** The table from above as plain data: what stands where, where the light goes, and what is in its way. In metres, x to the right and y away, as on the table. */
import type { Leg } from '../model/model.ts';
import { legWords } from '../results/paths/legs.ts';
import type { Results } from '../results/plan.ts';
import { likely, type Standing } from '../results/table/standing.ts';
import type { Ray } from '../results/table/rays.ts';
import { faceLine, outlineOf } from '../results/rules/table.ts';

export type Point = readonly [number, number];
/** What light is on its way to be: `common` before the arms part, `scattered` what an object or a hologram sends to the plate. */
export type Role = 'common' | 'reference' | 'object' | 'scattered' | 'other';

export interface DrawnThing {
  readonly name: string;
  readonly kind: string;
  readonly at: Point;
  /** from above, closed, counter-clockwise; without corners where its facing is unknown and it takes no room */
  readonly outline: readonly Point[];
  /** it hangs above the beams, and hides what is below it */
  readonly above: boolean;
  /** the line of its face, where it has one that is turned some way */
  readonly face: readonly Point[];
}

export interface DrawnLeg {
  readonly words: string;
  readonly role: Role;
  readonly from: Point;
  readonly to: Point;
  /** half width at both ends of the light, to 1/e² of its middle, and of the part that serves the plate or the object */
  readonly whole: readonly [number, number];
  readonly useful: readonly [number, number];
}

export interface Drawing {
  readonly title: string;
  /** width and depth, where they are written */
  readonly table: Point | undefined;
  readonly holes: number | undefined;
  readonly beamHeight: number | undefined;
  readonly things: readonly DrawnThing[];
  readonly legs: readonly DrawnLeg[];
  /** where something stands in the light, and what that is */
  readonly blocked: readonly { readonly at: Point; readonly words: string }[];
  /** things that are not at beam height, and other remarks */
  readonly notes: readonly string[];
}

/** Higher than that above the beams a thing stands in nobody's way, m. */
const HANGS = 0.1;
/** Things that are a box to whoever looks at them, and no face. */
const BOXES = new Set(['laser', 'spreader', 'shutter', 'beam stop']);

/** Further than that from the beam height a thing is said to stand higher or lower, m. */
const LEVEL = 0.002;

/** Undefined where nothing in the setup has a place. */
export function drawingOf(r: Results): Drawing | undefined {
  const { things, rays } = r.table.look;
  if (things.size === 0) return undefined;
  const { setup } = r;
  const height = usual([...things.values()].map(s => s.at[2]));
  const off = [...things.values()].filter(s => Math.abs(s.at[2] - height) > LEVEL);
  const written = setup.facts.get('hole spacing')?.value;
  return {
    title: setup.variant === undefined ? setup.name : `${setup.name}, ${setup.variant}`,
    table: r.table.size,
    holes: written?.kind === 'quantity' ? written.quantity.value : undefined,
    beamHeight: height,
    things: [...things.values()].map(s => drawn(s, height)),
    legs: [...rays.values()].map(ray => ({ words: legWords(ray.leg), role: roleOf(ray, r), from: flat(ray.from), to: flat(ray.to), whole: ray.whole, useful: ray.useful })),
    blocked: r.table.look.blocked.map(b => {
      const { from, to } = rays.get(b.leg)!;
      const t = b.along / Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
      return { at: [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])], words: `${b.thing.id} stands in ${legWords(b.leg)}${b.sure ? '' : ', if its mount is of the usual size'}` };
    }),
    notes: off.map(s => `${s.thing.id} stands at ${Math.round(s.at[2] * 1000)} mm`),
  };
}

function drawn(s: Standing, height: number): DrawnThing {
  const [body] = likely(s);
  const normal = s.normal();
  return {
    name: s.thing.id, kind: s.thing.kind.word, at: flat(s.at), above: s.at[2] > height + HANGS, outline: outlineOf(body!).map(p => [p[0], p[1]] as const),
    face: s.form.face === 'body' || !normal || BOXES.has(s.thing.kind.word) ? [] : faceLine(s.at, normal, s.face.size[0]),
  };
}

function roleOf(ray: Ray, r: Results): Role {
  const of = r.arms.arms.filter(a => a.path.includes(ray.leg));
  const behind = of.some(a => a.object && isBehind(a.object.id, ray.leg, a.path));
  // Ground glass scatters light that is still on its way to the object.
  const ahead = of.some(a => a.object && a.path.slice(a.path.indexOf(ray.leg)).some(l => l.target?.id === a.object!.id));
  if (behind || (ray.scattered && !ahead)) return 'scattered';
  const roles = new Set(of.map(a => a.role));
  return roles.size > 1 ? 'common' : roles.has('reference') ? 'reference' : roles.has('object') ? 'object' : 'other';
}

const isBehind = (object: string, leg: Leg, path: readonly Leg[]): boolean => path.findLastIndex((l, i) => l.target?.id === object && i < path.length - 1) < path.indexOf(leg);

const flat = (v: readonly number[]): Point => [v[0]!, v[1]!];
const usual = (heights: readonly number[]): number => [...heights].sort((a, b) => a - b)[Math.floor(heights.length / 2)]!;
