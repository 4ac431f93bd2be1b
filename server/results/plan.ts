/** From a bound setup to its cells: legs, arms, mismatches, and how brightly each part records. The one place that says which rule makes which result. */
import { formArms, type Arm, type Arms } from '../model/arms.ts';
import type { Leg, Problem, Setup, Thing } from '../model/model.ts';
import { LENGTH, NUMBER } from '../model/units.ts';
import { coherenceOf, type Coherence } from './coherence.ts';
import { judgeGoals, type GoalResult } from './goals.ts';
import { Graph, type Cell, type Label } from './graph.ts';
import { LegCells } from './leg-cells.ts';
import { resultNamed } from './names.ts';
import { mismatchOfPart, partMismatch } from './rules/coherence.ts';
import { DISTANCE, GLASSES, glassPath, weighted } from './rules/lengths.ts';
import { Values } from './values.ts';

export type PartName = 'near' | 'middle' | 'far' | 'darkest';

/** One part of an object: where it lies in the depth, its mismatch, and how brightly it records. */
export interface Part {
  readonly part: PartName;
  /** share of the depth behind the middle: −0.5 is the nearest part */
  readonly share: number;
  readonly mismatch: Cell;
  readonly brightness?: Cell;
}

/** An object arm against the reference of its plate. */
export interface Pair {
  readonly arm: Arm;
  readonly reference: Arm;
  readonly mismatch: Cell;
  readonly depth?: Cell;
  readonly parts: readonly Part[];
  readonly coherence?: Coherence;
}

export interface ArmLength {
  readonly arm: Arm;
  /** legs behind the place where the plate's arms part */
  readonly legs: readonly Leg[];
  readonly partsAt?: Thing;
  readonly length: Cell;
  readonly coherencePath: Cell;
}

export interface PlateResults {
  readonly plate: Thing;
  readonly arms: readonly ArmLength[];
  readonly pairs: readonly Pair[];
}

export interface Results {
  readonly setup: Setup;
  readonly graph: Graph;
  readonly values: Values;
  readonly arms: Arms;
  readonly legs: LegCells;
  readonly plates: readonly PlateResults[];
  /** the cells that are results, in the order in which they are shown */
  readonly published: readonly Cell[];
  /** short names, with all the cells that they may mean */
  readonly aliases: ReadonlyMap<string, readonly Cell[]>;
  /** `expect` and `aim` lines, held against the results */
  readonly goals: readonly GoalResult[];
  readonly problems: readonly Problem[];
}

export function plan(setup: Setup): Results {
  const graph = new Graph();
  const values = new Values(setup, graph, name => resultNamed(graph, aliases, name));
  const aliases = new Map<string, Cell[]>();
  const published: Cell[] = [];
  const arms = formArms(setup);
  for (const l of setup.lets.values()) values.letCell(l);
  for (const thing of setup.things.values()) if (thing.placement) values.position(thing);
  const legs = new LegCells(setup.beams.values(), leg => legLength(leg, values));

  const lasers = new Map<Thing, Coherence | undefined>();
  const plates: PlateResults[] = [];
  for (const plate of new Set(arms.arms.map(a => a.plate))) {
    const own = arms.arms.filter(a => a.plate === plate);
    const lengths = armLengths(plate, own, legs, values);
    for (const l of lengths) published.push(l.length);
    const pairs: Pair[] = [];
    for (const l of lengths) {
      if (l.arm.role !== 'object') continue;
      const reference = lengths.find(r => r.arm.role === 'reference' && r.arm.laser === l.arm.laser);
      if (!reference) continue;
      if (!lasers.has(l.arm.laser)) lasers.set(l.arm.laser, coherenceOf(l.arm.laser, values, published));
      pairs.push(pair(plate, l, reference, lasers.get(l.arm.laser), values, published));
    }
    plates.push({ plate, arms: lengths, pairs });
  }
  nameShort(plates, aliases, graph);
  const results = { setup, graph, values, arms, legs, plates, published, aliases };
  const { goals, problems } = judgeGoals(results);
  return { ...results, goals, problems: [...arms.problems, ...missingLengths(plates, legs, setup), ...problems, ...values.problems] };
}

/** One finding for each beam that lacks lengths, with what cannot be told without them. */
function missingLengths(plates: readonly PlateResults[], legs: LegCells, setup: Setup): Problem[] {
  const lacking = new Map<string, { legs: Set<Leg>; prevents: Set<string> }>();
  for (const p of plates) {
    for (const l of p.arms) {
      for (const leg of l.legs) {
        if (legs.get(leg)!.missing?.code !== 'value-missing') continue;
        const row = lacking.get(leg.beam.id) ?? { legs: new Set(), prevents: new Set() };
        row.legs.add(leg);
        row.prevents.add(`the path of ${l.arm.name}`);
        for (const x of p.pairs) if (x.arm === l.arm || x.reference === l.arm) row.prevents.add(`the mismatch at ${p.plate.id}`);
        lacking.set(leg.beam.id, row);
      }
    }
  }
  return [...lacking].map(([beam, { legs: which, prevents }]) => {
    const list = [...which];
    return { code: 'value-missing', at: list[0]!.at, subject: beam, setup: setup.name, data: { phrase: 'length', of: `${list.length === 1 ? 'leg' : 'legs'} ${list.map(legWords).join(', ')}`, prevents: [...prevents].join(' and ') } };
  });
}

const from = (leg: Leg): Thing | undefined => (leg.n === 1 ? leg.beam.from : leg.beam.legs[leg.n - 2]!.target);
export const legWords = (leg: Leg): string => `${from(leg)?.id ?? '?'} → ${leg.to || '?'}`;
export { from as legStart };

class LegLabel implements Label {
  constructor(private readonly leg: Leg) {}
  get name(): string { return `${this.leg.id}.length`; }
  get words(): string { return `leg ${legWords(this.leg)}`; }
  get at(): Label['at'] { return this.leg.lengthAt; }
}

function legLength(leg: Leg, values: Values): Cell {
  if (leg.length?.kind === 'quantity') return values.graph.written(new LegLabel(leg), leg.length.quantity);
  const { name, words } = new LegLabel(leg);
  if (leg.length) {
    const cell = values.bound(leg.length, leg.lengthAt!, name, words, LENGTH);
    if (cell) return cell;
  }
  if (leg.lengthAt || leg.node.line.issue) return values.missing(name, LENGTH, words, { code: 'unreadable', why: `the length of ${words} cannot be read`, at: leg.lengthAt ?? leg.at });
  const [a, b] = [from(leg), leg.target];
  if (!a || !b) return values.missing(name, LENGTH, words, { code: 'unknown-name', why: `${words} does not lead anywhere`, at: leg.at });
  const [pa, pb] = [values.position(a), values.position(b)];
  if (pa && pb) return values.graph.derive(name, DISTANCE, [...pa, ...pb], LENGTH, words, { at: leg.at });
  if ([a, b].some(t => t.node.line.issue && !values.position(t))) return values.missing(name, LENGTH, words, { code: 'unreadable', why: `the place of an end of ${words} cannot be read`, at: leg.at });
  const pending = [a, b].some(t => !values.position(t) && t.placement !== undefined);
  return values.missing(name, LENGTH, words, pending
    ? { code: 'not-computed-yet', why: `${words} has no length, and where its ends stand is not computed yet`, at: leg.at }
    : { code: 'value-missing', why: `${words} has no length`, at: leg.at });
}

/** Lengths of all arms of a plate, from where they part. */
function armLengths(plate: Thing, arms: readonly Arm[], legs: LegCells, values: Values): ArmLength[] {
  let shared = 0;
  const first = arms[0]!.path;
  if (arms.length > 1) while (shared < first.length && arms.every(a => a.path[shared] === first[shared])) shared++;
  const { graph } = values;
  return arms.map(arm => {
    const own = arm.path.slice(shared);
    const cells = own.map(l => legs.get(l)!);
    const name = `${plate.id}.${arm.name}.length`;
    const length = graph.derive(name, weighted('sum of legs', 'sum of the legs', cells.map(() => 1)), cells, LENGTH, `${arm.name} at ${plate.id}`, { at: arm.beam.at });
    const glass = own.flatMap(l => glassAlong(l, arm.laser, values));
    const path = graph.derive(`${plate.id}.${arm.name}.coherence path`, weighted('coherence path', 'string length + glass', [1, ...glass.map(() => 1)]), [length, ...glass], LENGTH, `coherence path of ${arm.name} at ${plate.id}`);
    const partsAt = shared > 0 ? first[shared - 1]!.target : arm.path[0]?.beam.from;
    return { arm, legs: own, length, coherencePath: path, ...(partsAt ? { partsAt } : {}) };
  });
}

/** The glass that light crosses at the start of a leg: a splitter left `through`, a lens, a screen. The glass of a plate is not counted. */
function glassAlong(leg: Leg, laser: Thing, values: Values): Cell[] {
  const thing = from(leg);
  const port = leg.n === 1 ? leg.beam.port : leg.beam.legs[leg.n - 2]!.port;
  if (!thing || (thing.kind.light === 'shares' && port !== 'through') || !['shares', 'passes', 'scatters'].includes(thing.kind.light) || !thing.facts.has('thickness')) return [];
  const t = values.fact(thing, 'thickness');
  const wavelength = values.fact(laser, 'wavelength');
  const glass = GLASSES[values.words(thing, 'glass') ?? 'crown'];
  if (!t || !wavelength || !glass) return [];
  return [values.graph.derive(`${leg.id}.glass`, glassPath(glass), [t, wavelength], LENGTH, `glass of ${thing.id}`)];
}

function pair(plate: Thing, l: ArmLength, reference: ArmLength, coherence: Coherence | undefined, values: Values, published: Cell[]): Pair {
  const { graph } = values;
  const base = `${plate.id}.${l.arm.name}`;
  const mismatch = graph.derive(`${base}.mismatch`, weighted('mismatch', 'object path − reference path', [1, -1]), [l.coherencePath, reference.coherencePath], LENGTH, `mismatch of ${l.arm.name} and ${reference.arm.name} at ${plate.id}`);
  published.push(mismatch);
  const object = l.arm.object!;
  const depth = depthOf(object, values);
  const psi = depth && object.kind.word === 'object' ? values.fact(object, 'lit at') : undefined;
  const parts: Part[] = [];
  const add = (part: PartName, share: number): void => {
    const words = part === 'middle' ? `middle of ${object.id}` : part === 'near' ? `nearest part of ${object.id}` : part === 'far' ? `farthest part of ${object.id}` : `darkest part of ${object.id}`;
    const name = part === 'middle' ? base : `${base}.${part}`;
    const m = part === 'middle' ? mismatch : graph.derive(`${name}.mismatch`, partMismatch(share), [mismatch, depth!, psi!], LENGTH, `mismatch of the ${words}`);
    const brightness = coherence && graph.derive(`${name}.brightness`, coherence.rule, [m, ...coherence.inputs], NUMBER, `brightness of the ${words}`);
    parts.push({ part, share, mismatch: m, ...(brightness ? { brightness } : {}) });
    if (brightness) published.push(brightness);
  };
  add('middle', 0);
  if (depth && psi) {
    add('near', -0.5);
    add('far', 0.5);
    if (coherence) add('darkest', darkestShare(graph, [mismatch, depth, psi], coherence));
  }
  return { arm: l.arm, reference: reference.arm, mismatch, parts, ...(depth ? { depth } : {}), ...(coherence ? { coherence } : {}) };
}

/** Depth of an object: its own fact, or the last of three sizes. */
function depthOf(object: Thing, values: Values): Cell | undefined {
  const depth = values.fact(object, 'depth');
  if (depth) return depth;
  const size = object.facts.get('size');
  if (size?.value.kind !== 'sizes' || size.value.parts.length !== 3) return undefined;
  return values.graph.input(`${object.id}.depth`, size.value.parts[2]!, 'written', `depth of ${object.id}`, { at: size.at });
}

export const PROFILE_STEPS = 40;
export interface Slice { readonly share: number; readonly brightness: number }
/** Brightness over the depth, from the nearest part to the farthest; the graph's value at each share of the depth. Cells in `held` have another value. */
export function profile(graph: Graph, { parts, coherence, depth }: Pick<Pair, 'depth' | 'coherence' | 'parts'>, held?: ReadonlyMap<Cell, number>): Slice[] {
  const far = parts.find(x => x.part === 'far');
  return far && coherence && depth && !far.mismatch.missing ? overDepth(graph, far.mismatch.inputs, coherence, held) : [];
}

/** `from` is what the mismatch of a part is made of: mismatch of the middle, depth, angle of the light. */
function overDepth(graph: Graph, from: readonly Cell[], coherence: Coherence, held?: ReadonlyMap<Cell, number>): Slice[] {
  const [m, d, psi] = from.map(c => graph.value(c)!) as [number, number, number];
  const rest = coherence.inputs.map(c => held?.get(c) ?? graph.value(c) ?? Number.NaN);
  return Array.from({ length: PROFILE_STEPS + 1 }, (_, i) => {
    const share = i / PROFILE_STEPS - 0.5;
    return { share, brightness: coherence.rule.compute([mismatchOfPart(share, m, d, psi), ...rest]) };
  });
}

function darkestShare(graph: Graph, from: readonly Cell[], coherence: Coherence): number {
  if ([...from, ...coherence.inputs].some(c => c.missing)) return 0.5;
  let best: Slice = { share: 0.5, brightness: Infinity };
  for (const s of overDepth(graph, from, coherence)) if (s.brightness < best.brightness - 1e-12) best = s;
  return best.share;
}

/** Aliases hold as long as they mean one thing; the plate's `mismatch` is the largest in size. */
function nameShort(plates: readonly PlateResults[], aliases: Map<string, Cell[]>, graph: Graph): void {
  const add = (alias: string, cell: Cell): void => {
    const among = aliases.get(alias);
    if (!among) aliases.set(alias, [cell]);
    else if (!among.includes(cell)) among.push(cell);
  };
  for (const p of plates) {
    const size = (c: Cell): number => Math.abs(graph.value(c) ?? -1);
    const worst = p.pairs.reduce<Pair | undefined>((w, x) => (!w || size(x.mismatch) > size(w.mismatch) ? x : w), undefined);
    if (worst) { add('mismatch', worst.mismatch); add(`${p.plate.id}.mismatch`, worst.mismatch); }
    for (const l of p.arms) {
      if (p.arms.filter(o => o.arm.role === l.arm.role).length > 1) continue;
      for (const [what, cell] of [['length', l.length], ['coherence path', l.coherencePath]] as const) {
        add(`${l.arm.role} ${what}`, cell);
        add(`${p.plate.id}.${l.arm.role}.${what}`, cell);
      }
    }
    for (const x of p.pairs) {
      for (const part of x.parts) {
        if (!part.brightness) continue;
        const tail = part.part === 'middle' ? '' : `${part.part}.`;
        for (const head of ['', `${p.plate.id}.`, `${p.plate.id}.${x.arm.object!.id}.`, `${x.arm.object!.id}.`]) add(`${head}${tail}brightness`, part.brightness);
        if (part.part !== 'middle') add(`${p.plate.id}.${x.arm.object!.id}.${tail}mismatch`, part.mismatch);
      }
    }
  }
}
