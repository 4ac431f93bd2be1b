/** What a card is written with: letters and lines, in points of 1/72 inch. */
import { whole } from '../features/card/whole.ts';

export type Doc = PDFKit.PDFDocument;
/** A millimetre, in points. */
export const MM = 72 / 25.4;

export type Face = 'plain' | 'bold' | 'slanted';
export interface Look { readonly size: number; readonly face?: Face }

/** Between lines, beside the height of the letters. */
const LEADING = 0.06;

/** Text that is nothing but text: what a page has no place for is a blank. A unit is not parted behind its stroke. */
const clean = (text: string): string => whole(text.replace(/[\p{Cc}\p{Cs}\p{Bidi_Control}\ufffe\uffff]/gu, ' ')).replace(/(?<=W)\/(?=cm²)/gu, '/\u2060');

export class Pen {
  constructor(private readonly doc: Doc) {}

  height(text: string, width: number, look: Look): number {
    if (text === '') return 0;
    return this.with(look).heightOfString(clean(text), { width, lineGap: LEADING * look.size });
  }

  wide(text: string, look: Look): number {
    return this.with(look).widthOfString(clean(text));
  }

  /** How high one line of it is. */
  line = (look: Look): number => this.with(look).currentLineHeight() + LEADING * look.size;

  text(text: string, x: number, y: number, width: number, look: Look, align: 'left' | 'right' = 'left'): void {
    if (text !== '') this.with(look).fillColor('#000').text(clean(text), x, y, { width, lineGap: LEADING * look.size, align });
  }

  /** On one line, cut off where it is longer. */
  label(text: string, x: number, y: number, width: number, look: Look): void {
    if (text !== '' && width > 0) this.with(look).fillColor('#000').text(clean(text), x, y, { width, height: this.line(look), ellipsis: true });
  }

  rule(x: number, y: number, width: number, thick: number, colour = '#000'): void {
    this.doc.moveTo(x, y).lineTo(x + width, y).lineWidth(thick).strokeColor(colour).stroke();
  }

  bar(x: number, y: number, height: number, thick: number): void {
    this.doc.rect(x, y, thick, height).fill('#000');
  }

  frame(x: number, y: number, width: number, height: number, thick = 0.9): void {
    this.doc.rect(x, y, width, height).lineWidth(thick).strokeColor('#000').stroke();
  }

  private with({ size, face = 'plain' }: Look): Doc {
    return this.doc.font(face).fontSize(size);
  }
}
