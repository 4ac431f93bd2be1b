/** The panel beside open plates: in one colour of the screen, or black, with sounds for what cannot be seen. Which colour is up to the server. Before it grows dark a card says how to come back. */
import type { Shown } from '../messages.ts';
import { Sound } from './sound.ts';
import { LIT, tonesOf, type Order } from './tones.ts';

type Dim = Shown['dim'];
/** A sound is made when nothing has changed for that long, ms: one for each change of the text. */
const CALM = 500;
const NOT_DRAWN: Dim = { hue: 'black', why: 'Nothing is drawn of the page as it is now, so the panel is black.' };

export class Dark {
  private state: 'lit' | 'asked' | 'dark' = 'lit';
  private dim = NOT_DRAWN;
  /** the colour that somebody agreed to: of another one it grows black */
  private agreed: Dim['hue'] = 'black';
  private order: Order = 'unknown';
  private text = '';
  private waiting = 0;
  private readonly sound = new Sound();
  private readonly card = document.getElementById('card')!;
  private readonly cover = document.getElementById('cover')!;
  private readonly go = document.getElementById('go-dark')!;
  private readonly beneath = [...document.querySelectorAll<HTMLElement>('header, #note, main, footer')];

  /**
   * @param plan has the keyboard while it is dark
   * @param turned it grew dark or lit: nothing goes on that was begun before
   */
  constructor(private readonly plan: SVGSVGElement, private readonly say: (words: string) => void, private readonly turned: () => void) {
    this.go.addEventListener('click', () => { this.darken(); });
    document.getElementById('stay-lit')!.addEventListener('click', () => { this.leave(); });
    this.cover.addEventListener('click', () => { this.leave(); });
    window.addEventListener('keydown', e => {
      if (this.state === 'lit' || e.ctrlKey || e.metaKey || e.altKey || (e.key !== 'Escape' && !(this.state === 'dark' && e.key.toLowerCase() === 'd'))) return;
      e.preventDefault();
      e.stopImmediatePropagation();
      this.leave();
    }, true);
  }

  /** Dark, or about to be. */
  get isDark(): boolean { return this.state !== 'lit'; }
  /** Nothing can be seen, so that no key should do anything but light it again. */
  get isBlack(): boolean { return this.state === 'dark' && this.hue === 'black'; }

  toggle(): void {
    if (this.state === 'lit') this.ask();
    else this.leave();
  }

  /** The card, in the dark already. */
  ask(): void {
    this.state = 'asked';
    this.turned();
    this.show();
    this.go.focus();
  }

  /** What is shown now; undefined while nothing is. */
  update(shown: Shown | undefined): void {
    const now = shown?.old ? undefined : shown;
    this.dim = now?.dim ?? NOT_DRAWN;
    this.order = now?.errors ?? 'unknown';
    const text = `${shown?.page ?? ''} ${shown?.version ?? ''} ${this.order}`;
    if (text !== this.text && this.state === 'dark') {
      clearTimeout(this.waiting);
      this.waiting = window.setTimeout(() => { if (this.state === 'dark') this.sound.say(tonesOf(this.order)); }, CALM);
    }
    this.text = text;
    if (this.state !== 'lit') this.show();
  }

  private darken(): void {
    this.state = 'dark';
    this.agreed = this.dim.hue;
    this.show();
    this.turned();
    this.plan.focus({ preventScroll: true });
    this.sound.begin();
    this.sound.say(tonesOf(this.order));
    this.say('The panel is dark. Escape, D or a click lights it again.');
  }

  private leave(): void {
    const was = this.state;
    this.state = 'lit';
    this.show();
    this.turned();
    this.plan.focus({ preventScroll: true });
    if (was !== 'dark') return;
    this.sound.end();
    this.sound.say(LIT);
    this.say('The panel is lit again.');
  }

  private get hue(): Dim['hue'] { return this.dim.hue === this.agreed ? this.agreed : 'black'; }

  private show(): void {
    const { state, dim } = this;
    const hue = state === 'asked' ? dim.hue : this.hue;
    // The card of a black panel is grey.
    mark('dim', state === 'lit' ? undefined : hue === 'black' ? 'grey' : hue);
    mark('cover', state === 'dark' ? hue : undefined);
    this.card.hidden = state !== 'asked';
    this.cover.hidden = state !== 'dark';
    for (const e of this.beneath) e.inert = state === 'asked';
    document.getElementById('card-why')!.textContent = dim.why;
  }
}

function mark(name: string, value: string | undefined): void {
  if (value === undefined) document.body.removeAttribute(`data-${name}`);
  else document.body.setAttribute(`data-${name}`, value);
}
