/** Pictures of setups, as a panel asks for them. */
import { afterEach, describe, expect, it } from 'vitest';
import { startEditor, type Editor, type Page } from './editor.ts';
import type { PictureAnswer, PictureMark } from '../../server/lsp/protocol.ts';

let editor: Editor;
const open = async (text: string): Promise<Page> => (editor = await startEditor()).open(text);
afterEach(() => editor.close());

const setup = (name: string, ...more: string[]): string => `setup "${name}" {\n  table: 1200 x 900 mm\n  laser red at (60, 100) mm heading 0°\n  mirror M1 at (1000, 100) mm\n  beam stop B1 at (1000, 700) mm\n  beam raw from red\n    -> M1\n    -> B1\n${more.map(l => `  ${l}\n`).join('')}}\n`;
const all = (marks: readonly PictureMark[]): PictureMark[] => marks.flatMap(m => [m, ...all(m.children)]);
const ask = (page: Page, params: object = {}): Promise<PictureAnswer> => page.ask<PictureAnswer>('platewright/picture', params);

describe('a picture', () => {
  it('is of the setup that the line is in, and says which others there are', async () => {
    const page = await open(setup('Cockle') + setup('Whelk', 'variant "farther" {', '  M1 at (1100, 100) mm', '}'));
    const answer = await ask(page, { line: 12 });
    expect(answer).toMatchObject({ version: 1, setup: 'Whelk', choices: [{ setup: 'Cockle', variants: [] }, { setup: 'Whelk', variants: ['farther'] }] });
    expect((await ask(page, { line: 12, setup: 'Cockle' })).setup).toBe('Cockle');
    expect((await ask(page, { line: 0 })).setup).toBe('Cockle');
  });
  it('of a variant shows what that changes', async () => {
    const page = await open(setup('Whelk', 'variant "farther" {', '  M1 at (1100, 100) mm', '}'));
    const titles = (a: PictureAnswer): string[] => all(a.sheet!.marks).flatMap(m => (m.tag === 'title' ? [m.text!] : []));
    expect(titles(await ask(page))).toContain('mirror M1, (1000, 100) mm');
    expect(titles(await ask(page, { variant: 'farther' }))).toContain('mirror M1, (1100, 100) mm');
    // A variant that is gone: the setup itself.
    expect(titles(await ask(page, { variant: 'nearer' }))).toContain('mirror M1, (1000, 100) mm');
  });
  it('tells where its things and legs stand in the text', async () => {
    const page = await open(setup('Whelk'));
    const answer = await ask(page);
    const items = new Map(answer.items.map(i => [i.id, i]));
    expect(items.get('M1')).toMatchObject({ words: 'mirror M1 at (1000, 100) mm', range: page.range('M1') });
    expect(items.get('raw.2')!.range!.start.line).toBe(7);
    const drawn = new Set(all(answer.sheet!.marks).flatMap(m => m.attributes['data-item'] ?? []));
    expect([...items.keys()].filter(id => !drawn.has(id))).toEqual([]);
  });
  it('of a page without places has no sheet, of a page without setups there is none', async () => {
    const page = await open('setup "String" {\n  laser red\n  mirror M1\n  beam raw from red\n    -> M1: 100 mm\n}\n');
    expect((await ask(page)).sheet).toBeUndefined();
    editor.close();
    expect(await ask(await open('// nothing yet\n'))).toBeNull();
  });
  it('holds text as text', async () => {
    const page = await open(setup('<img src=x onerror=alert(1)>'));
    const { sheet } = await ask(page);
    expect(sheet!.title).toBe('<img src=x onerror=alert(1)>');
    expect(new Set(all(sheet!.marks).map(m => m.tag)).has('img')).toBe(false);
  });
});
