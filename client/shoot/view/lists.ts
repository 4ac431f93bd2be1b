/** What is known before, what is ticked off, and the times, as they stand on the page. What somebody is writing in stays as it is. */
import { made, text } from '../../review/view/dom.ts';
import type { Evening } from '../messages.ts';
import { expose, field, rest, tick, type Run } from '../run.ts';

type Change = (run: Run) => Run;

export class Lists {
  private told = '';

  constructor(private readonly main: HTMLElement, private readonly change: (by: Change) => void) {}

  nothing(words: string): void {
    this.told = '';
    this.main.replaceChildren(text('p', words, 'headline'));
  }

  /** Made anew only where the page says something else: the boxes follow what is ticked. */
  show(evening: Evening, run: Run): void {
    const told = JSON.stringify(evening);
    if (told !== this.told) {
      this.told = told;
      this.main.replaceChildren(...this.parts(evening, run));
    }
    for (const box of this.main.querySelectorAll<HTMLInputElement>('input[data-step]')) {
      const step = box.dataset['step']!;
      if (box.type === 'checkbox') box.checked = run.ticked.includes(step);
      else if (box !== document.activeElement) box.value = run.fields[step] ?? '';
    }
    const { phase, opened, exposures } = run;
    this.value('settle', run.settle, phase !== 'ready' && phase !== 'settled');
    exposures.forEach((e, i) => { this.value(boxOf(i), e.seconds, i < opened.length || phase === 'exposed' || (i === opened.length && phase === 'exposing')); });
  }

  private value(id: string, seconds: number, disabled: boolean): void {
    const box = this.main.querySelector<HTMLInputElement>(`#${id}`);
    // The page has fewer exposures by now than were begun.
    if (!box) return;
    if (box !== document.activeElement) box.value = seconds > 0 ? String(seconds) : '';
    box.disabled = disabled;
  }

  private parts(e: Evening, run: Run): HTMLElement[] {
    const [first, ...more] = e.openings;
    return [
      ...e.notes.map(n => text('p', n, 'note')), part('Before the laser is on', ...e.cautions.map(c => text('p', c, 'caution'))),
      part('Times', this.time('settle', 'Settle', run.settle, 'how long the table is left alone', rest), ...e.openings.flatMap((o, i) => this.opening(o, i, run))),
      part('While it is light', this.steps([...e.before, ...(first?.change ?? [])]), this.label('plate', 'Which plate (box and number)')),
      part('In the dark', text('p', e.dim.why, 'quiet'), text('p', 'Any screen can fog a plate, even a dim one. Test it as you test a safelight; give this panel a window of its own, full screen, turned down. The panel grows dark by itself when the table is left alone; D does it before.', 'quiet'), this.steps([...e.dark, { text: e.handsOff }, { text: e.away }])),
      ...more.map(o => part(`Then ${o.name ?? 'once more'}`, this.steps([...o.change, { text: e.handsOff }, { text: e.away }], `${o.name ?? ''}: `))),
      part('What is heard', text('p', 'A tick each second while something is counted, and a short tone for each of its last three. Two rising tones: the table has rested. One high: the shutter is open. Three long high ones: close it. Two falling: stopped. A long low one: something is amiss, and stands here in words.', 'quiet')),
    ];
  }

  private opening({ name, byPage, seconds, strips }: Evening['openings'][number], i: number, run: Run): HTMLElement[] {
    const beside = byPage !== '' ? `by light and sensitivity ${byPage}` : seconds !== undefined ? 'how long the shutter is open' : 'nothing on the page tells how long';
    return [
      this.time(boxOf(i), name === undefined ? 'Exposure' : `Exposure ${name}`, run.exposures[i]?.seconds ?? 0, beside, (r, value) => expose(r, i, value)),
      ...strips.map(s => text('p', `Test strip${s.of === '' ? '' : ` of ${s.of}`}, in half stops: ${s.times.join(', ')} s, each with its own rest.`, 'quiet')),
    ];
  }

  /** `of`: what comes twice is ticked off twice. */
  private steps(all: Evening['before'], of = ''): HTMLElement {
    const list = made('ul', 'steps');
    for (const { text: words, small, write } of all) {
      const [item, label, box] = [made('li'), made('label'), made('input')];
      box.type = 'checkbox';
      const step = of + words;
      box.dataset['step'] = step;
      box.addEventListener('change', () => { this.change(run => tick(run, step, box.checked)); });
      const said = text('span', words);
      if (small !== undefined) said.append(text('small', small));
      label.append(box, said);
      item.append(label);
      // What is counted down needs no line to write on.
      if (write !== undefined && write !== 'min') item.append(this.writing(step, `${words} ${write}`));
      list.append(item);
    }
    return list;
  }

  private label(step: string, words: string): HTMLElement {
    const label = made('label', 'line');
    label.append(text('span', words), this.writing(step, words));
    return label;
  }

  private writing(step: string, words: string): HTMLElement {
    const box = made('input');
    box.type = 'text';
    box.dataset['step'] = step;
    box.setAttribute('aria-label', words);
    box.addEventListener('input', () => { this.change(run => field(run, step, box.value)); });
    return box;
  }

  private time(id: string, words: string, seconds: number, beside: string, by: (run: Run, seconds: number) => Run): HTMLElement {
    const [label, box] = [made('label', 'line'), made('input')];
    Object.assign(box, { id, type: 'number', min: '0', step: 'any', value: seconds > 0 ? String(seconds) : '' });
    box.addEventListener('input', () => {
      const value = Number(box.value);
      this.change(run => by(run, Number.isFinite(value) && value > 0 && value <= LONGEST ? value : 0));
    });
    label.append(text('span', words), box, text('span', 's', 'unit'), text('span', beside, 'quiet'));
    return label;
  }
}
const boxOf = (opening: number): string => (opening === 0 ? 'exposure' : `exposure-${opening}`);

/** A day: nobody waits longer, and nothing is counted without an end. */
const LONGEST = 86_400;

function part(title: string, ...content: readonly HTMLElement[]): HTMLElement {
  const whole = made('section');
  whole.append(text('h2', title), ...content);
  return whole;
}
