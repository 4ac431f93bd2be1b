/** Things and legs in the picture: each is a button that shows it in the text, reached by pointer and by keys. */
import type { Item } from '../messages.ts';
import { handleOn } from './handle.ts';
import { nameOf } from './name.ts';
import { ringsOf } from './rings.ts';
import { made } from './svg.ts';

/** A pointer that misses a thin line by that has hit it all the same, pixels. */
const NEAR = 6;
/** A pointer that has moved further than that was no click. */
export const STILL = 4;
const WAYS = [[0, 0], [1, 0], [-1, 0], [0, 1], [0, -1], [0.7, 0.7], [-0.7, 0.7], [0.7, -0.7], [-0.7, -0.7]] as const;

export class Items {
  private items: readonly Item[] = [];
  /** what is drawn of each item */
  private readonly elements = new Map<string, SVGGElement[]>();
  /** what is said of each already, so that a picture touches only what it changes */
  private readonly told = new WeakMap<SVGGElement, Pick<Item, 'words' | 'stays'>>();
  private tabbed: SVGGElement | undefined;
  private lit: readonly SVGGElement[] = [];
  private marked: readonly string[] = [];
  /** the one that Tab comes to */
  private current: string | undefined;
  private pointed: string | undefined;
  private pressed: { readonly x: number; readonly y: number } | undefined;
  private readonly rings = made('g');
  private readonly handles = made('g');

  /** @param choose somebody wants to see an item in the text; with `focus` to go on there */
  constructor(private readonly plan: SVGSVGElement, private readonly layer: SVGGElement, private readonly choose: (item: Item, focus: boolean) => void) {
    this.rings.setAttribute('id', 'rings');
    this.rings.setAttribute('aria-hidden', 'true');
    this.handles.setAttribute('aria-hidden', 'true');
    plan.addEventListener('pointerdown', e => { this.pressed = { x: e.clientX, y: e.clientY }; });
    plan.addEventListener('click', e => { if (this.still(e)) this.clicked(e, false); });
    plan.addEventListener('dblclick', e => { this.clicked(e, true); });
    plan.addEventListener('pointermove', e => { if (e.buttons === 0) this.point(this.at(e)); });
    plan.addEventListener('pointerleave', () => { this.point(undefined); });
    for (const turn of ['focusin', 'focusout'] as const) plan.addEventListener(turn, () => { this.draw(); });
  }

  /** Draws a picture of these items. Who has the keyboard keeps it. @returns where the items are that were not marked before */
  update(items: readonly Item[], marked: readonly string[], draw: () => void): DOMRect[] {
    const held = this.inFocus;
    draw();
    this.items = items;
    this.elements.clear();
    for (const e of this.layer.querySelectorAll<SVGGElement>('[data-item]')) {
      const id = e.getAttribute('data-item')!;
      const found = this.elements.get(id);
      if (found) found.push(e);
      else this.elements.set(id, [e]);
    }
    if (!items.some(i => i.id === this.current && this.elementOf(i.id))) this.current = items.find(i => this.elementOf(i.id))?.id;
    for (const item of items) {
      const element = this.elementOf(item.id);
      if (!element) continue;
      const words = item.written ? item.words : `${item.words}, written in another file`;
      const before = this.told.get(element);
      // The title of the picture has the same words, and is another when they are.
      if (before?.words === words && before.stays === item.stays) continue;
      if (!before) element.setAttribute('role', 'button');
      if (!before) element.setAttribute('tabindex', '-1');
      element.setAttribute('aria-label', words);
      explain(element, item);
      this.told.set(element, { words, stays: item.stays });
    }
    const fresh = this.mark(marked);
    if (held !== undefined && this.inFocus !== held) (this.elementOf(held) ?? this.plan).focus({ preventScroll: true });
    return fresh;
  }

  /** @returns where the items are that were not marked before */
  mark(ids: readonly string[]): DOMRect[] {
    const fresh = ids.filter(id => !this.marked.includes(id));
    this.marked = ids;
    this.refresh();
    return fresh.flatMap(id => this.elementOf(id)?.getBoundingClientRect() ?? []);
  }

  /** The item at a pointer, or just beside it. A line gives way to what it runs over. */
  at({ clientX, clientY }: MouseEvent): Item | undefined {
    for (const [dx, dy] of WAYS) {
      const hit = document.elementsFromPoint(clientX + dx * NEAR, clientY + dy * NEAR).filter(e => e.closest('[data-item]'));
      const id = (hit.find(e => e.tagName !== 'line') ?? hit[0])?.closest('[data-item]')?.getAttribute('data-item');
      const item = this.items.find(i => i.id === id);
      if (item) return item;
    }
    return undefined;
  }

  /** What a pointer would drag: the handle turns, the rest moves. */
  grip(e: MouseEvent): { readonly item: Item; readonly gesture: 'move' | 'turn' } | undefined {
    const id = (e.target as Element).closest('[data-turn]')?.getAttribute('data-turn');
    const turned = this.items.find(i => i.id === id);
    if (turned) return { item: turned, gesture: 'turn' };
    const item = this.at(e);
    return item && { item, gesture: 'move' };
  }

  /** The item that has the keyboard. */
  get held(): Item | undefined { return this.items.find(i => i.id === this.inFocus); }

  /** @returns whether it was a key for an item that has the keyboard */
  key(e: KeyboardEvent): boolean {
    const id = this.inFocus;
    const there = this.items.filter(i => this.elementOf(i.id));
    const at = there.findIndex(i => i.id === id);
    if (at < 0 || e.shiftKey || e.altKey) return false;
    const steps: Readonly<Record<string, number>> = { ArrowRight: at + 1, ArrowDown: at + 1, ArrowLeft: at - 1, ArrowUp: at - 1, Home: 0, End: there.length - 1 };
    const to = steps[e.key];
    if (e.key === 'Enter' || e.key === ' ') this.choose(there[at]!, e.ctrlKey || e.metaKey);
    else if (to !== undefined && !e.ctrlKey && !e.metaKey) this.focus(there[Math.max(0, Math.min(there.length - 1, to))]!.id);
    else return false;
    return true;
  }

  /** Where the item is that has the keyboard. */
  get place(): DOMRect | undefined { return this.inFocus === undefined ? undefined : this.elementOf(this.inFocus)?.getBoundingClientRect(); }

  private focus(id: string): void {
    this.current = id;
    this.refresh();
    this.elementOf(id)?.focus({ preventScroll: true });
  }

  private clicked(e: MouseEvent, focus: boolean): void {
    const item = this.at(e);
    if (!item) return;
    this.focus(item.id);
    this.choose(item, focus);
  }

  private still(e: MouseEvent): boolean {
    return this.pressed !== undefined && Math.hypot(e.clientX - this.pressed.x, e.clientY - this.pressed.y) <= STILL;
  }

  private point(item: Item | undefined): void {
    if (item?.id === this.pointed) return;
    this.pointed = item?.id;
    this.plan.classList.toggle('on-item', item !== undefined);
    this.draw();
  }

  private refresh(): void {
    const [tab, lit] = [this.current === undefined ? undefined : this.elementOf(this.current), this.marked.flatMap(id => this.elementOf(id) ?? [])];
    if (this.tabbed !== tab) this.tabbed?.setAttribute('tabindex', '-1');
    for (const e of this.lit) if (!lit.includes(e)) e.removeAttribute('aria-current');
    tab?.setAttribute('tabindex', '0');
    for (const e of lit) e.setAttribute('aria-current', 'true');
    [this.tabbed, this.lit] = [tab, lit];
    this.draw();
  }

  /** The rings lie below the items and above the table. */
  private draw(): void {
    const first = this.layer.querySelector('[data-item]');
    const top = [...this.layer.children].find(c => c === first || (first && c.contains(first)));
    if (this.rings.parentNode !== this.layer || this.rings.nextSibling !== top) this.layer.insertBefore(this.rings, top ?? null);
    const focus = document.activeElement?.matches(':focus-visible') ? this.inFocus : undefined;
    const of = (ids: readonly (string | undefined)[], name: string): SVGGElement[] => ringsOf(ids.flatMap(id => this.elementsOf(id)), this.layer, name);
    // What is dragged is where the pointer is.
    this.rings.replaceChildren(...of(this.plan.classList.contains('moving') ? [] : [this.pointed], 'pointed'), ...of(this.marked, 'at-cursor'), ...of([focus], 'in-focus'));
    const turned = this.items.filter(i => i.drags.includes('turn') && (i.id === this.inFocus || this.marked.includes(i.id)));
    this.layer.append(this.handles);
    this.handles.replaceChildren(...turned.flatMap(({ id }) => this.elementOf(id) ?? []).map(e => handleOn(e, this.layer)));
  }

  private get inFocus(): string | undefined { return this.plan.contains(document.activeElement) ? document.activeElement?.getAttribute('data-item') ?? undefined : undefined; }
  private elementsOf(id: string | undefined): readonly SVGGElement[] { return (id === undefined ? undefined : this.elements.get(id)) ?? []; }
  private elementOf(id: string): SVGGElement | undefined { return this.elementsOf(id)[0]; }
}

/** Why it stays where it is stands under what the pointer is told of it. */
function explain(element: SVGGElement, item: Item): void {
  const title = element.querySelector('title');
  if (!title) return;
  const [own = ''] = title.textContent.split('\n');
  const words = item.stays === undefined ? own : `${own}\n${nameOf(item)} ${item.stays}.`;
  if (title.textContent !== words) title.textContent = words;
}
