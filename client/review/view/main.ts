/** The page in the panel: shows what the panel sends, and says what somebody does with it. Computes nothing. */
import { isToPage, type Findings, type FromPage, type Remembered, type Setup, type Shown } from '../messages.ts';
import { made, text } from './dom.ts';
import { Plans } from './plans.ts';
import { findingsOf, rowsOf, type Kind } from './rows.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromPage): void; getState(): unknown; setState(state: Remembered): void };
const editor = acquireVsCodeApi();

const [header, main, before, after, said] = [document.querySelector('header')!, document.querySelector('main')!, ...['before', 'after', 'said'].map(id => document.getElementById(id)!)] as [HTMLElement, HTMLElement, HTMLElement, HTMLElement, HTMLElement];
/** which comparison the numbers of places are of */
let n = 0;
let sentences = '';
const plans = new Plans();

function show(s: Shown): void {
  n = s.n;
  editor.setState(s.remember);
  header.hidden = false;
  before.textContent = s.before;
  after.textContent = s.after;
  const differ = s.setups.filter(x => !x.unchanged);
  const same = s.setups.filter(x => x.unchanged);
  fill([
    ...s.notes.map(words => text('p', words, 'note')),
    ...(s.nothing === undefined ? [] : [text('p', s.nothing, 'headline')]),
    ...differ.map(setup),
    ...s.inventories.map(i => part(`inventory ${i.name}`, rowsOf('change', `inventory ${i.name}`, i.changes))),
    ...outside(s),
    ...(same.length > 0 && s.nothing === undefined ? [text('p', `Nothing differs in ${same.map(x => `“${x.title}”`).join(', ')}.`, 'quiet')] : []),
  ]);
  plans.forget(differ.map(x => x.name));
  tell(s.nothing ?? differ.map(x => `${x.title}: ${x.headline}`).join(' '));
}

function setup(s: Setup): HTMLElement {
  const plan = s.sheet ? plans.of(s.name, s.sheet, s.items) : text('p', s.why ?? '', 'quiet');
  const { findings: f } = s;
  const parts: (HTMLElement | undefined)[] = [
    section('Changed on the page', s.changes, 'change', s.name),
    section('What comes of it', s.results, 'result', s.name),
    section('Expectations', s.goals, 'goal', s.name),
    s.same === undefined ? undefined : text('p', s.same, 'quiet'),
    told(f) > 0 ? part('Findings', findingsOf(s.name, f), 'h3') : undefined,
  ];
  const title = text('button', s.title, 'title');
  title.type = 'button';
  title.dataset['at'] = String(s.at);
  title.dataset['key'] = `title ${s.name}`;
  const heading = made('h2');
  heading.append(title);
  const whole = made('section');
  whole.append(heading, text('p', s.headline, 'headline'), plan, ...parts.filter(p => p !== undefined));
  return whole;
}

const told = (f: Findings): number => f.cured.length + f.added.length + f.accepted.length + f.amiss.length;

function outside({ rest: { changes, findings: f } }: Shown): HTMLElement[] {
  if (changes.length + told(f) === 0) return [];
  const whole = part('Outside the setups', rowsOf('change', 'outside', changes));
  whole.append(findingsOf('outside', f));
  return [whole];
}

const section = (title: string, rows: Setup['changes'], kind: Kind, of: string): HTMLElement | undefined => (rows.length === 0 ? undefined : part(title, rowsOf(kind, of, rows), 'h3'));

function part(title: string, content: HTMLElement, level: 'h2' | 'h3' = 'h2'): HTMLElement {
  const whole = made('section');
  whole.append(text(level, title), content);
  return whole;
}

/** What has the keyboard keeps it. */
function fill(parts: readonly HTMLElement[]): void {
  const { key } = (document.activeElement as HTMLElement | null)?.dataset ?? {};
  const { scrollTop } = document.documentElement;
  main.replaceChildren(...parts);
  document.documentElement.scrollTop = scrollTop;
  if (key !== undefined) buttons().find(b => b.dataset['key'] === key)?.focus({ preventScroll: true });
}

const buttons = (): HTMLElement[] => [...main.querySelectorAll<HTMLElement>('button[data-key]')];

/** Read out when it is another one. */
function tell(words: string): void {
  if (words !== sentences && sentences !== '') said.textContent = words;
  sentences = words;
}

const place = (e: Event): number | undefined => {
  const at = (e.target as Element).closest<HTMLElement | SVGElement>('[data-at]')?.dataset['at'];
  return at === undefined ? undefined : Number(at);
};
main.addEventListener('click', e => {
  const at = place(e);
  // A selection of letters, to copy them, is no click.
  if (at !== undefined && (window.getSelection()?.toString() ?? '') === '') editor.postMessage({ kind: 'show', n, at, focus: (e as MouseEvent).ctrlKey || (e as MouseEvent).metaKey });
});
main.addEventListener('dblclick', e => { const at = place(e); if (at !== undefined) editor.postMessage({ kind: 'show', n, at, focus: true }); });
main.addEventListener('keydown', e => {
  const at = place(e);
  if (e.key === 'Enter' && (e.ctrlKey || e.metaKey) && at !== undefined) {
    e.preventDefault();
    editor.postMessage({ kind: 'show', n, at, focus: true });
    return;
  }
  const all = buttons();
  const here = all.indexOf(document.activeElement as HTMLElement);
  const to = here < 0 || e.ctrlKey || e.altKey || e.shiftKey || e.metaKey ? undefined : { ArrowDown: here + 1, ArrowUp: here - 1, Home: 0, End: all.length - 1 }[e.key];
  if (to === undefined) return;
  e.preventDefault();
  all[to]?.focus();
});
document.getElementById('other')!.addEventListener('click', () => { editor.postMessage({ kind: 'other' }); });

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  if (!isToPage(data)) return;
  if (data.kind === 'review') {
    show(data);
    return;
  }
  if (data.remember) editor.setState(data.remember);
  before.textContent = after.textContent = '';
  header.hidden = false;
  fill([text('p', data.words, 'headline')]);
  tell(data.words);
});
editor.postMessage({ kind: 'ready' });
