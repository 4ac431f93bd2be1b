/** The plan of a setup as it is, over how it was. */
import { millimetres } from '../../model/show.ts';
import type { SetupReview } from '../../review/review.ts';
import { titleOf, type Drawing, type DrawnThing } from '../drawing.ts';
import { boxOf, mark, n, type Point, type Sheet } from '../marks.ts';
import { NOTHING_ELSE, type Also, type Named } from '../plan/also.ts';
import { planOf } from '../plan/plan.ts';
import { onSheet, roomOf } from '../plan/things.ts';
import { changedThings, legGhosts, type LegGhost, type ThingChange } from './changed.ts';
import { arrow, BEFORE, legGhostMarks, moveMarks, newMarks, tableGhost, thingGhost } from './ghosts.ts';
import type { Stroke } from './uncovered.ts';

/** So many changes are named in the title. */
const MOST = 12;

/** @param before undefined where nothing had a place, and `after` where nothing has one now; not both are */
export function overPlan(s: SetupReview, before: Drawing | undefined, after: Drawing | undefined, letters = 1): Sheet {
  const name = titleOf((s.after ?? s.before)!);
  const formerly = s.formerly === undefined ? '' : `, formerly ${s.formerly}`;
  if (!after) {
    const title = `${name}${formerly}, ${s.after ? 'as it was: nothing has a place now' : 'gone'}`;
    return planOf({ ...bare(before!), title }, { ...alsoOf(before!, before!.things.map(goneOf), legGhosts(before!, undefined), before!.table !== undefined, []), letters });
  }
  if (!before) return planOf({ ...after, title: `${name}${formerly}, ${s.before ? 'now: nothing had a place before' : 'new'}` }, { ...NOTHING_ELSE, letters });
  const things = changedThings(before, after, s.names, { before: id => s.before!.setup.things.has(id), after: id => s.after!.setup.things.has(id) });
  const legs = legGhosts(before, after);
  const other = toldOf(before, after);
  const same = things.length + legs.length + other.length === 0;
  const title = `${name}${formerly}, now and before`;
  const sheet = planOf({ ...after, title }, { ...alsoOf(before, things, legs, tableDiffers(before, after), same ? ['Everything stands as it stood, and all light runs as it ran.'] : other), letters });
  return { ...sheet, title: `${title}: ${same ? 'nothing stands elsewhere' : summary(things, legs, other)}` };
}

/** The table without anything on it. */
const bare = (d: Drawing): Drawing => ({ ...d, table: undefined, holes: undefined, things: [], legs: [], angles: [], strays: [], cards: [], blocked: [], notes: [] });
const goneOf = (t: DrawnThing): ThingChange => ({ before: t, after: undefined, ghost: true, moved: 0, turned: 0, notes: [] });

const tableDiffers = ({ table: a }: Drawing, { table: b }: Drawing): boolean => a !== undefined && (b === undefined || a.some((v, i) => Math.abs(v - b[i]!) > 1e-6));

function toldOf(a: Drawing, b: Drawing): string[] {
  const mm = (v: number): string => millimetres(v).replace(/ mm$/, '');
  const other = (v: number | undefined, w: number | undefined): v is number => v !== undefined && (w === undefined || Math.abs(v - w) > 5e-5);
  return [
    ...(tableDiffers(a, b) ? [`Before, the table was ${mm(a.table![0])} x ${mm(a.table![1])} mm.`] : []),
    ...(other(a.beamHeight, b.beamHeight) ? [`Before, beams ran ${mm(a.beamHeight)} mm above the table.`] : []),
    ...(other(a.holes, b.holes) ? [`Before, holes were ${mm(a.holes)} mm apart.`] : []),
  ];
}

function alsoOf(before: Drawing, things: readonly ThingChange[], legs: readonly LegGhost[], table: boolean, told: readonly string[]): Also {
  const ghosts = things.flatMap(c => (c.ghost && c.before ? [c.before] : []));
  const moved = things.filter(c => c.moved > 0 && c.ghost);
  const added = things.flatMap(c => (c.after && !c.before ? [c.after] : []));
  const lines: Stroke[] = [...legs.flatMap(l => l.line), ...moved.map(strokeOf)];
  return {
    ...NOTHING_ELSE, told, lines, boxes: ghosts.map(roomOf),
    points: [...ghosts.flatMap(t => [t.at, ...t.outline].map(onSheet)), ...legs.flatMap(l => l.line.flat()), ...(table ? [[0, 0] as Point, onSheet(before.table!)] : [])],
    below: [...(table ? tableGhost(before) : []), ...legs.flatMap(legGhostMarks), ...ghosts.map(thingGhost)],
    above: [...added.map(newMarks), ...moved.flatMap(moveMarks)],
    notes: new Map(things.flatMap(c => { const words = wordsOf(c); return c.after && words.length > 0 ? [[c.after.name, words] as const] : []; })),
    named: [...things.flatMap(c => (c.after ? [] : [goneName(c)])), ...moved.filter(isLong).map(distanceMark)],
    samples: [
      ...(ghosts.length > 0 || table ? [{ words: 'where it was', drawn: ([x, y]: Point, letter: number) => [mark('rect', { class: 'ghost', x: x + 4, y: y - 0.45 * letter, width: 40, height: 0.9 * letter })] }] : []),
      ...(legs.length > 0 ? [{ words: 'light as it ran', drawn: ([x, y]: Point) => [mark('line', { class: 'ghost', x1: x, y1: y, x2: x + 48, y2: y })] }] : []),
      ...(added.length > 0 ? [{ words: 'new', drawn: ([x, y]: Point, letter: number) => [mark('rect', { class: 'mount', x: x + 7, y: y - 0.35 * letter, width: 34, height: 0.7 * letter }), mark('rect', { class: 'new', x: x + 2, y: y - 0.35 * letter - 5, width: 44, height: 0.7 * letter + 10 })] }] : []),
      ...(moved.length > 0 ? [{ words: 'moved', drawn: ([x, y]: Point) => arrow([x + 2, y], [x + 46, y]) }] : []),
    ],
  };
}

const strokeOf = ({ before, after }: ThingChange): Stroke => [onSheet(before!.at), onSheet(after!.at)];
/** An arrow that long has room for its length beside it; that of a shorter one is told below the name. */
const isLong = (c: ThingChange): boolean => c.moved * 1000 > 90;
const wordsOf = (c: ThingChange): string[] => [...(c.moved > 0 && !(c.ghost && isLong(c)) ? [`moved ${millimetres(c.moved)}`] : []), ...c.notes, ...(c.ghost ? turnOf(c) : [])];
/** What turns by so little that its outline stays where it was is told in the title only. */
const turnOf = ({ turned }: ThingChange): string[] => (turned > 0 ? [`turned ${degrees(turned)}`] : []);
const degrees = (angle: number): string => { const a = (angle * 180) / Math.PI; return `${a < 10 ? n(Math.round(a * 10) / 10) : n(Math.round(a))}°`; };

const goneName = ({ before, notes }: ThingChange): Named => ({ item: BEFORE + before!.name, name: before!.name, own: roomOf(before!), notes });

function distanceMark(c: ThingChange): Named {
  const [a, b] = strokeOf(c);
  return { item: c.after!.name, notes: [millimetres(c.moved)], own: boxOf([[(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]]) };
}

/** For whoever does not see the picture. */
function summary(things: readonly ThingChange[], legs: readonly LegGhost[], other: readonly string[]): string {
  const all = things.map(c => `${(c.after ?? c.before)!.name} ${[...(c.moved > 0 ? [`moved ${millimetres(c.moved)}`] : []), ...c.notes, ...turnOf(c)].join(', ') || 'looks otherwise'}`);
  const more = all.length - MOST;
  return [...all.slice(0, MOST), ...(more > 0 ? [`${more} more`] : []), ...(legs.length > 0 ? ['light runs otherwise'] : []), ...other.map(t => t.replace(/\.$/, '').replace(/^Before/, 'before'))].join('; ');
}
