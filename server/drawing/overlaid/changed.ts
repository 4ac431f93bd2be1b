/** What looks or stands otherwise on the table from above than it did before: two drawings held against each other, in metres. */
import { millimetres } from '../../model/show.ts';
import { renamed, type Names } from '../../review/meaning.ts';
import type { Drawing, DrawnLeg, DrawnThing } from '../drawing.ts';
import type { Point } from '../marks.ts';
import { sidesOf, WIDTHS } from '../plan/light.ts';
import { onSheet } from '../plan/things.ts';
import { uncovered, type Stroke } from './uncovered.ts';

export interface ThingChange {
  /** undefined: it is new in the drawing */
  readonly before: DrawnThing | undefined;
  /** undefined: it is gone from the drawing */
  readonly after: DrawnThing | undefined;
  /** the outline before is to be told from the one after, so that it is worth drawing */
  readonly ghost: boolean;
  /** from above and without rise, m; 0 where that reads as nothing */
  readonly moved: number;
  /** seen from above, either way, rad; 0 where nobody sees it */
  readonly turned: number;
  /** what else is other, each in a few words: `was M1` */
  readonly notes: readonly string[];
}

/** Lines that lie closer than their own width are one line to the eye, m. */
export const SEEN = 1e-3;
/** Less reads as 0 mm, m. */
const LEAST = 5e-5;
/** Less is what mirrors turn by themselves when something far away is shifted; nobody sees it, rad. */
const LEAST_TURN = Math.PI / 360;

/** Those that changed, in the order of the newer drawing, then what is gone. */
export function changedThings(before: Drawing, after: Drawing, names: Names, has: { readonly before: (name: string) => boolean; readonly after: (name: string) => boolean }): ThingChange[] {
  const old = new Map(before.things.map(t => [renamed(t.name, names), t]));
  const back = new Map([...names].map(([then, now]) => [now, then]));
  const kept = after.things.flatMap((t): ThingChange[] => {
    const was = old.get(t.name);
    if (!was) return [{ before: undefined, after: t, ghost: false, moved: 0, turned: 0, notes: [has.before(renamed(t.name, back)) ? 'had no place' : 'new'] }];
    old.delete(t.name);
    const change = { before: was, after: t, ghost: apart(was, t) > SEEN, moved: atLeast(distance(was.at, t.at), LEAST), turned: atLeast(turnBetween(was, t), LEAST_TURN), notes: notesOf(was, t, before, after) };
    return change.ghost || change.moved + change.turned > 0 || change.notes.length > 0 ? [change] : [];
  });
  return [...kept, ...[...old.values()].map((t): ThingChange => ({ before: t, after: undefined, ghost: true, moved: 0, turned: 0, notes: [has.after(renamed(t.name, names)) ? 'no place now' : 'gone'] }))];
}

const distance = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
const atLeast = (v: number, least: number): number => (v < least ? 0 : v);
const turnBetween = ({ normal: a }: DrawnThing, { normal: b }: DrawnThing): number => (a && b ? Math.abs(Math.atan2(a[0] * b[1] - a[1] * b[0], a[0] * b[0] + a[1] * b[1])) : 0);

/** How far the one outline is from the other at most. */
function apart(a: DrawnThing, b: DrawnThing): number {
  if (a.outline.length !== b.outline.length || a.rounded !== b.rounded || (a.normal === undefined) !== (b.normal === undefined)) return Infinity;
  return a.outline.reduce((most, p, i) => Math.max(most, distance(p, b.outline[i]!)), distance(a.at, b.at));
}

function notesOf(a: DrawnThing, b: DrawnThing, before: Drawing, after: Drawing): string[] {
  // What rises with all the beams stands as it stood.
  const up = b.height - (after.beamHeight ?? 0) - (a.height - (before.beamHeight ?? 0));
  return [
    ...(a.name === b.name ? [] : [`was ${a.name}`]),
    ...(a.kind === b.kind ? [] : [`was ${/^[aeiou]/.test(a.kind) ? 'an' : 'a'} ${a.kind}`]),
    ...(Math.abs(up) < LEAST ? [] : [`${millimetres(Math.abs(up))} ${up > 0 ? 'higher' : 'lower'}`]),
    ...(a.kind !== b.kind || a.face.every((v, i) => Math.abs(v - b.face[i]!) <= LEAST) ? [] : [Math.abs(a.face[0] - b.face[0]) > LEAST ? `was ${millimetres(a.face[0])} wide` : 'other depth']),
    ...(a.kind === b.kind && a.normal && !b.normal ? ['facing unknown now'] : []),
    ...(a.layer !== b.layer && a.layer && b.layer ? ['layer on the other side'] : []),
    ...(a.kind === b.kind && a.curved !== b.curved ? ['curved otherwise'] : []),
  ];
}

/** Of a leg as it was, what does not lie below light as it is. In mm of the sheet. */
export interface LegGhost { readonly leg: DrawnLeg; readonly line: readonly Stroke[]; readonly sides: readonly Stroke[] }

export function legGhosts(before: Drawing, after: Drawing | undefined): LegGhost[] {
  const lines = (after?.legs ?? []).map(strokeOf);
  const sides = (after?.legs ?? []).flatMap(edges);
  return before.legs.flatMap(leg => {
    const ghost = { leg, line: uncovered(strokeOf(leg), lines, SEEN * 1000), sides: edges(leg).flatMap(s => uncovered(s, sides, SEEN * 1000)) };
    return ghost.line.length + ghost.sides.length > 0 ? [ghost] : [];
  });
}

const strokeOf = (l: DrawnLeg): Stroke => [onSheet(l.from), onSheet(l.to)];
/** The edges of its light, and of scattered light those of what comes to the plate. */
const edges = (l: DrawnLeg): readonly Stroke[] => WIDTHS.flatMap(([which]) => (which === 'whole' || l.role === 'scattered' ? (sidesOf(l, which) ?? []) : []));
