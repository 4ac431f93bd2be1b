/** Arms unrolled: a strip of legs for each, one under the other and to one scale, so that a mismatch is seen. For setups with places and without. */
import { label, mark, n, told, type Box, type Mark, type Sheet } from '../marks.ts';
import { widthOf } from '../plan/labels.ts';
import type { PlateStrips, Strip } from './strips.ts';

/** Height of a letter where the longest arm is 1 m, mm, and of other things in letters. */
const LETTER = 17;
const [ROW, STRIP, LABELS, END] = [6.4, 1.5, 7, 11];

/** Marks of a row besides, from a height on. @param left where names begin, mm */
export type Besides = (y: number, letter: number, left: number) => readonly Mark[];

/** What is drawn between the strips. */
export interface Also {
  /** right below a strip */
  readonly below: ReadonlyMap<Strip, Besides>;
  /** below the strips of a plate, a row each */
  readonly rows: ReadonlyMap<PlateStrips, readonly Besides[]>;
  /** said below the name of a strip */
  readonly notes: ReadonlyMap<Strip, string>;
  /** how long the longest of it is, m */
  readonly longest: number;
  /** so many times as high as usual are all letters */
  readonly letters: number;
  /** sentences at the foot */
  readonly told: readonly string[];
}
export const NOTHING_ELSE: Also = { letters: 1, below: new Map(), rows: new Map(), notes: new Map(), longest: 0, told: [] };
/** Heights of what is drawn besides, in letters. */
const [BELOW, MORE] = [1.5, 3];

export function unrolledOf(title: string, plates: readonly PlateStrips[], also = NOTHING_ELSE): Sheet {
  const longest = plates.flatMap(p => p.strips).reduce((m, s) => Math.max(m, s.end), also.longest) * 1000;
  const letter = also.letters * LETTER * Math.max(0.6, Math.min(40, longest / 1000));
  const left = -LABELS * letter;
  const marks: Mark[] = [];
  let y = 3.4 * letter;
  for (const p of plates) {
    marks.push(label(`Arms of ${p.plate}${p.start === '' ? '' : `, from ${p.start}`}`, left, y, letter, 'letter quiet'));
    y += 2.2 * letter;
    const tops = p.strips.map(s => { const top = y; y += (ROW + (also.below.has(s) ? BELOW : 0)) * letter; return top; });
    marks.push(...ends(p, tops, letter), ...p.strips.flatMap((s, i) => strip(s, tops[i]!, p, letter, left, also)));
    for (const more of also.rows.get(p) ?? []) { marks.push(...more(y, letter, left)); y += MORE * letter; }
    y += 1.4 * letter;
  }
  const bar = barFor(longest);
  const box: Box = { x: left - letter, y: -1.2 * letter, w: longest + (LABELS + END + 2) * letter, h: y + (3 + 1.4 * also.told.length) * letter };
  return {
    title, box,
    marks: [
      mark('rect', { class: 'paper', x: box.x, y: box.y, width: box.w, height: box.h }), label(title, left, 0.8 * letter, 1.25 * letter, 'letter'), ...marks,
      mark('path', { class: 'scale', d: `M0 ${n(y - 6)}v12M0 ${n(y)}h${n(bar)}M${n(bar)} ${n(y - 6)}v12` }), label(`${bar} mm`, bar + 0.7 * letter, y + 0.3 * letter, 0.85 * letter, 'letter'),
      ...also.told.map((words, i) => label(words, left, y + (1.8 + 1.4 * i) * letter, 0.85 * letter, 'letter quiet')),
    ],
  };
}

const barFor = (longest: number): number => [20, 50, 100, 200, 500, 1000, 2000, 5000].findLast(b => b <= longest / 5) ?? 10;

/** Where the reference ends, through all strips: what stands out beyond it, or falls short of it, is the mismatch. */
function ends({ strips: [first] }: PlateStrips, tops: readonly number[], letter: number): Mark[] {
  if (!first) return [];
  const x = first.end * 1000;
  return first.role === 'reference' ? [mark('line', { class: 'guide', x1: x, y1: tops[0]! - 0.5 * letter, x2: x, y2: tops.at(-1)! + (STRIP + 0.5) * letter })] : [];
}

function strip(s: Strip, y: number, p: PlateStrips, letter: number, left: number, { below, notes }: Also): Mark[] {
  const h = STRIP * letter;
  const small = 0.72 * letter;
  const legs = s.legs.map(l => mark('g', { 'data-item': l.id }, [
    told(`leg ${l.words}, ${l.text}`), mark('rect', { class: `strip strip-${s.role}`, x: l.from * 1000, y, width: l.length * 1000, height: h }),
    ...(widthOf(l.text, small) < l.length * 1000 - 0.4 * letter ? [label(l.text, (l.from + l.length / 2) * 1000, y + h / 2 + 0.35 * small, small, 'letter', 'middle')] : []),
  ]));
  const reference = p.strips[0]!.role === 'reference' ? p.strips[0]! : undefined;
  const more = below.get(s);
  return [
    ...(more ? more(y + h + 0.25 * letter, letter, left) : []), ...(notes.has(s) ? [label(notes.get(s)!, left, y + h / 2 + 1.3 * letter, small, 'letter quiet')] : []),
    label(s.name, left, y + h / 2 + 0.35 * letter, letter, `letter letter-${s.role}`), ...legs, ...joints(s, y, p.start, letter),
    label(s.total, s.end * 1000 + 0.8 * letter, y + h / 2 + 0.35 * letter, letter, 'letter halo'), ...(s.off && reference ? mismatch(s, s.off, reference, y + h + (more ? BELOW * letter : 0), letter) : []),
  ];
}

/** What each leg ends at, above its end; names that would touch stand one step higher. */
function joints(s: Strip, y: number, start: string, letter: number): Mark[] {
  const small = 0.8 * letter;
  const free = [-Infinity, -Infinity];
  return [[start, 0] as const, ...s.legs.map(l => [l.to, (l.from + l.length) * 1000] as const)].filter(([name]) => name !== '').flatMap(([name, x]) => {
    const half = widthOf(name, small) / 2;
    const level = x - half > free[0]! ? 0 : x - half > free[1]! ? 1 : 0;
    free[level] = x + half + 0.3 * small;
    const base = y - 0.45 * letter - level * 1.1 * small;
    return [mark('line', { class: 'fine', x1: x, y1: y + STRIP * letter, x2: x, y2: base + 0.15 * small }), label(name, x, base, small, 'letter', 'middle')];
  });
}

/** What the strip has more than the reference, or lacks, and what that does to the object. */
function mismatch(s: Strip, { by, text, records }: NonNullable<Strip['off']>, reference: Strip, y: number, letter: number): Mark[] {
  const size = 0.85 * letter;
  const [from, to] = [Math.min(s.end, reference.end) * 1000, Math.max(s.end, reference.end) * 1000];
  const line = y + 0.55 * letter;
  // Readings and glass count as well as what is drawn: a gap that they close is not marked, and one that they make is not seen.
  const seen = to - from > 0.05 && Math.sign(s.end - reference.end) === Math.sign(by);
  const behind = Math.abs(by - (s.end - reference.end)) > 5e-4 ? ', with readings and glass' : '';
  const words = `${Math.abs(by) < 5e-5 ? 'as long as' : by > 0 ? 'longer than' : 'shorter than'} the ${reference.name}${behind}: mismatch ${text}`;
  return [
    ...(seen ? [mark('path', { class: 'gap', d: `M${n(from)} ${n(line - 0.3 * letter)}v${n(0.6 * letter)}M${n(from)} ${n(line)}H${n(to)}M${n(to)} ${n(line - 0.3 * letter)}v${n(0.6 * letter)}` })] : []),
    ...[words, ...(records.length > 0 ? [`recorded: ${records.join(', ')}`] : [])].map((line1, i) => label(line1, 0, y + (1.25 + 1.15 * i) * letter, size, i === 0 ? 'letter' : 'letter quiet')),
  ];
}
