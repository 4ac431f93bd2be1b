/** Which readings of lengths count: those of one thing together, the newest of them, and none that is stale. */
import type { Arm, Arms } from '../../model/arms.ts';
import { isLater } from '../../model/bind/dates.ts';
import type { Leg, Reading, Setup, Thing } from '../../model/model.ts';
import type { Cell } from '../graph.ts';
import { legWords } from '../legs/legs.ts';
import { ownLegs } from '../legs/own-legs.ts';
import type { Values } from '../values.ts';
import { taken, together, type Taken } from './instruments.ts';
import { movedSince, thingsAlong, type Stale } from './stale.ts';
import { legsByEnd, targetOf, type Target } from './targets.ts';

/** Something of which the length was read, and what all readings of it that count say. */
export interface Subject {
  /** that of the result which it corrects */
  readonly name: string;
  readonly words: string;
  readonly target: Exclude<Target, { kind: 'none' }>;
  readonly readings: readonly Taken[];
  /** what they say together */
  readonly cell: Cell;
  /** what was planned; made when the result is */
  plan?: Cell;
  corrected?: Cell;
  /** the readings of its parts say it more surely */
  lessSure: boolean;
}

/** What became of a reading of a length. */
export type Fate =
  | { readonly kind: 'counts'; readonly subject: Subject; readonly taken: Taken }
  /** a newer one of the same thing counts */
  | { readonly kind: 'older'; readonly newest: Reading }
  | { readonly kind: 'stale'; readonly stale: Stale }
  | { readonly kind: 'useless'; readonly why: string }
  /** that is a finding */
  | { readonly kind: 'unclear'; readonly why: string; readonly silent: boolean };

export interface Sort {
  readonly legs: ReadonlyMap<Leg, Subject>;
  /** runs of several legs, the longest first */
  readonly runs: readonly { readonly legs: readonly Leg[]; readonly subject: Subject }[];
  /** arms, runs and differences */
  readonly wholes: ReadonlyMap<string, Subject>;
  readonly fates: ReadonlyMap<Reading, Fate>;
}

export const legsKey = (legs: readonly Leg[]): string => legs.map(l => l.id).join(' ');
export const differenceKey = (plate: Thing, arm: Arm): string => `${plate.id} ${arm.name} −`;

type Known = Exclude<Target, { kind: 'none' }>;
interface Group { readonly target: Known; readonly readings: Reading[] }

export function sortReadings(setup: Setup, arms: Arms, values: Values): Sort {
  const fates = new Map<Reading, Fate>();
  const groups = new Map<string, Group>();
  const ends = setup.readings.length > 0 ? legsByEnd(setup) : new Map<Thing, Leg[]>();
  for (const reading of setup.readings) {
    const m = reading.measured;
    if (!reading.value || (m?.kind !== 'legs' && m?.kind !== 'arm' && m?.kind !== 'difference')) continue;
    const target = targetOf(m, setup, arms, ends);
    if (target.kind === 'none') {
      fates.set(reading, target.useless ? { kind: 'useless', why: target.why } : { kind: 'unclear', why: target.why, silent: target.silent ?? false });
      continue;
    }
    const stale = movedSince(reading, thingsOf(target), setup);
    if (stale) { fates.set(reading, { kind: 'stale', stale }); continue; }
    const key = target.kind === 'path' ? legsKey(target.legs) : differenceKey(target.arm.plate, target.arm);
    const group = groups.get(key);
    if (group) group.readings.push(reading);
    else groups.set(key, { target, readings: [reading] });
  }
  const legs = new Map<Leg, Subject>();
  const wholes = new Map<string, Subject>();
  const runs: { legs: readonly Leg[]; subject: Subject }[] = [];
  for (const [key, group] of groups) {
    const subject = subjectOf(group, arms, values, fates);
    if (!subject) continue;
    const { target } = subject;
    if (target.kind === 'path' && target.legs.length === 1) legs.set(target.legs[0]!, subject);
    else wholes.set(key, subject);
    if (target.kind === 'path' && target.legs.length > 1) runs.push({ legs: target.legs, subject });
  }
  runs.sort((a, b) => b.legs.length - a.legs.length);
  return { legs, wholes, runs, fates };
}

const thingsOf = (t: Known): Thing[] => thingsAlong(t.kind === 'path' ? t.legs : [...ownPath(t.arm, t.reference), ...ownPath(t.reference, t.arm)]);
/** The legs of an arm behind those that it shares with another. */
const ownPath = (arm: Arm, other: Arm): readonly Leg[] => arm.path.slice(arm.path.findIndex((l, i) => other.path[i] !== l));

function subjectOf({ target, readings }: Group, arms: Arms, values: Values, fates: Map<Reading, Fate>): Subject | undefined {
  const newest = newestOf(readings);
  const counting = new Set(newest);
  for (const r of readings) if (!counting.has(r)) fates.set(r, { kind: 'older', newest: newest[0]! });
  const { name, words } = called(target, arms);
  const many = newest.length > 1;
  const all = newest.flatMap((r, i) => taken(r, many ? `${name}.reading.${i + 1}` : `${name}.reading`, many ? `reading ${i + 1} of ${words}` : `reading of ${words}`, values, target.kind === 'difference' ? target.sign : undefined) ?? []);
  if (all.length === 0) return undefined;
  const subject: Subject = { name, words, target, readings: all, cell: together(all, `${name}.reading`, `readings of ${words}`, values), lessSure: false };
  for (const t of all) fates.set(t.reading, { kind: 'counts', subject, taken: t });
  return subject;
}

/** Those of the newest day; of them, those with a time of day only the newest. A dated reading counts before those without a date. */
function newestOf(readings: readonly Reading[]): readonly Reading[] {
  // As text, a time of day sorts behind its day.
  const last = readings.reduce<string | undefined>((m, r) => (r.on !== undefined && (m === undefined || r.on > m) ? r.on : m), undefined);
  return last === undefined ? readings : readings.filter(r => r.on !== undefined && !isLater(last, r.on));
}

function called(target: Known, { arms }: Arms): { name: string; words: string } {
  if (target.kind === 'difference') return { name: `${target.arm.plate.id}.${target.arm.name}.difference`, words: `difference of ${target.arm.name} and ${target.reference.name} at ${target.arm.plate.id}` };
  const { legs } = target;
  const [first] = legs;
  if (legs.length === 1) return { name: `${first!.id}.length`, words: `leg ${legWords(first!)}` };
  const arm = target.arm ?? arms.find(a => a.path[a.path.length - 1] === legs[legs.length - 1] && legsKey(ownLegs(a, arms)) === legsKey(legs));
  if (arm) return { name: `${arm.plate.id}.${arm.name}.length`, words: `${arm.name} at ${arm.plate.id}` };
  const run = legs.map(legWords).map((w, i) => (i === 0 ? w : w.slice(w.indexOf('→')))).join(' ');
  return { name: `${run}.length`, words: run };
}
