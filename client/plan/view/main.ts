/** The page in the panel: shows what the panel sends, and says what somebody does with it. Computes nothing. */
import { isRemembered, isToPage, type FromPage, type Item, type Nothing, type Remembered, type Shown, type Spot, type Would } from '../messages.ts';
import { ChoiceLists } from './choices.ts';
import { Dark } from './dark.ts';
import { Drags } from './drags.ts';
import { Figures } from './figures.ts';
import { Items } from './items.ts';
import { MapPoint } from './map-point.ts';
import { patch, type Drawn } from './patch.ts';
import { CANVAS } from './svg.ts';
import { View } from './view.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromPage): void; getState(): unknown; setState(state: Remembered): void };
const editor = acquireVsCodeApi();

const plan = document.querySelector<SVGSVGElement>('#plan')!;
const layer = document.querySelector<SVGGElement>('#view')!;
const [note, nothing, said, zoom] = ['note', 'nothing', 'said', 'zoom'].map(id => document.getElementById(id)!) as [HTMLElement, HTMLElement, HTMLElement, HTMLElement];

const remembered = editor.getState();
/** the last picture, also while there is none */
let shown: Shown | undefined;
/** of which plate it was chosen to be, and from where on it */
let { plate, from }: { plate?: string | undefined; from?: Spot | undefined } = isRemembered(remembered) ? remembered : {};
let drawn: readonly Drawn<SVGElement>[] = [];

const hint = document.getElementById('hint')!;
// Its listeners come before those of the items: what is dragged is not clicked.
const drags = new Drags(plan, {
  at: e => view.at(e), under: e => items.grip(e), now: id => shown?.items.find(i => i.id === id), show: would, say,
  ask: drag => { editor.postMessage(drag); },
});
const items = new Items(plan, layer, choose);
const view = new View(plan, layer, e => items.grip(e as MouseEvent) !== undefined, remember);
const lists = new ChoiceLists((setup, variant) => { editor.postMessage({ kind: 'choose', setup, variant }); }, look, ofPlate);
const figures = new Figures(said);
const point = new MapPoint(plan, layer, (figure, place) => { figures.tell(figure, place); });
const dark = new Dark(plan, words => { said.textContent = words; }, () => { drags.leave(); hint.textContent = ''; remember(); });

function picture(next: Shown): void {
  const other = next.page !== shown?.page || next.setup !== shown.setup || next.look !== shown.look || next.plate !== shown.plate;
  const first = shown === undefined;
  shown = next;
  dark.update(next);
  // What was dark before the window was loaded anew is not lit by that; its sounds wait for a hand.
  if (first && isRemembered(remembered) && remembered.dark === true) dark.ask();
  // While something is dragged, the picture of the text waits.
  if (drags.busy && !other) return;
  drags.leave();
  if (other) hint.textContent = '';
  nothing.hidden = true;
  zoom.hidden = false;
  plan.classList.remove('empty');
  plan.setAttribute('aria-label', next.sheet.title);
  note.textContent = next.kept ?? '';
  lists.update(next.choices, next.setup, next);
  figures.update(next.figures, next.probe);
  const fresh = items.update(next.items, next.marked, () => {
    drawn = patch(CANVAS, layer, drawn, next.sheet.marks);
    view.of(next.sheet.box);
    if (other) place(first);
  });
  point.update(next.probe);
  if (!other) show(fresh);
  remember();
}

/** The picture as it would be, or again that of the text. */
function would(next: Would['would']): void {
  if (!next) {
    if (shown) picture(shown);
    return;
  }
  items.update(next.items, shown?.marked ?? [], () => { drawn = patch(CANVAS, layer, drawn, next.sheet.marks); });
  figures.update(next.figures);
}

/** @param done it is read out too */
function say(words: string, done: boolean): void {
  hint.textContent = words;
  if (done) said.textContent = words;
}

/** The view is where it was before the window was loaded anew, else all of the picture is in sight. */
function place(first: boolean): void {
  const before = first && isRemembered(remembered) && remembered.page === shown?.page && remembered.setup === shown.setup && (remembered.look ?? shown.looks[0]?.name) === shown.look ? remembered.view : undefined;
  if (before) view.keep(before);
  else view.fit();
}

function empty({ words, example, setup, choices = [] }: Nothing): void {
  drags.leave();
  dark.update(undefined);
  hint.textContent = '';
  items.update([], [], () => { drawn = patch(CANVAS, layer, drawn, []); });
  note.textContent = '';
  plan.classList.add('empty');
  nothing.hidden = false;
  zoom.hidden = true;
  nothing.querySelector('p')!.textContent = words;
  nothing.querySelector('pre')!.textContent = example ?? '';
  lists.update(choices, setup);
  figures.update([]);
  point.update(undefined);
}

/** Of several items in a line, the first is enough. */
function show(places: readonly DOMRect[]): void {
  if (places[0]) view.seek(places[0]);
}

function choose(item: Item, focus: boolean): void {
  said.textContent = item.written ? `Shown in the text: ${item.words}` : `${item.words} is written in another file`;
  if (item.written) editor.postMessage({ kind: 'show', id: item.id, focus });
}

function remember(): void {
  if (shown) editor.setState({ page: shown.page, setup: shown.setup, variant: shown.variant, look: shown.look === shown.looks[0]?.name ? undefined : shown.look, plate, from, view: view.kept, dark: dark.isDark });
}

function look(name: string): void {
  from = undefined;
  editor.postMessage({ kind: 'look', look: name, plate });
}

function ofPlate(id: string): void {
  plate = id;
  if (shown) look(shown.look);
}

/** Views that the eye can be moved in, and how far a key moves it. */
const FROM_THE_PLATE: readonly unknown[] = ['object', 'pair'];
const STEP = 0.1;
const EYE: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-STEP, 0], ArrowRight: [STEP, 0], ArrowUp: [0, STEP], ArrowDown: [0, -STEP] };

/** @returns whether it was a key for the eye */
function eyed(e: KeyboardEvent): boolean {
  const way = e.altKey && !e.ctrlKey && !e.metaKey && !e.shiftKey ? EYE[e.key] : undefined;
  if (!way || !shown || !FROM_THE_PLATE.includes(shown.look)) return false;
  const [x, y] = [(from?.x ?? 0) + way[0], (from?.y ?? 0) + way[1]].map(v => Math.round(Math.max(-1, Math.min(1, v)) / STEP) * STEP) as [number, number];
  from = { x, y };
  editor.postMessage({ kind: 'look', look: shown.look, plate, from });
  return true;
}

/** Steps to the right and away. */
const WAYS: Readonly<Record<string, readonly [number, number]>> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

/** Steps of a turn, counterclockwise: by the signs, which on some keyboards take Alt or AltGr, and with Alt as a modifier by the keys that have them on most. */
const TURNS: Readonly<Record<string, number>> = { '[': 1, ']': -1, BracketLeft: 1, BracketRight: -1 };

/** @returns whether it was a key that moves or turns a thing */
function stepped(e: KeyboardEvent): boolean {
  const item = items.held;
  if (!item || e.metaKey || (e.ctrlKey && !e.getModifierState('AltGraph'))) return false;
  const free = e.altKey && e.code in TURNS;
  const [way, turn] = [e.shiftKey ? WAYS[e.key] : undefined, TURNS[free ? e.code : e.key]];
  if (way) drags.step(item, 'move', way, e.altKey);
  else if (turn !== undefined) drags.step(item, 'turn', [turn, 0], free);
  else return false;
  return true;
}

const KEYS: Readonly<Record<string, () => void>> = {
  '+': () => { view.step(1); }, '=': () => { view.step(1); }, '-': () => { view.step(-1); }, '−': () => { view.step(-1); }, 0: () => { view.fit(); },
  d: () => { dark.toggle(); }, D: () => { dark.toggle(); }, ArrowLeft: () => { view.pan(-1, 0); }, ArrowRight: () => { view.pan(1, 0); }, ArrowUp: () => { view.pan(0, -1); }, ArrowDown: () => { view.pan(0, 1); },
};
plan.addEventListener('keydown', e => {
  if (dark.isBlack) return;
  const act = e.ctrlKey || e.metaKey || e.altKey ? undefined : KEYS[e.key];
  if (eyed(e) || stepped(e)) e.stopPropagation(); // the editor has uses of its own for these
  else if (point.key(e)) { if (point.inSight) view.seek(point.inSight); } else if (items.key(e)) { if (items.place) view.seek(items.place); } else if (act) act();
  else return;
  e.preventDefault();
});
plan.addEventListener('pointermove', e => { figures.point(view.at(e)); });
plan.addEventListener('pointerleave', () => { figures.point(); });
// A hand on the table takes the keyboard there.
plan.addEventListener('pointerdown', () => { if (!drags.busy) hint.textContent = ''; });
// Not while it takes hold of something: the handle would be drawn anew under it, and the picture be moved as well.
plan.addEventListener('pointerdown', e => { if (!items.grip(e)) plan.focus({ preventScroll: true }); });
for (const [id, key] of [['smaller', '-'], ['larger', '+'], ['fit', '0'], ['darken', 'd']] as const) document.getElementById(id)!.addEventListener('click', () => { KEYS[key]!(); });

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  if (!isToPage(data)) return;
  if (data.kind === 'picture') picture(data);
  else if (data.kind === 'nothing') empty(data);
  else if (data.kind === 'would') drags.answered(data);
  else if (data.kind === 'darken') dark.toggle();
  else {
    if (shown) shown = { ...shown, marked: data.ids };
    show(items.mark(data.ids));
  }
});
editor.postMessage({ kind: 'ready' });
