/** The arms of a setup unrolled, each over how it was: for setups of strings, where nothing has a place. */
import { nameNow, renamed, type Names } from '../../review/meaning.ts';
import type { SetupReview } from '../../review/review.ts';
import { titleOf } from '../drawing.ts';
import { label, mark, told, type Mark, type Sheet } from '../marks.ts';
import { widthOf } from '../plan/labels.ts';
import { unrolledOf, type Besides } from '../unrolled/unrolled.ts';
import type { PlateStrips, Strip } from '../unrolled/strips.ts';
import { BEFORE } from './ghosts.ts';

/** Height of a strip as it was, in letters. */
const HEIGHT = 1;
/** Lengths this near to each other are one, m. */
const LEAST = 5e-5;

export function overArms(s: SetupReview, before: readonly PlateStrips[], after: readonly PlateStrips[], letters = 1): Sheet {
  const now = (name: string): string => nameNow(name, s.names, n => after.some(p => p.plate === n || p.strips.some(x => x.name === n)));
  const below = new Map<Strip, Besides>();
  const rows = new Map<PlateStrips, readonly Besides[]>();
  const notes = new Map<Strip, string>();
  const plates = [...after];
  const changed: string[] = [];
  for (const p of before) {
    const plate = after.find(q => q.plate === now(p.plate));
    const gone = p.strips.filter(x => !plate?.strips.some(y => y.name === now(x.name)));
    const own: PlateStrips = plate ?? { ...p, strips: [] };
    if (!plate) plates.push(own);
    rows.set(own, gone.map(x => goneRow(x, s.after ? 'gone' : '')));
    changed.push(...gone.map(x => `${x.name} gone`));
    for (const x of p.strips) {
      const y = plate?.strips.find(z => z.name === now(x.name));
      if (!y) continue;
      if (y.name !== x.name) notes.set(y, `was ${x.name}`);
      if (isSame(x, y, s.names)) continue;
      const led = new Set(y.legs.map(l => l.to));
      below.set(y, (top, letter) => ghost(x, top, letter, `was ${x.total}`, to => !led.has(renamed(to, s.names))));
      changed.push(`${y.name} was ${x.total}, is ${y.total}`);
    }
  }
  if (s.before) for (const q of after) for (const y of q.strips) {
    if (before.some(p => now(p.plate) === q.plate && p.strips.some(x => now(x.name) === y.name))) continue;
    notes.set(y, 'new');
    changed.push(`${y.name} new`);
  }
  const title = `${titleOf((s.after ?? s.before)!)}${s.formerly === undefined ? '' : `, formerly ${s.formerly}`}, ${s.before && s.after ? 'now and before' : s.after ? 'new' : 'gone'}`;
  const legend = [...(below.size > 0 || [...rows.values()].flat().length > 0 ? ['Dashed strips are the arms as they were.'] : []), ...(s.before && s.after && changed.length === 0 ? ['All arms are as long as they were, leg by leg.'] : [])];
  const sheet = unrolledOf(title, plates, { letters, below, rows, notes, longest: Math.max(0, ...before.flatMap(p => p.strips.map(x => x.end))), told: legend });
  return s.before && s.after ? { ...sheet, title: `${title}: ${changed.length > 0 ? changed.join('; ') : 'all arms are as long as they were'}` } : sheet;
}

/** Leg by leg as long, from thing to thing. */
const isSame = (a: Strip, b: Strip, names: Names): boolean =>
  a.legs.length === b.legs.length && a.legs.every((l, i) => Math.abs(l.length - b.legs[i]!.length) < LEAST && renamed(l.to, names) === b.legs[i]!.to);

/** Outlines only, with lengths where they fit, and what a leg ran to where no name above says it. */
function ghost(s: Strip, y: number, letter: number, total: string, isLost: (to: string) => boolean): Mark[] {
  const small = 0.66 * letter;
  const h = HEIGHT * letter;
  return [
    ...s.legs.map(l => {
      const text = [...(isLost(l.to) ? [`${l.text} to ${l.to}`] : []), l.text].find(t => widthOf(t, small) < l.length * 1000 - 0.4 * letter);
      return mark('g', { 'data-item': BEFORE + l.id }, [
        told(`before: leg ${l.words}, ${l.text}`), mark('rect', { class: 'ghost', x: l.from * 1000, y, width: l.length * 1000, height: h }),
        ...(text === undefined ? [] : [label(text, (l.from + l.length / 2) * 1000, y + h / 2 + 0.35 * small, small, 'letter quiet', 'middle')]),
      ]);
    }),
    label(total, s.end * 1000 + 0.8 * letter, y + h / 2 + 0.3 * letter, 0.85 * letter, 'letter quiet halo'),
  ];
}

const goneRow = (s: Strip, note: string): Besides => (y, letter, left) => [
  label(s.name, left, y + 0.8 * letter, letter, `letter letter-${s.role}`), ...(note === '' ? [] : [label(note, left, y + 1.75 * letter, 0.72 * letter, 'letter quiet')]), ...ghost(s, y, letter, s.total, () => true),
];
