/** What is known before, what is ticked off, and the times, as they stand on the page. What somebody is writing in stays as it is. */
import { made, text } from '../../review/view/dom.ts';
import type { Evening } from '../messages.ts';
import { field, tick, times, type Run } from '../run.ts';

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
    for (const [name, value] of [['settle', run.settle], ['exposure', run.exposure]] as const) {
      const box = this.main.querySelector<HTMLInputElement>(`#${name}`)!;
      if (box !== document.activeElement) box.value = value > 0 ? String(value) : '';
      box.disabled = name === 'settle' ? run.phase !== 'ready' && run.phase !== 'settled' : run.phase === 'exposing' || run.phase === 'exposed';
    }
  }

  private parts(e: Evening, run: Run): HTMLElement[] {
    return [
      ...e.notes.map(n => text('p', n, 'note')), part('Before the laser is on', ...e.cautions.map(c => text('p', c, 'caution'))),
      part('Times', this.time('settle', 'Settle', run.settle, 'how long the table is left alone'), this.time('exposure', 'Exposure', run.exposure, e.byPage !== '' ? `by light and sensitivity ${e.byPage}` : e.exposure !== undefined ? 'how long the shutter is open' : 'nothing on the page tells how long'),
        ...(e.strip.length > 0 ? [text('p', `Test strip, in half stops: ${e.strip.join(', ')} s, each with its own rest.`, 'quiet')] : [])),
      part('While it is light', this.steps(e.before), this.label('plate', 'Which plate (box and number)')),
      part('In the dark', text('p', e.dim.why, 'quiet'), text('p', 'Any screen can fog a plate, even a dim one. Test it as you test a safelight; give this panel a window of its own, full screen, turned down. The panel grows dark by itself when the table is left alone; D does it before.', 'quiet'), this.steps([...e.dark, { text: e.handsOff }, { text: e.away }])),
      part('What is heard', text('p', 'A tick each second while something is counted, and a short tone for each of its last three. Two rising tones: the table has rested. One high: the shutter is open. Three long high ones: close it. Two falling: stopped. A long low one: something is amiss, and stands here in words.', 'quiet')),
    ];
  }

  private steps(all: Evening['before']): HTMLElement {
    const list = made('ul', 'steps');
    for (const { text: words, small, write } of all) {
      const [item, label, box] = [made('li'), made('label'), made('input')];
      box.type = 'checkbox';
      box.dataset['step'] = words;
      box.addEventListener('change', () => { this.change(run => tick(run, words, box.checked)); });
      const said = text('span', words);
      if (small !== undefined) said.append(text('small', small));
      label.append(box, said);
      item.append(label);
      // What is counted down needs no line to write on.
      if (write !== undefined && write !== 'min') item.append(this.writing(words, `${words} ${write}`));
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

  private time(id: 'settle' | 'exposure', words: string, seconds: number, beside: string): HTMLElement {
    const [label, box] = [made('label', 'line'), made('input')];
    Object.assign(box, { id, type: 'number', min: '0', step: 'any', value: seconds > 0 ? String(seconds) : '' });
    box.addEventListener('input', () => {
      const value = Number(box.value);
      const is = Number.isFinite(value) && value > 0 && value <= LONGEST ? value : 0;
      this.change(run => (id === 'settle' ? times(run, is, run.exposure) : times(run, run.settle, is)));
    });
    label.append(text('span', words), box, text('span', 's', 'unit'), text('span', beside, 'quiet'));
    return label;
  }
}
/** A day: nobody waits longer, and nothing is counted without an end. */
const LONGEST = 86_400;

function part(title: string, ...content: readonly HTMLElement[]): HTMLElement {
  const whole = made('section');
  whole.append(text('h2', title), ...content);
  return whole;
}
