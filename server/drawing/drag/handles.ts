/** What of a thing can be dragged in its picture, what a drag or a key writes, or why it can not be dragged. */
import type { Expr } from '../../../grammar/tree.ts';
import { holeSpacing } from '../../model/holes.ts';
import type { Edit } from '../../model/edits.ts';
import type { Placement, Thing, Written } from '../../model/model.ts';
import { ONE_DEGREE } from '../../model/units.ts';
import type { Results } from '../../results/plan.ts';
import type { Vector } from '../../results/rules/table.ts';
import type { Point } from '../marks.ts';
import { plainNumber, type Plain } from './numbers.ts';

/** How a thing follows the pointer: anywhere on the table, along its beam, or by turning. */
export type Way = 'over the table' | 'along its beam';

/** What is written when a thing goes to a place, or is turned to it; and when it goes so many steps from where it is: to the next hole that way, or whole millimetre. */
interface Ways {
  readonly edits: (to: Point, free: boolean) => Edit[];
  /** none where it does not go that way; of a turn only the first number counts, counterclockwise */
  readonly steps: (by: Point, free: boolean) => Edit[];
}

export interface Handles {
  readonly move?: Ways & { readonly way: Way };
  readonly turn?: Ways & { /** what it is turned to now, rad, as it is written */ readonly heading: number };
  /** why it cannot be moved, in words that go on from its name: `stands where …` */
  readonly stays?: string;
  /** why it cannot be turned */
  readonly keeps?: string;
}

/** Without holes to snap to, and with the modifier held, places are whole millimetres. */
const STEP = 1e-3;
/** Nobody means less: of a step, and of an angle. */
const STILL = 1e-6;
/** A step that goes along a beam by less than this share of it goes across it. */
const ALONG = 0.1;

/**
 * @param uri the page that is dragged in: what stands in another file is not written
 * @param base the setup as written, where `r` is one of its variants
 */
export function handlesOf(thing: Thing, r: Results, uri: string, base?: Results): Handles {
  const page: Page = { uri, own: base?.setup.things.get(thing.id)?.placement, ...(r.setup.variant !== undefined ? { variant: r.setup.variant } : {}) };
  return { ...moves(thing, r, page), ...turns(thing, r, page) };
}

/** What is written where. */
interface Page {
  readonly uri: string;
  readonly variant?: string;
  /** what the setup itself says of the thing */
  readonly own: Placement | undefined;
}

function moves(thing: Thing, r: Results, page: Page): Pick<Handles, 'move' | 'stays'> {
  const p = thing.placement;
  const value = p?.at ?? p?.on?.by ?? p?.beyond?.by;
  if (!p || !value) return { stays: 'has no place in the text; write where it stands, such as “at (350, 100) mm”' };
  const refused = elsewhere(value, page);
  if (refused) return { stays: refused };
  if (p.at) return over(p.at, r);
  const number = plainNumber(value.expr, value.at, value.line);
  if (!number) return { stays: workedOut(value.expr, 'its distance', value) };
  const line = lineOf(thing, r);
  if (!line) return { stays: 'cannot be placed yet' };
  const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
  const put = (along: number): Edit[] => [number.edit(Math.max(STEP, Math.min(line.most, snapped(along, STEP))))];
  return { move: { way: 'along its beam',
    edits: to => put(dot([to[0] - line.from[0], to[1] - line.from[1]], line.way)),
    steps: (by, free) => { const share = dot(by, line.way); return Math.abs(share) < ALONG ? [] : put(number.value + share * (free ? STEP / Math.abs(share) : holeOf(r))); },
  } };
}

function over({ expr, at, line }: Written, r: Results): Pick<Handles, 'move' | 'stays'> {
  if (expr.kind === 'tolerance') return { stays: 'stands where it was measured; change its figures in the text when you have moved it' };
  if (expr.kind !== 'group' || expr.items.length < 2) return { stays: `stands where ${line.slice(expr.start, expr.end)} says` };
  const [x, y] = expr.items.map(i => plainNumber(i, at, line, expr.unit)) as [Plain | undefined, Plain | undefined];
  const odd = expr.items.find((_, i) => i < 2 && ![x, y][i]);
  if (!x || !y) return { stays: workedOut(odd!, 'its place', { line }) };
  const step = (free: boolean): number => (free ? STEP : holeOf(r));
  return { move: { way: 'over the table',
    edits: (to, free) => [y.edit(snapped(to[1], step(free))), x.edit(snapped(to[0], step(free)))],
    // Where it stands across the way that it goes is left alone, on a hole or beside it.
    steps: (by, free) => [[y, by[1]] as const, [x, by[0]] as const].flatMap(([number, n]) => (n === 0 ? [] : [number.edit(next(number.value, step(free), n))])),
  } };
}

/** From hole to hole; without holes to the next whole millimetre. */
const holeOf = ({ setup }: Results): number => holeSpacing(setup) ?? STEP;

function turns(thing: Thing, r: Results, page: Page): Pick<Handles, 'turn' | 'keeps'> {
  const p = thing.placement;
  if (!p?.heading) return { keeps: typeof p?.facing === 'object' ? `faces ${p.facing.name}; write “heading 90°” instead to turn it` : 'turns by itself as its beam needs; write “heading 90°” to turn it by hand' };
  const refused = elsewhere(p.heading, page);
  if (refused) return { keeps: refused };
  const number = plainNumber(p.heading.expr, p.heading.at, p.heading.line);
  if (!number) return { keeps: workedOut(p.heading.expr, 'its heading', p.heading) };
  const at = r.table.look.things.get(thing.id)?.at;
  const step = (free: boolean): number => (free ? 0.1 : 1) * ONE_DEGREE;
  const put = (angle: number): Edit[] => [number.edit(angle < -STILL ? angle + 2 * Math.PI : angle > 2 * Math.PI - STILL ? angle - 2 * Math.PI : angle)];
  return at ? { turn: { heading: number.value, edits: (to, free) => put(snapped(Math.atan2(to[1] - at[1], to[0] - at[0]), step(free))), steps: ([n], free) => put(next(number.value, step(free), n)) } } : { keeps: 'cannot be placed yet' };
}

/** Why a value is not written, by where it stands. */
function elsewhere({ at }: Written, { uri, variant, own }: Page): string | undefined {
  if (at.uri !== uri) return `is written in ${at.uri.split('/').at(-1)!}; change it there`;
  const shared = [own?.at, own?.on?.by, own?.beyond?.by, own?.heading].some(w => w?.at.line === at.line && w.at.start === at.start);
  return shared ? `stands where the setup itself says, and not “${variant!}”; write its place into the variant, or drag it in the setup` : undefined;
}

function workedOut(e: Expr, what: string, { line }: { readonly line: string }): string {
  const text = line.slice(e.start, e.end);
  return e.kind === 'tolerance' ? `was measured (${text}); change the figure in the text when you have moved it` : e.kind === 'unknown' ? `is to be found by the tool: ${what} is written ?` : `stands where ${text} says: ${what} is worked out; change that in the text`;
}

/** From where, which way and how far at most a thing on its beam can go. */
function lineOf(thing: Thing, { table, setup }: Results): { readonly from: Vector; readonly way: Point; readonly most: number } | undefined {
  const p = thing.placement!;
  const place = (name: string | undefined): Vector | undefined => (name === undefined ? undefined : table.look.things.get(setup.things.get(name)?.id ?? '')?.at);
  const [from, to] = [place(p.on?.from.name ?? p.beyond?.from.name), p.on ? place(p.on.to.name) : table.look.things.get(thing.id)?.at];
  if (!from || !to) return undefined;
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  return length < 1e-6 ? undefined : { from, way: [dx / length, dy / length], most: p.on ? Math.hypot(length, to[2] - from[2]) - STEP : Infinity };
}

/** So many steps on, from wherever it is: the first goes to the next one that way. */
const next = (v: number, step: number, n: number): number => ((n > 0 ? Math.floor(v / step + STILL) : Math.ceil(v / step - STILL)) + n) * step;
const snapped = (v: number, step: number): number => Math.round(v / step) * step;
