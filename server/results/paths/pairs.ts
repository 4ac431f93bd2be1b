/** An object arm against the reference of its plate: how far they differ, and how brightly each part of the object records. */
import { lasersAt, objectAt, type Arm } from '../../model/arms.ts';
import type { Thing } from '../../model/model.ts';
import { ANGLE, LENGTH, NUMBER } from '../../model/units.ts';
import { assumedAngle, isKnown, litAt, type Angle } from '../places/angles.ts';
import type { ArmLength } from './arm-lengths.ts';
import type { Coherence } from '../coherence.ts';
import type { Cell, Graph } from '../graph.ts';
import { mismatchOfPart, partMismatch } from '../rules/coherence.ts';
import type { Places } from '../places/places.ts';
import type { Readings } from '../readings/index.ts';
import { PAST_PLATE } from '../rules/object.ts';
import { weighted } from '../rules/lengths.ts';
import type { Values } from '../values.ts';

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
  /** angle between the light on the object and the line of sight from the plate */
  readonly litAt?: Angle;
  readonly parts: readonly Part[];
  readonly coherence?: Coherence;
}

export interface PlateResults {
  readonly plate: Thing;
  readonly arms: readonly ArmLength[];
  readonly pairs: readonly Pair[];
}

/** Angle at which an arm arrives: as written or placed, else of a reference as is usual. */
export function angleAt(arm: Arm, plates: readonly PlateResults[], values: Values): Cell {
  const { plate, role, name } = arm;
  const known = plates.find(p => p.plate === plate)?.arms.find(a => a.arm === arm)?.angle?.cell;
  if (known && !known.missing) return known;
  const words = `angle of ${name} at ${plate.id}`;
  // It may be written as a formula that nobody can work out.
  if (role === 'object') return values.fact(plate, 'object angle') ?? known ?? values.missing(`${plate.id}.${name}.unknown angle`, ANGLE, words, { code: 'value-missing', why: `the object angle of ${plate.id} cannot be told`, at: plate.at });
  return assumedAngle(`${plate.id}.${name}.assumed angle`, words, 'most references come at 30° to 60°, and the text does not tell; common practice', values);
}

/** A plate in the light of each of its lasers, and whose that is where there are several: what is set and metered for one says nothing of another. */
export function byLaser(p: PlateResults): readonly { readonly results: PlateResults; readonly laser?: Thing }[] {
  const lasers = lasersAt(p.plate, p.arms.map(a => a.arm));
  if (lasers.length < 2) return [{ results: p }];
  return lasers.map(laser => ({ laser, results: { plate: p.plate, arms: p.arms.filter(a => a.arm.laser === laser), pairs: p.pairs.filter(x => x.arm.laser === laser) } }));
}

export function pair(plate: Thing, l: ArmLength, reference: ArmLength, coherence: Coherence | undefined, { values, places, published, readings }: { values: Values; places: Places; published: Cell[]; readings: Readings }): Pair {
  const { graph } = values;
  const base = `${plate.id}.${l.arm.name}`;
  const past = pastPlate(plate, l.arm, reference.arm, places, graph);
  const mismatch = mismatchOf(plate, l, reference, readings, graph, past);
  published.push(mismatch);
  const object = l.arm.object!;
  const depth = depthOf(object, values);
  const lit = depth && object.kind.word === 'object' ? litAt(plate, l.arm, places, values) : undefined;
  const psi = lit?.cell;
  if (psi && isKnown(lit) && !published.includes(psi)) published.push(psi);
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
    const far = parts[parts.length - 1]!.brightness;
    if (coherence && far) add('darkest', graph.noted(far).darkest ??= darkestShare(graph, [mismatch, depth, psi], coherence));
  }
  return { arm: l.arm, reference: reference.arm, mismatch, parts, ...(depth ? { depth } : {}), ...(lit ? { litAt: lit } : {}), ...(coherence ? { coherence } : {}) };
}

/** What was read of the difference counts; glass adds to it as to the paths. */
function mismatchOf(plate: Thing, l: ArmLength, reference: ArmLength, readings: Readings, graph: Graph, past: Cell | undefined): Cell {
  const name = `${plate.id}.${l.arm.name}.mismatch`;
  const words = `mismatch of ${l.arm.name} and ${reference.arm.name} at ${plate.id}`;
  const { cell, formula } = readings.lengths.difference(plate, l.arm, l, reference);
  const more = past ? [past] : [];
  const behind = past ? ' + what the straight way through the plate saves' : '';
  if (!cell) return graph.derive(name, weighted('mismatch', `${formula ?? 'object path − reference path'}${behind}`, [1, -1, ...more.map(() => 1)]), [l.coherencePath, reference.coherencePath, ...more], LENGTH, words);
  const weights = [1, ...l.glass.map(() => 1), ...reference.glass.map(() => -1), ...more.map(() => 1)];
  return graph.derive(name, weighted('mismatch', `${l.glass.length + reference.glass.length > 0 ? 'difference by string + glass of the object path − glass of the reference path' : 'difference by string'}${behind}`, weights), [cell, ...l.glass, ...reference.glass, ...more], LENGTH, words);
}

/** String goes by the middle of the plate, light straight through it: in one beam that meets its plate at a slant. Undefined where the places do not tell it. */
function pastPlate(plate: Thing, arm: Arm, reference: Arm, places: Places, graph: Graph): Cell | undefined {
  if (arm.beam !== reference.beam) return undefined;
  const at = objectAt(arm);
  const [onto, before] = [arm.path[at], arm.path[at - 1]];
  const from = onto && places.ways.source(onto);
  if (before?.target !== plate || !from) return undefined;
  const [s, p, o] = [from, plate, arm.object!].map(t => places.of(places.own(t)));
  if (!s || !p || !o || [...s, ...p, ...o].some(c => c.missing)) return undefined;
  const name = `${plate.id}.${arm.name}.way past the plate`;
  return graph.find(name) ?? graph.derive(name, PAST_PLATE, [...s, ...p, ...o], LENGTH, `what light to ${arm.object!.id} saves on its way past the middle of ${plate.id}`);
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
