/** Words beside what they name: a line for each part of a sentence, within the sheet, and off each other. */
import { label, type Box, type Mark } from '../marks.ts';
import { widthOf } from '../plan/labels.ts';

/** Height of a letter, and from line to line, beside the usual letter. */
const [SIZE, STEP] = [0.92, 1.12];

export class Words {
  readonly marks: Mark[] = [];
  private readonly taken: Box[] = [];

  constructor(private readonly sheet: { readonly left: number; readonly right: number }, private readonly letter: number) {}

  /** Where the highest words begin and the lowest end; 0 without any. */
  get top(): number { return Math.min(0, ...this.taken.map(b => b.y)); }
  get bottom(): number { return Math.max(0, ...this.taken.map(b => b.y + b.h)); }

  keepOff(...boxes: readonly Box[]): void { this.taken.push(...boxes); }

  /** @param y upper edge of what they name */
  above(words: string, x: number, y: number, name: string): void { this.put(words, x, name, h => y - 0.4 * this.letter - h, -1); }
  /** @param y lower edge of what they name */
  below(words: string, x: number, y: number, name: string): void { this.put(words, x, name, () => y + 0.3 * this.letter, 1); }

  /** A short word where it belongs, whatever else is there. */
  beside(text: string, x: number, y: number): void { this.marks.push(label(text, x, y, SIZE * this.letter, 'letter halo', 'middle')); }

  private put(words: string, x: number, name: string, top: (h: number) => number, way: 1 | -1): void {
    const { letter, sheet: { left, right } } = this;
    const lines = words.split(', ').map((l, i, all) => (i < all.length - 1 ? `${l},` : l));
    const [size, step] = [SIZE * letter, STEP * letter];
    const [w, h] = [Math.max(...lines.map(l => widthOf(l, size))), lines.length * step];
    const middle = Math.min(right - w / 2, Math.max(left + w / 2, x));
    let box: Box = { x: middle - w / 2, y: top(h), w, h };
    for (let tries = 0; tries < 20; tries++) {
      const other = this.taken.find(b => b.x < box.x + box.w && box.x < b.x + b.w && b.y < box.y + box.h && box.y < b.y + b.h);
      if (!other) break;
      box = { ...box, y: way > 0 ? other.y + other.h + 0.2 * letter : other.y - h - 0.2 * letter };
    }
    this.taken.push(box);
    lines.forEach((l, i) => this.marks.push(label(l, middle, box.y + (i + 0.8) * step, size, name, 'middle')));
  }
}
