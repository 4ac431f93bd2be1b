/** Figures below the picture: those of the setup, and of a map the one under the pointer. */
import type { Shown } from '../messages.ts';

/** A pointer rests when it has not moved for that long, ms: who listens is told then, and not at each step. */
const REST = 600;

export class Figures {
  private readonly foot = document.querySelector<HTMLElement>('footer')!;
  private readonly list = document.getElementById('figures')!;
  private readonly under = document.getElementById('under')!;
  private probe: Shown['probe'];
  private resting = 0;

  /** @param said is read out */
  constructor(private readonly said: HTMLElement) {}

  update(figures: Shown['figures'], probe?: Shown['probe']): void {
    this.foot.hidden = figures.length === 0 && !probe;
    this.foot.classList.toggle('of-map', probe !== undefined);
    figures.forEach(({ label, text }, i) => {
      const row = (this.list.children[i] ?? this.list.appendChild(lineOf())) as HTMLElement;
      write(row.children[0]!, label);
      write(row.children[1]!, text);
    });
    while (this.list.children.length > figures.length) this.list.lastChild!.remove();
    this.probe = probe;
    if (!probe) this.point();
  }

  /** What somebody went to by keys is told at once. */
  tell(figure: string, place?: string): void {
    clearTimeout(this.resting);
    write(this.under, figure);
    if (place !== undefined) write(this.said, `${figure}, ${place}`);
  }

  /** @param at where the pointer is in the sheet, mm */
  point(at?: readonly [number, number]): void {
    clearTimeout(this.resting);
    const words = at ? this.read(at) : '';
    write(this.under, words);
    if (words !== '') this.resting = window.setTimeout(() => { write(this.said, words); }, REST);
  }

  /** The figure of the net that is nearest. */
  private read([x, y]: readonly [number, number]): string {
    if (!this.probe) return '';
    const { box, columns, rows, texts, words } = this.probe;
    const [across, down] = [(x - box.x) / box.w, (y - box.y) / box.h];
    if (!(across >= 0 && across <= 1 && down >= 0 && down <= 1)) return '';
    return `${words}: ${texts[Math.round(down * (rows - 1)) * columns + Math.round(across * (columns - 1))]!}`;
  }
}

function lineOf(): HTMLElement {
  const line = document.createElement('li');
  line.append(document.createElement('span'), document.createElement('b'));
  return line;
}

function write(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}
