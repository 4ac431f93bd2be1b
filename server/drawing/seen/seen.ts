/** The object as the plate sees it, from one point of it or for two eyes: what the hologram will show, part by part. */
import { fixed } from '../../model/place.ts';
import { millimetres } from '../../model/show.ts';
import { seenFrom, unseen } from '../../results/maps/seen.ts';
import type { Results } from '../../results/plan.ts';
import { label, mark, type Box, type Mark, type Point } from '../marks.ts';
import { plateFor, type Drawn, type Item, type Look } from '../view.ts';
import { broken, legendMarks } from './legend.ts';
import { eyeMarks, PATTERNS, plateMarks } from './object.ts';
import { eyeAt, shapesOf, stageOf, type Stage } from './project.ts';

/** Side of the square of an eye; the margin; the height of a letter. */
const [SIDE, MARGIN, LETTER] = [600, 40, 17];
/** How far apart the eyes of most people are, m: 63 mm (Dodgson, Proc. SPIE 5291, 36 (2004)). */
export const EYES_APART = 0.063;

export const seenView = (r: Results, look: Look): (() => Drawn) | string => drawnFor(r, look, stage => {
  const eye = within(look.from);
  return { eyes: [{ at: eye, words: '' }], says: [`seen from ${placeWords(eye)} of ${stage.view.plate.id}${backWords(stage)}`] };
});

export const pairView = (r: Results, look: Look): (() => Drawn) | string => drawnFor(r, look, stage => {
  const width = 2 * Math.hypot(...stage.view.right);
  const apart = Math.min(EYES_APART, width);
  const [x, y] = within(look.from);
  const half = apart / width;
  // Both eyes stay on the plate.
  const middle = Math.max(-1 + half, Math.min(1 - half, x));
  return {
    eyes: [{ at: [middle - half, y], words: 'left eye' }, { at: [middle + half, y], words: 'right eye' }],
    says: [
      `eyes ${millimetres(apart)} apart${apart < EYES_APART ? `, as far as ${stage.view.plate.id} is wide: most eyes are ${millimetres(EYES_APART)} apart` : ''}${backWords(stage)}`,
      'Each eye looks at its own picture, as if into the distance. Print them with their middles no further apart than your eyes.',
    ],
  };
});

interface Eye { readonly at: Point; readonly words: string }

function drawnFor(r: Results, look: Look, of: (stage: Stage) => { readonly eyes: readonly Eye[]; readonly says: readonly string[] }): (() => Drawn) | string {
  const plate = plateFor(r.plates.map(p => p.plate), look, p => unseen(r, p));
  if (typeof plate === 'string') return plate;
  return () => {
    const stage = stageOf(seenFrom(r, plate)!);
    const { eyes, says } = of(stage);
    return { sheet: sheetOf(stage, r, eyes, says), items: itemsOf(stage), plate: plate.id };
  };
}

function sheetOf(stage: Stage, r: Results, eyes: readonly Eye[], says: readonly string[]): Drawn['sheet'] {
  const { view } = stage;
  const width = eyes.length * SIDE + (eyes.length - 1) * GAP;
  const title = `${view.objects.map(o => o.object.id).join(' and ')} as ${view.plate.id} sees ${view.objects.length > 1 ? 'them' : 'it'}`;
  let y = 2.2 * LETTER;
  const said = says.flatMap(s => broken(s, width, LETTER)).map(line => label(line, 0, (y += 1.5 * LETTER), LETTER, 'letter quiet'));
  const top = y + LETTER;
  const seen = eyes.map(e => shapesOf(stage, eyeAt(stage, e.at)));
  const squares = eyes.flatMap((e, i): Mark[] => {
    const box: Box = { x: i * (SIDE + GAP), y: top, w: SIDE, h: SIDE };
    return [...eyeMarks(stage, seen[i]!, box, `eye-${i}`), ...(e.words === '' ? [] : [label(e.words, box.x + SIDE / 2, top + SIDE + 1.3 * LETTER, LETTER, 'letter', 'middle')])];
  });
  const foot = top + SIDE + (eyes.length > 1 ? 2.4 : 1.2) * LETTER;
  const small = plateMarks(stage, eyes.map(e => e.at), 0, foot, 3.4 * LETTER, `where ${eyes.length > 1 ? 'the eyes are' : 'the eye is'} on ${view.plate.id}`, 0.85 * LETTER);
  const legend = legendMarks(stage, seen.flat(), r, 0, foot + 4.6 * LETTER, Math.min(width, 1.3 * SIDE), LETTER, SIDE / (2 * stage.reach));
  const box: Box = { x: -MARGIN, y: -MARGIN / 2, w: width + 2 * MARGIN, h: foot + 4.6 * LETTER + legend.height + MARGIN };
  return { title: `${r.setup.name}: ${title}`, box, marks: [PATTERNS, mark('rect', { class: 'paper', x: box.x, y: box.y, width: box.w, height: box.h }), label(title, 0, 1.5 * LETTER, 1.25 * LETTER, 'letter'), ...said, ...squares, ...small.marks, ...legend.marks] };
}
const GAP = 24;

/** A point of the plate that is no further out than its edge. */
function within(from: Look['from'] = [0, 0]): Point {
  const [x, y] = from.map(v => (Number.isFinite(v) ? Math.max(-1, Math.min(1, v)) : 0));
  return [x!, y!];
}

function placeWords([x, y]: Point): string {
  const part = (v: number, more: string, less: string): string[] => (Math.abs(v) < 0.005 ? [] : [`${Math.round(Math.abs(v) * 100)} % of the way ${v > 0 ? more : less}`]);
  const words = [...part(x, 'to the right edge', 'to the left edge'), ...part(y, 'to the upper edge', 'to the lower edge')];
  return words.length === 0 ? 'the middle' : `${words.join(' and ')} from the middle`;
}

/** What is nearer than anybody looks from is drawn from further back. */
const backWords = ({ view, target, back }: Stage): string => (back === 1 ? '' : `, ${millimetres((back - 1) * Math.hypot(...view.at.map((c, i) => c - target[i]!)))} behind it: from nearer nobody sees all of it`);

const itemsOf = ({ view }: Stage): Item[] => view.objects.map(({ object }) => ({ id: object.id, words: `${object.kind.word} ${object.id}, as ${view.plate.id} sees it`, written: fixed(object.at) }));
