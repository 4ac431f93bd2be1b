/** The card for the bench, as an editor asks for it. */
import { afterEach, describe, expect, it } from 'vitest';
import { whelk } from '../features/source.ts';
import { startEditor, type Editor, type Settings } from './editor.ts';

let editor: Editor;
afterEach(() => editor.close());
const ask = async (text: string, more: object, settings: Settings = {}): Promise<{ setup: string; html?: string; pdf?: string; refused?: string } | null> => (await (editor = await startEditor(settings)).open(text)).ask('platewright/card', more);
const two = whelk + whelk.replace('"Whelk shell"', '"Cockle"');

it('is a whole page of HTML with a picture', async () => {
  const card = await ask(whelk, { line: 3 });
  expect(card?.setup).toBe('Whelk shell');
  expect(card?.html).toMatch(/^<!doctype html>[^]*<h1>Whelk shell<\/h1>[^]*<svg [^]*whelk\.plate[^]*<\/html>\n$/);
});
it('is that of the setup with the cursor', async () => { expect((await ask(two, { line: whelk.split('\n').length + 2 }))?.setup).toBe('Cockle'); });
it('is for A4, or for the paper that is asked for', async () => {
  expect((await ask(whelk, { line: 0 }))?.html).toContain('size: A4;');
  editor.close();
  expect((await ask(whelk, { line: 0, paper: 'letter' }))?.html).toContain('size: letter;');
});
it('of a page without a setup there is none', async () => { expect(await ask('// only a note\n', { line: 0 })).toBeNull(); });
it('takes what is no line for no line', async () => { expect((await ask(whelk, { line: 'x', paper: 7 }))?.setup).toBe('Whelk shell'); });

describe('as a PDF', () => {
  // 210 × 297 mm (ISO 216) and 8 1/2 × 11 inches, in points of 1/72 inch: ISO 32000-1, 7.7.3.3
  it.each([['a4', 595.28, 841.89], ['letter', 612, 792]])('it is of the paper that is asked for: %s', async (paper, w, h) => {
    const card = await ask(whelk, { line: 3, paper, form: 'pdf' });
    expect([card?.setup, card?.html, card?.refused]).toEqual(['Whelk shell', undefined, undefined]);
    const file = Buffer.from(card!.pdf!, 'base64').toString('latin1');
    expect(file).toMatch(/^%PDF-1\.\d[^]*%%EOF\s*$/);
    const [box, ...more] = [...new Set(file.match(/\/MediaBox \[[^\]]*\]/g))];
    expect(more).toEqual([]);
    const [x, y, width, height] = /\[(\S+) (\S+) (\S+) (\S+)\]/.exec(box!)!.slice(1).map(Number);
    expect([x, y]).toEqual([0, 0]);
    expect(width).toBeCloseTo(w, 1);
    expect(height).toBeCloseTo(h, 1);
    expect(editor.initialized?.capabilities.experimental).toEqual({ printsCards: true });
  });
  it('of a page in other letters it is refused, by their names, instead of written with gaps', async () => {
    const card = await ask(whelk.replace('"Whelk shell"', '"Раковина"'), { line: 3, form: 'pdf' });
    expect(card?.pdf).toBeUndefined();
    expect(card?.refused).toMatch(/have no “Р”, “а”, “к” and others.*HTML.*platewright card whelk\.plate -o card\.pdf/);
  });
  it('there is none where the server has no disk, and it says why and what to do', async () => {
    const card = await ask(whelk, { line: 3, form: 'pdf' }, { read: null });
    expect(card).toEqual({ setup: 'Whelk shell', refused: expect.stringMatching(/runs in a browser\. Write the card as HTML/) as string });
    expect(editor.initialized?.capabilities.experimental).toBeUndefined();
  });
  it('of a page without a setup there is none', async () => { expect(await ask('// only a note\n', { line: 0, form: 'pdf' })).toBeNull(); });
});
