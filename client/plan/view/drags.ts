/** Things that are dragged in the picture, or moved by keys. Where the pointer is goes to the server; what comes back is shown, and nothing is written before it is let go. */
import type { Drag, Item, Would } from '../messages.ts';
import { STILL } from './items.ts';
import { nameOf } from './name.ts';

type Place = readonly [number, number];
interface Pressed {
  readonly item: Item;
  readonly gesture: Drag['gesture'];
  readonly pointer: number;
  /** where it was pressed, in pixels */
  readonly from: Place;
  /** from the pointer to the middle of the thing, mm: it does not jump */
  readonly aside: Place;
}

/** What a drag needs of the page that it is in. */
export interface Around {
  /** where a pointer is in the sheet, mm */
  readonly at: (e: MouseEvent) => Place;
  /** what a pointer is on */
  readonly under: (e: MouseEvent) => { readonly item: Item; readonly gesture: Drag['gesture'] } | undefined;
  /** the item as it is in the text now */
  readonly now: (id: string) => Item | undefined;
  readonly ask: (drag: Drag) => void;
  /** shows the picture as it would be; undefined shows that of the text */
  readonly show: (would: Would['would']) => void;
  /** @param done it is read out too */
  readonly say: (words: string, done: boolean) => void;
}

export class Drags {
  private pressed: Pressed | undefined;
  /** it follows the pointer */
  private moving: { readonly at: Place; readonly free: boolean } | undefined;
  /** it was let go, or moved by a key, and is being written */
  private dropped: string | undefined;
  private asked = 0;
  private waiting = false;
  private frame = 0;
  private swallowed = false;
  /** steps of keys that wait for the one before */
  private readonly steps: (Pick<Drag, 'gesture' | 'x' | 'y' | 'free'> & { readonly id: string })[] = [];

  constructor(private readonly plan: SVGSVGElement, private readonly around: Around) {
    plan.addEventListener('pointerdown', e => { this.press(e); });
    plan.addEventListener('pointermove', e => { this.follow(e); });
    plan.addEventListener('pointerup', e => { this.release(e); });
    for (const end of ['pointercancel', 'lostpointercapture'] as const) plan.addEventListener(end, () => { this.leave(); });
    window.addEventListener('blur', () => { this.leave(); });
    // A drag that ends where it began was no click.
    plan.addEventListener('click', e => { if (this.swallowed) e.stopImmediatePropagation(); this.swallowed = false; }, true);
    window.addEventListener('keydown', e => {
      if (e.key !== 'Escape' || !this.pressed) return;
      e.preventDefault();
      e.stopPropagation();
      this.leave();
    }, true);
  }

  /** The picture is not that of the text. */
  get busy(): boolean { return this.moving !== undefined || this.dropped !== undefined; }

  /** Nothing is written. */
  leave(): void {
    const left = this.moving && this.pressed?.item;
    this.pressed = undefined;
    if (left) this.end(`${nameOf(left)} stays as it was written.`);
  }

  /** A key moves a thing by so many steps, or turns it by the first of them, and that is written. */
  step(item: Item, gesture: Drag['gesture'], [x, y]: Place, free: boolean): void {
    // Of a thing on the table the server says what keeps it, which may differ for a turn.
    if (item.x === undefined && !this.moves(item, gesture)) return;
    this.steps.push({ id: item.id, gesture, x, y, free });
    this.next();
  }

  answered({ n, would, words }: Would): void {
    if (n !== this.asked) return;
    this.waiting = false;
    if (this.dropped !== undefined) {
      const item = this.around.now(this.dropped);
      this.end(words ?? (item ? `Written: ${item.words}` : ''));
      if (words !== undefined) this.steps.length = 0;
      this.next();
    } else if (this.moving && this.pressed) {
      this.around.show(would);
      this.around.say(words ?? `${wordsOf(this.pressed, would)}. Not written yet: let go to write it, Escape leaves it.`, false);
      if (this.moving !== this.last) this.soon();
    }
  }

  private last: Drags['moving'];

  private press(e: PointerEvent): void {
    this.swallowed = false;
    const on = e.button === 0 && !e.ctrlKey && !this.busy && e.isPrimary ? this.around.under(e) : undefined;
    if (!on) return;
    const [x, y] = this.around.at(e);
    const { item, gesture } = on;
    this.pressed = { item, gesture, pointer: e.pointerId, from: [e.clientX, e.clientY], aside: gesture === 'move' ? [(item.x ?? x) - x, (item.y ?? y) - y] : [0, 0] };
  }

  private follow(e: PointerEvent): void {
    const { pressed } = this;
    if (e.pointerId !== pressed?.pointer || this.dropped !== undefined) return;
    if (!this.moving) {
      if (Math.hypot(e.clientX - pressed.from[0], e.clientY - pressed.from[1]) <= STILL) return;
      this.swallowed = true;
      if (!this.moves(pressed.item, pressed.gesture)) {
        this.pressed = undefined;
        return;
      }
      this.plan.setPointerCapture(e.pointerId);
      this.plan.classList.add('moving');
    }
    const [x, y] = this.around.at(e);
    this.moving = { at: [x + pressed.aside[0], y + pressed.aside[1]], free: e.altKey };
    this.soon();
  }

  private release(e: PointerEvent): void {
    const { pressed, moving } = this;
    if (e.pointerId !== pressed?.pointer) return;
    this.pressed = this.moving = undefined;
    if (moving) this.drop(pressed.item.id, pressed.gesture, moving.at, moving.free);
  }

  /** One question at a time; the newest place wins. */
  private soon(): void {
    if (this.waiting || this.frame !== 0) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      const { moving, pressed } = this;
      if (!moving || !pressed || this.waiting) return;
      this.last = moving;
      const [x, y] = moving.at;
      this.ask({ item: pressed.item.id, gesture: pressed.gesture, x, y, stepped: false, free: moving.free, dropped: false });
    });
  }

  private drop(item: string, gesture: Drag['gesture'], [x, y]: Place, free: boolean, stepped = false): void {
    this.dropped = item;
    this.ask({ item, gesture, x, y, stepped, free, dropped: true });
  }

  private ask(drag: Omit<Drag, 'kind' | 'n'>): void {
    this.waiting = true;
    this.around.ask({ kind: 'drag', n: ++this.asked, ...drag });
  }

  private next(): void {
    if (this.busy || this.pressed) return;
    const step = this.steps.shift();
    if (step) this.drop(step.id, step.gesture, [step.x, step.y], step.free, true);
  }

  /** Says why, where it does not. */
  private moves(item: Item, gesture: Drag['gesture']): boolean {
    if (item.drags.includes(gesture)) return true;
    if (item.stays !== undefined) this.around.say(`${nameOf(item)} ${item.stays}.`, true);
    return false;
  }

  private end(words: string): void {
    this.moving = this.dropped = this.last = undefined;
    this.waiting = false;
    this.asked++;
    this.plan.classList.remove('moving');
    this.around.show(undefined);
    this.around.say(words, true);
  }
}

const wordsOf = ({ item }: Pressed, would: Would['would']): string => would?.items.find(i => i.id === item.id)?.words ?? item.words;
