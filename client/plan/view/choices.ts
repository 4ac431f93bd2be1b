/** Which setup of the page is shown, which of its variants, which view of it, and of which plate: lists to choose from, where there is a choice. */
import type { PictureAnswer } from '../../../server/lsp/protocol.ts';
import type { Shown } from '../messages.ts';

type Choices = PictureAnswer['choices'];

export class ChoiceLists {
  private readonly setups = listIn('setups');
  private readonly variants = listIn('variants');
  private readonly looks = listIn('looks');
  private readonly plates = listIn('plates');
  private choices: Choices = [];
  private views: Shown['looks'] = [];
  private all: readonly string[] = [];

  constructor(choose: (setup: string, variant?: string) => void, look: (name: string) => void, plate: (id: string) => void) {
    const setup = (): string | undefined => this.choices[this.setups.selectedIndex]?.setup;
    this.setups.addEventListener('change', () => { const s = setup(); if (s !== undefined) choose(s); });
    this.variants.addEventListener('change', () => {
      const s = setup();
      if (s !== undefined) choose(s, this.choices[this.setups.selectedIndex]?.variants[this.variants.selectedIndex - 1]);
    });
    this.looks.addEventListener('change', () => { const view = this.views[this.looks.selectedIndex]; if (view) look(view.name); });
    this.plates.addEventListener('change', () => { const id = this.all[this.plates.selectedIndex]; if (id !== undefined) plate(id); });
  }

  /** @param shown missing while nothing is drawn */
  update(choices: Choices, setup?: string, shown?: Shown): void {
    const variant = shown?.variant;
    this.choices = choices;
    const at = choices.findIndex(c => c.setup === setup);
    fill(this.setups, choices.map(c => c.setup || 'without a name'), at, 2);
    const variants = choices[at]?.variants ?? [];
    fill(this.variants, ['none', ...variants], variant === undefined ? 0 : variants.indexOf(variant) + 1, 2);
    this.views = shown?.looks ?? [];
    fill(this.looks, this.views.map(v => v.words), this.views.findIndex(v => v.name === shown?.look), 2);
    this.all = shown?.plate === undefined ? [] : shown.plates;
    fill(this.plates, this.all, this.all.indexOf(shown?.plate ?? ''), 2);
    this.views.forEach(({ why = '' }, i) => {
      const option = this.looks.options[i]!;
      option.disabled = why !== '';
      option.title = why;
    });
  }
}

const listIn = (id: string): HTMLSelectElement => document.querySelector<HTMLSelectElement>(`#${id} select`)!;

/** @param from so many words make it a choice */
function fill(list: HTMLSelectElement, words: readonly string[], chosen: number, from: number): void {
  list.parentElement!.hidden = words.length < from;
  // A list that is open stays open.
  if ([...list.options].map(o => o.text).join('\n') !== words.join('\n')) list.replaceChildren(...words.map(w => new Option(w)));
  if (list.selectedIndex !== chosen) list.selectedIndex = chosen;
}
