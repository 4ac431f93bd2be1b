/** The table from above as plain data: what stands where, where the light goes, and what is in its way. In metres, x to the right and y away, as on the table. */
import { holeSpacing } from '../model/holes.ts';
import type { Leg } from '../model/model.ts';
import { fixed, type Place } from '../model/place.ts';
import { millimetres } from '../model/show.ts';
import { formOf } from '../results/object/object.ts';
import { legWords } from '../results/legs/legs.ts';
import type { Results } from '../results/plan.ts';
import type { Blocked } from '../results/table/blocked.ts';
import { likely, type Standing } from '../results/table/standing.ts';
import type { Ray } from '../results/table/rays.ts';
import { outlineOf } from '../results/rules/outline.ts';
import type { Vector } from '../results/rules/table.ts';
import { anglesOf, type DrawnAngle } from './angles.ts';
import type { Point } from './marks.ts';

/** What light is on its way to be: `common` before the arms part, `scattered` what an object or a hologram sends to the plate. */
export type Role = 'common' | 'reference' | 'object' | 'scattered' | 'other';

/** Where in the text something is said. */
interface Written { readonly written: Place }

export interface DrawnThing extends Written {
  readonly name: string;
  readonly kind: string;
  readonly at: Point;
  /** height above the table, m */
  readonly height: number;
  /** from above, closed, counter-clockwise; without corners where its facing is unknown and it takes no room */
  readonly outline: readonly Point[];
  /** the same from the near side of the table, over its height */
  readonly front: () => readonly Point[];
  /** height of the top of its post, m; 0 without one */
  readonly post: number;
  /** it hangs above the beams, and hides what is below it */
  readonly above: boolean;
  /** which way it faces, level and of length 1; undefined where nothing tells, or where it faces up or down */
  readonly normal: Point | undefined;
  /** width of its face, or width and depth of a body, m */
  readonly face: Point;
  /** it has no corners */
  readonly rounded: boolean;
  /** on which side of a plate the layer is, seen along its facing */
  readonly layer?: 'front' | 'back';
  /** a mirror that is hollow, or one that bulges; a lens that gathers light, or one that spreads it */
  readonly curved?: 'hollow' | 'bulging';
}

export interface DrawnLeg extends Written {
  readonly id: string;
  readonly words: string;
  /** as it is measured, with the digits that it deserves; empty where nothing tells */
  readonly length: string;
  /** how far its ends are above the table, m */
  readonly heights: Point;
  readonly role: Role;
  readonly from: Point;
  readonly to: Point;
  /** half width at both ends of the light, to 1/e² of its middle, and of the part that serves the plate or the object */
  readonly whole: readonly [number, number];
  readonly useful: readonly [number, number];
}

/** Light that nobody wants, on its way to where it ends. */
export interface DrawnStray extends Written {
  readonly words: string;
  readonly from: Point;
  readonly to: Point;
}

/** A card that should stand somewhere and does not. */
export interface DrawnCard { readonly at: Point; readonly words: string }

export interface Drawing {
  readonly title: string;
  /** width and depth, where they are written */
  readonly table: Point | undefined;
  readonly holes: number | undefined;
  readonly beamHeight: number | undefined;
  readonly things: readonly DrawnThing[];
  readonly legs: readonly DrawnLeg[];
  readonly angles: readonly DrawnAngle[];
  readonly strays: readonly DrawnStray[];
  readonly cards: readonly DrawnCard[];
  /** where something stands in the light, and what that is */
  readonly blocked: readonly { readonly at: Point; readonly words: string }[];
  /** things that are not at beam height, and other remarks */
  readonly notes: readonly string[];
}

/** Higher than that above the beams a thing stands in nobody's way, m. */
const HANGS = 0.1;
/** Further than that from the beam height a thing is said to stand higher or lower, m. */
const LEVEL = 0.002;

const offLevel = (things: readonly Standing[], height: number): readonly Standing[] => things.filter(s => Math.abs(s.at[2] - height) > LEVEL);

/** No light rises or falls, and no thing stands above or below the others: from the side there is nothing to see. */
export function isLevel({ table: { look: { things, rays } } }: Results): boolean {
  const all = [...things.values()];
  return [...rays.values()].every(({ from, to }) => Math.abs(from[2] - to[2]) <= LEVEL) && offLevel(all, usual(all.map(s => s.at[2]))).length === 0;
}

export const titleOf = ({ setup }: Results): string => (setup.variant === undefined ? setup.name : `${setup.name}, ${setup.variant}`);
/** `S1 → M1, 752 mm` */
export const legTold = ({ words, length }: DrawnLeg): string => `${words}${length === '' ? '' : `, ${length}`}`;

/** Undefined where nothing in the setup has a place. */
export function drawingOf(r: Results): Drawing | undefined {
  const { things, rays, blocked, unused, spills } = r.table.look;
  if (things.size === 0) return undefined;
  const { setup } = r;
  const height = usual([...things.values()].map(s => s.at[2]));
  const off = offLevel([...things.values()], height);
  return {
    title: titleOf(r),
    table: r.table.size,
    holes: holeSpacing(setup),
    beamHeight: height,
    things: [...things.values()].map(s => drawnThing(s, height, r)),
    legs: [...rays.values()].map(ray => drawnLeg(ray, r)),
    angles: anglesOf(r),
    strays: unused.flatMap((u): DrawnStray[] => {
      const from = things.get(u.thing.id);
      return from && u.stop ? [{ words: `light from ${u.thing.id} that no beam uses (${u.port})`, from: flat(from.at), to: flat(u.stop), written: fixed(u.thing.at) }] : [];
    }),
    cards: [...unused.flatMap((u): DrawnCard[] => (u.stop ? [{ at: flat(u.stop), words: `a card here ends what ${u.thing.id} lets go ${u.port}` }] : [])), ...spills.map(s => ({ at: flat(s.card), words: `a card here keeps the ${s.arm.name} off ${s.object.id}` }))],
    blocked: blocked.map(b => {
      const { from, to } = rays.get(b.leg)!;
      const t = b.along / Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
      return { at: [from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])], words: inTheWay(b) };
    }),
    notes: off.map(s => `${s.thing.id} stands at ${Math.round(s.at[2] * 1000)} mm`),
  };
}

/** `BC1 shades a part of P1 (R1 → P1)`: no more than the finding says, which has the figures. */
function inTheWay({ thing: { id }, leg, axis, shaded, undecided, sure }: Blocked): string {
  const [may, s] = undecided ? ['may ', ''] : ['', 's'];
  const words = shaded ? `${may}shade${s} a part of ${leg.target!.id} (${legWords(leg)})` : axis && !undecided ? `stands in ${legWords(leg)}` : `${may}reach${undecided ? '' : 'es'} into the light of ${legWords(leg)}`;
  return `${id} ${words}${sure ? '' : ', if its mount is of the usual size'}`;
}

function drawnThing(s: Standing, height: number, r: Results): DrawnThing {
  const [body] = likely(s);
  const { thing } = s;
  const normal = s.normal();
  const focal = thing.facts.get('focal length')?.value;
  const layer = layerOf(s, normal, r);
  return {
    name: thing.id, kind: thing.kind.word, written: fixed(thing.at), at: flat(s.at), height: s.at[2], above: s.at[2] > height + HANGS, outline: outlineOf(body!), front: () => outlineOf(body!, 'the near side'), post: s.postTop,
    normal: normal && level(normal), face: s.form.face === 'body' ? [s.face.size[0], s.face.size[2]] : [s.face.size[0], 0],
    rounded: s.form.face === 'body' && formOf(thing, r.values).shape !== 'box',
    ...(layer ? { layer } : {}), ...(focal?.kind === 'quantity' ? { curved: focal.quantity.value > 0 ? 'hollow' : 'bulging' } : {}),
  };
}

/** `emulsion: toward the object`: the layer is on the side of the plate that the object is on. */
function layerOf(s: Standing, normal: Vector | undefined, { arms, places, table }: Results): DrawnThing['layer'] {
  const said = s.thing.facts.get('emulsion')?.value;
  if (said?.kind !== 'words' || !normal) return undefined;
  const arm = arms.arms.find(a => a.plate.id === s.thing.id && a.role === (said.text.endsWith('object') ? 'object' : 'reference'));
  const from = arm && places.directions.startOf(arm.path.at(-1)!);
  const there = from && table.look.things.get(from.id)?.at;
  if (!there) return undefined;
  const before = normal.reduce((sum, c, i) => sum + c * (there[i]! - s.at[i]!), 0) > 0;
  return before === said.text.startsWith('toward') ? 'front' : 'back';
}

function drawnLeg(ray: Ray, r: Results): DrawnLeg {
  const length = r.graph.value(r.legs.get(ray.leg)!);
  return {
    id: ray.leg.id, words: legWords(ray.leg), written: fixed(ray.leg.at), length: length === undefined ? '' : millimetres(length), role: roleOf(ray, r), from: flat(ray.from), to: flat(ray.to), heights: [ray.from[2], ray.to[2]], whole: ray.whole, useful: ray.useful,
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
/** A direction from above. */
function level(v: Vector): Point | undefined {
  const l = Math.hypot(v[0], v[1]);
  return l < 1e-6 ? undefined : [v[0] / l, v[1] / l];
}
