/** A page of the language that can be changed where it stands: text, picture, figures and findings. */
import { made, text } from '../../review/view/dom.ts';
import { patch, type Drawn } from '../../plan/view/patch.ts';
import { resultOf } from '../result.ts';
import type { Looked, Question, Shown } from '../shown.ts';
import { Drawing } from './drawing.ts';
import { HTML } from './html.ts';
import { ask } from './program.ts';
import { Writing } from './writing.ts';

const root = document.body.dataset['root']!;
let pages = 0;

/** Gives a page its buttons; the rest is made when somebody first wants to change it. */
export function ready(page: HTMLElement): void {
  const code = page.querySelector<HTMLElement>('.text code')!;
  const bar = page.querySelector<HTMLElement>('.bar')!;
  let running: Running | undefined;
  const begin = (): Running => {
    edit.remove();
    return running ??= new Running(page, bar);
  };
  const edit = button('Edit', begin);
  for (const place of page.querySelectorAll<HTMLElement>('.where[data-line]')) {
    const go = button(place.textContent, () => { begin().go(go); });
    Object.assign(go.dataset, place.dataset);
    place.replaceWith(go);
  }
  const copy = button('Copy', () => {
    const words = running ? running.text : code.textContent;
    navigator.clipboard.writeText(words).then(() => { copy.textContent = 'Copied'; }, () => { copy.textContent = 'Not copied'; });
    setTimeout(() => { copy.textContent = 'Copy'; }, 2000);
  });
  bar.append(copy, edit);
}

class Running {
  private readonly number = ++pages;
  private readonly name: string;
  private readonly original: string;
  private readonly writing: Writing;
  private readonly drawing = new Drawing(`d${String(this.number)}-`);
  private readonly figure = made('figure', 'plan');
  private readonly note = text('p', '', 'kept');
  private readonly result: HTMLElement;
  private readonly report = made('pre');
  private readonly back: HTMLButtonElement;
  private readonly lists: HTMLElement;
  private readonly said: HTMLElement;
  private drawn: readonly Drawn<HTMLElement>[] = [];
  private files: Question['files'] | undefined;
  private wanted: Question['wanted'] = { report: false };
  /** the last that had no line that cannot be read */
  private good: Looked | undefined;
  /** that the picture is of */
  private setup = '';

  constructor(private readonly page: HTMLElement, bar: HTMLElement) {
    this.name = page.dataset['name']!;
    this.writing = new Writing(page.querySelector<HTMLElement>('.text code')!, this.name, () => { this.look(); });
    this.original = this.writing.text;
    page.querySelector('.text')!.append(this.writing.area);
    page.classList.add('live');

    this.back = button('Back to the original', () => { this.writing.replace(this.original); });
    this.back.disabled = true;
    this.lists = made('span', 'lists');
    bar.append(button('Download', () => { this.download(); }), this.back);

    this.result = page.querySelector<HTMLElement>('.result')!;
    this.result.textContent = '';
    this.result.addEventListener('click', e => { this.go(e.target as HTMLElement); });
    page.querySelector('.shown > .plan')?.remove();
    this.figure.append(this.drawing.svg);
    // On a phone it is wider than the screen.
    this.figure.tabIndex = 0;
    this.note.setAttribute('role', 'status');
    this.said = text('p', '', 'unseen');
    this.said.setAttribute('role', 'status');
    const details = made('details');
    this.report.tabIndex = 0;
    details.append(text('summary', 'The page of results'), this.report);
    details.addEventListener('toggle', () => { this.wanted = { ...this.wanted, report: details.open }; this.look(); });
    page.querySelector('.shown')!.prepend(this.lists, this.note, this.figure);
    const keys = text('p', 'Tab indents. Escape and then Tab leaves the text.', 'keys');
    keys.id = `keys-${String(this.number)}`;
    this.writing.area.setAttribute('aria-describedby', keys.id);
    page.querySelector('.shown')!.append(details, keys, this.said);
    this.writing.area.focus({ preventScroll: true });
    this.writing.area.setSelectionRange(0, 0);
    void this.begin();
  }

  get text(): string { return this.writing.text; }

  private async begin(): Promise<void> {
    const { beside } = this.page.dataset;
    try {
      this.files = beside === undefined ? {} : await (await fetch(beside)).json() as Question['files'];
      this.look();
    } catch {
      this.failed('The files that lie beside this page could not be loaded. Load the page anew.');
    }
  }

  private look(): void {
    this.back.disabled = this.text === this.original;
    if (this.files) ask(root, { from: this.number, name: this.name, text: this.text, files: this.files, wanted: this.wanted }, looked => { this.show(looked); });
  }

  private show(looked: Looked | undefined): void {
    if (!looked) {
      this.failed('The program could not be started, or has failed. It needs a site that is served, not opened from a file. Load the page anew.');
      return;
    }
    this.writing.colour(looked);
    const kept = this.kept(looked);
    const from = kept ? this.good! : looked;
    if (!kept) this.good = looked;
    this.note.textContent = kept ?? why(looked.picture) ?? '';
    this.page.classList.toggle('old', kept !== undefined);
    this.figure.hidden = !from.picture?.sheet;
    if (from.picture?.sheet) this.drawing.show(from.picture.sheet);
    this.choices(from.picture);
    this.drawn = patch<HTMLElement>(HTML, this.result, this.drawn, resultOf({ ...looked, figures: from.figures }, root, true));
    if (from.report !== undefined) this.report.textContent = from.report;
    this.report.parentElement!.hidden = !from.picture;
    const n = looked.findings.length;
    this.said.textContent = n === 0 ? 'Nothing found.' : `${String(n)} finding${n === 1 ? '' : 's'}.`;
  }

  /** Why the picture is that of an earlier text. */
  private kept({ torn, picture }: Looked): string | undefined {
    if (!this.good?.picture) return undefined;
    if (torn !== undefined) return `Line ${String(torn + 1)} cannot be read. Picture and figures are those of the text before that.`;
    return picture ? undefined : 'There is no setup in the text. Picture and figures are those of the text before that.';
  }

  private failed(words: string): void {
    this.note.textContent = words;
    this.page.classList.add('old');
  }

  /** What else of the page can be looked at. */
  private choices(picture: Shown | undefined): void {
    if (!picture) return;
    const { setup, variant, choices, view, views, plate, plates } = picture;
    this.setup = setup;
    const variants = choices.find(c => c.setup === setup)?.variants ?? [];
    const lists = [
      choices.length > 1 ? this.list('Setup', choices.map(c => [c.setup, c.setup]), setup, to => ({ report: this.wanted.report, setup: to })) : undefined,
      variants.length > 0 ? this.list('Variant', [['', 'as written'], ...variants.map(v => [v, v] as const)], variant ?? '', to => ({ ...this.wanted, setup: this.setup, variant: to })) : undefined,
      this.list('View', views.filter(v => v.why === undefined).map(v => [v.name, v.words]), view, to => ({ ...this.wanted, view: to })),
      plate !== undefined && plates.length > 1 ? this.list('Plate', plates.map(p => [p, p]), plate, to => ({ ...this.wanted, plate: to })) : undefined,
    ].filter(l => l !== undefined);
    // What has the keyboard keeps it.
    const key = JSON.stringify([choices, variants, views, plates]);
    if (this.lists.dataset['key'] === key) this.lists.querySelectorAll('select').forEach((s, i) => { s.value = lists[i]?.querySelector('select')!.value ?? s.value; });
    if (this.lists.dataset['key'] === key && this.lists.childElementCount === lists.length) return;
    this.lists.dataset['key'] = key;
    this.lists.replaceChildren(...lists);
  }

  private list(words: string, options: readonly (readonly [string, string])[], chosen: string, wanted: (to: string) => Question['wanted']): HTMLElement | undefined {
    if (options.length < 2) return undefined;
    const label = made('label');
    const select = made('select');
    select.append(...options.map(([value, shown]) => { const o = text('option', shown); o.value = value; return o; }));
    select.value = chosen;
    select.addEventListener('change', () => { this.wanted = wanted(select.value); this.look(); });
    label.append(text('span', words), select);
    return label;
  }

  /** To the place of a finding. */
  go(target: HTMLElement): void {
    const { line, start, end } = target.dataset;
    if (line !== undefined) this.writing.select(Number(line), Number(start), Number(end));
  }

  private download(): void {
    const link = made('a');
    link.href = URL.createObjectURL(new Blob([this.text], { type: 'text/plain' }));
    link.download = this.name;
    link.click();
    setTimeout(() => { URL.revokeObjectURL(link.href); }, 10_000);
  }
}

/** Why there is no picture. */
const why = (picture: Shown | undefined): string | undefined => (picture && !picture.sheet ? picture.views.find(v => v.name === picture.view)?.why : undefined);

function button(words: string, act: () => void): HTMLButtonElement {
  const b = text('button', words);
  b.type = 'button';
  b.addEventListener('click', act);
  return b;
}
