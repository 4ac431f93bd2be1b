import { afterEach, describe, expect, it } from 'vitest';
import type { TextEdit } from 'vscode-languageserver/node';
import { format } from '../../grammar/format.ts';
import { but, whelk } from '../features/source.ts';
import { startEditor, type Editor, type Page, type Settings } from './editor.ts';

let editor: Editor;
const open = async (text: string, settings?: Settings): Promise<Page> => (editor = await startEditor(settings)).open(text);
afterEach(() => editor.close());

describe('quick fixes', () => {
  it('shorten or lengthen one leg, and the arms match', async () => {
    const page = await open(whelk);
    const [found] = await page.findings();
    const actions = await page.actions(found!.range);
    expect(actions.length).toBeGreaterThan(1);
    for (const a of actions) {
      expect(a.title).toMatch(/^(Shorten|Lengthen) /);
      expect(a).toMatchObject({ kind: 'quickfix', diagnostics: [found] });
    }
    expect(actions.map(a => a.isPreferred)).toEqual([true, ...actions.slice(1).map(() => false)]);
    // The object arm is 84 mm too long: 468 − 84 = 384.
    await page.apply(actions.find(a => a.title.includes('468'))!.edit!);
    expect(page.text).toBe(but('468 mm', '384 mm'));
    expect(await page.codes()).toEqual([]);
  });

  it('are undone, and the finding is back', async () => {
    const page = await open(whelk);
    const undo = await page.type('468 mm', '384 mm');
    expect(await page.codes()).toEqual([]);
    await undo();
    expect(page.text).toBe(whelk);
    expect(await page.codes()).toEqual(['arms-mismatched']);
  });

  it('are plain edits for a client that knows no versions', async () => {
    const page = await open(whelk, { capabilities: { workspace: {} } });
    const [action] = await page.actions(page.range('object from'));
    expect(Object.keys(action!.edit!)).toEqual(['changes']);
    await page.apply(action!.edit!);
    expect(await page.codes()).toEqual([]);
  });

  it('correct a misspelt word, at the end of a text with carriage returns, a µ and an emoji before it', async () => {
    const page = await open('// 1 µW 😀\r\nsetup "😀 µ" {\r\n  miror M1 // 😀\r\n}\r\n');
    const [found] = await page.findings();
    expect(page.slice(found!.range)).toBe('miror');
    await page.apply((await page.actions(found!.range))[0]!.edit!);
    expect(page.text).toContain('  mirror M1 // 😀\r\n');
  });

  it('are none where there is no finding, and none of another kind', async () => {
    const page = await open(whelk);
    expect(await page.actions(page.range('mirror M1'))).toEqual([]);
    expect(await page.actions(page.range('object from'), ['refactor'])).toEqual([]);
    expect(await page.actions(page.range('object from'), ['quickfix'])).not.toEqual([]);
  });
});

describe('formatting', () => {
  const tidy = async (page: Page): Promise<TextEdit[]> => {
    const edits = await page.ask<TextEdit[]>('textDocument/formatting', { options: { tabSize: 8, insertSpaces: false } });
    await page.edit(edits);
    return edits;
  };

  it('changes blanks, and those lines only', async () => {
    const page = await open(but('  mirror M2', 'mirror   M2   ', but('    -> M1: 750 mm ± 2 mm', '->M1:750 mm±2 mm')));
    const edits = await tidy(page);
    expect(page.text).toBe(whelk);
    expect(new Set(edits.map(e => e.range.start.line)).size).toBe(2);
    expect(await tidy(page)).toEqual([]);
  });

  it('leaves lines that cannot be read', async () => {
    const text = but('  mirror M2', '      mirror §   M2');
    const page = await open(text);
    await tidy(page);
    expect(page.text).toBe(text);
  });

  it('of a text with carriage returns and a byte order mark keeps both', async () => {
    const text = `\ufeff  ${whelk.replaceAll('\n', '\r\n').replace('mirror M2', 'mirror    M2')}`;
    const page = await open(text);
    await tidy(page);
    expect(page.text).toBe(`\ufeff${format(text).text}`);
    expect(page.text).toBe(`\ufeff${whelk.replaceAll('\n', '\r\n')}`);
  });
});
