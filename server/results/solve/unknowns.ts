/** The numbers of a setup that are written `?`: between which values each is looked for, and how finely it is set. */
import { holeSpacing } from '../../model/holes.ts';
import type { Setup } from '../../model/model.ts';
import { ANGLE, LENGTH, NUMBER, ONE_DEGREE, POWER, TIME, parseUnit, unitsFor, type Dim, type Unit } from '../../model/units.ts';
import { tableSize } from '../../model/table.ts';
import type { Cell, Open } from '../cell.ts';
import type { Results } from '../plan.ts';

export interface Unknown {
  /** of its cell: `R1.by`, `M3.x`, `S1.reflects` */
  readonly name: string;
  readonly words: string;
  readonly dim: Dim;
  readonly at: Open['at'];
  readonly part: Open['part'];
  /** in which it is shown and written */
  readonly unit: Unit | undefined;
  /** between these it is looked for, SI */
  readonly low: number;
  readonly high: number;
  /** it may be of many sizes: it is looked for evenly over them, from this one on, SI, and steps are shares of it. Where `low` is below zero, on both sides of nothing */
  readonly wide: number | undefined;
  /** where it is looked for first, SI */
  readonly usual: number | undefined;
  /** what it is set in, SI, the best first: whole holes, whole millimetres, tenths; of what is `wide` digits count instead */
  readonly steps: readonly number[];
  /** the first of the steps is written, and nothing else will do */
  readonly held: boolean;
}

/** The unknowns of a setup, in the order of the text. Where each is looked for, the setup says, the vocabulary, or the table. */
export function unknownsOf(r: Results): Unknown[] {
  const seen = new Map<string, Open>();
  for (const o of r.graph.opens) if (!seen.has(o.name)) seen.set(o.name, o);
  return [...seen.values()].sort((a, b) => a.at.line - b.at.line || a.at.start - b.at.start).map(o => unknown(o, r));
}

/** A number that is written, as one that is looked for. */
export function asUnknown({ name, dim, words, at, unit }: Cell, r: Results): Unknown {
  const [owner, what] = [name.slice(0, Math.max(0, name.indexOf('.'))), name.slice(name.indexOf('.') + 1)];
  const type = (r.setup.things.get(owner)?.facts.get(what) ?? r.setup.facts.get(name.replace(/ as written$/, '')))?.fact.type;
  const known = type?.type === 'quantity' ? type : undefined;
  return unknown({ name, dim, words, at: at!, unit, sign: known ? known.sign ?? 'any' : 'any', within: known?.within }, r);
}

const MM = 1e-3;

function unknown(o: Open, r: Results): Unknown {
  const { name, words, dim, at, part, within } = o;
  const { from, to, by } = o.limits?.() ?? {};
  const usual = usualRange(o, r);
  const low = Math.max(from ?? usual.low, within?.from ?? -Infinity);
  const high = Math.min(to ?? usual.high, within?.to ?? Infinity);
  // Limits say of what size it is.
  const wide = usual.wide !== undefined && (from === undefined || to === undefined || (from > 0 && to > 30 * from)) && (low >= 0 || low === -high) ? Math.max(usual.wide, low) : undefined;
  const steps = by !== undefined && by > 0 ? [by] : stepsOf(o, r.setup, wide !== undefined, high - low);
  return { name, words, dim, at, part, unit: unitOf(o), low: wide !== undefined && low >= 0 ? wide : low, high, wide, usual: o.usual?.(), steps, held: by !== undefined && by > 0 };
}

function unitOf(o: Open): Unit | undefined {
  if (o.unit) return o.unit;
  return o.dim === NUMBER ? (o.sign === 'share' ? parseUnit('%') : undefined) : parseUnit(unitsFor(o.dim)[0]!);
}

interface Range { readonly low: number; readonly high: number; readonly wide?: number }

/** Where the text does not say: on the table, between the things that a placement names, or over what makes sense. */
function usualRange(o: Open, r: Results): Range {
  const [owner, what] = [o.name.slice(0, o.name.indexOf('.')), o.name.slice(o.name.indexOf('.') + 1)];
  if (o.sign === 'share') return { low: 0, high: 1 };
  if (what === 'x' || what === 'y') return onTable(what === 'x' ? 0 : 1, r);
  if (what === 'z') return { low: 0, high: TALL };
  const placement = r.setup.things.get(owner)?.placement;
  if (what === 'by' && placement) {
    const on = placement.on;
    const span = on && r.graph.find(`${on.from.name} → ${on.to.name}`);
    return { low: 0, high: (span && r.graph.value(span)) ?? FAR };
  }
  if (what === 'heading') return { low: 0, high: 360 * ONE_DEGREE };
  if (what === 'turning') return { low: -180 * ONE_DEGREE, high: 180 * ONE_DEGREE };
  if (what === 'tilt') return { low: -90 * ONE_DEGREE, high: 90 * ONE_DEGREE };
  if (/\.length(?:\.plan)?$/.test(o.name)) return { low: NEAR, high: LONGEST_LEG };
  return ofKind(o);
}

/** No two things stand nearer to each other, and none further apart; no beam runs higher, m. */
const NEAR = 0.02;
const FAR = 2;
const LONGEST_LEG = 5;
const TALL = 1;

function ofKind({ dim, sign }: Open): Range {
  const most = MOST.get(dim) ?? 1e6;
  if (dim === ANGLE) return { low: sign === 'any' ? -180 * ONE_DEGREE : 0, high: 180 * ONE_DEGREE };
  const least = LEAST.get(dim) ?? 1e-6;
  return { low: sign === 'positive' || sign === 'not negative' ? least : -most, high: most, wide: least };
}
/** Of what a holographer writes nothing is smaller, and nothing larger, SI. */
const LEAST = new Map<Dim, number>([[LENGTH, 1e-7], [POWER, 1e-6], [TIME, 1e-3], [NUMBER, 1e-3]]);
const MOST = new Map<Dim, number>([[LENGTH, 10], [POWER, 10], [TIME, 1e4], [NUMBER, 1e3]]);

/** The table, else half a metre round what stands somewhere. */
function onTable(axis: 0 | 1, { setup, graph, places }: Results): Range {
  const table = tableSize(setup);
  if (table) return { low: 0, high: table[axis] };
  const at = [...setup.things.values()].flatMap(t => { const v = places.of(t)?.[axis]; const x = v && graph.value(v); return x === undefined ? [] : [x]; });
  return at.length === 0 ? { low: 0, high: FAR } : { low: Math.min(...at) - ROOM, high: Math.max(...at) + ROOM };
}
const ROOM = 0.5;

function stepsOf({ name, dim, sign }: Open, setup: Setup, wide: boolean, span: number): number[] {
  if (wide) return [];
  if (dim === LENGTH) {
    const spacing = holeSpacing(setup);
    const hole = /\.[xy]$/.test(name) && spacing !== undefined ? [spacing] : [];
    return span < 20 * MM ? [...hole, MM / 10, MM / 100, MM / 1000] : [...hole, MM, MM / 10];
  }
  if (dim === ANGLE) return [ONE_DEGREE, ONE_DEGREE / 10, ONE_DEGREE / 100];
  if (sign === 'share') return [0.01, 0.001, 0.0001];
  const size = 10 ** Math.floor(Math.log10(span || 1));
  return [size / 100, size / 1000, size / 1e4];
}
