/** The fonts that go along with the extension: cut down from the whole ones, and read by the library that prints. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import { expect, test } from 'vitest';
import { LETTERS, strange } from '../../server/pdf/letters.ts';

/** A script of the build, which has no types. */
const script = new URL('../../client/letters.mjs', import.meta.url).href;
const { cutDown } = await import(script) as { cutDown: (font: Buffer, ranges: typeof LETTERS) => Buffer };
/** What the library of fonts, which `pdfkit` brings along, tells of one. */
interface Font { hasGlyphForCodePoint(code: number): boolean; glyphForCodePoint(code: number): { path: { toSVG(): string }; advanceWidth: number }; layout(text: string): { advanceWidth: number }; readonly ascent: number; readonly unitsPerEm: number }
const read = (file: Buffer): Font => (new PDFDocument({ font: file as never }) as unknown as { readonly _font: { readonly font: Font } })._font.font;

test.each(['SerifCondensed', 'SerifCondensed-Bold'])('%s has all the letters that it is to have, each as it was and no wider', cut => {
  const whole = readFileSync(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/DejaVu${cut}.ttf`));
  const [few, all] = [read(cutDown(whole, LETTERS)), read(whole)];
  const differ: string[] = [];
  for (const [from, to] of LETTERS) {
    for (let code = from; code <= to; code++) {
      if (!few.hasGlyphForCodePoint(code)) { differ.push(`${code.toString(16)} is missing`); continue; }
      const [a, b] = [few.glyphForCodePoint(code), all.glyphForCodePoint(code)];
      if (a.path.toSVG() !== b.path.toSVG() || a.advanceWidth !== b.advanceWidth) differ.push(`${code.toString(16)} differs`);
    }
  }
  expect(differ).toEqual([]);
  expect([few.ascent, few.unitsPerEm]).toEqual([all.ascent, all.unitsPerEm]);
  // Neighbours are shifted toward each other, as in the whole font: T and o lie closer than they are wide.
  const wide = (f: Font, text: string): number => f.layout(text).advanceWidth;
  expect(wide(few, 'To')).toBeLessThan(wide(few, 'T') + wide(few, 'o'));
  expect(few.hasGlyphForCodePoint(0x416)).toBe(false);
});

test('letters that are not among them are told once each', () => {
  expect(strange(['λ = 632.8 nm ± 5 %, S1 → M1 − 3 µm ≤ ½″', 'Łódź façade'])).toEqual([]);
  expect(strange(['Жук и жук', '貝 whelk\n'])).toEqual(['Ж', 'у', 'к', 'и', 'ж', '貝']);
});
