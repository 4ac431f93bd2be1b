/** Why a plate came out as it did, as an editor asks. */
import { afterEach, describe, expect, it } from 'vitest';
import { whelk } from '../features/source.ts';
import { startEditor, type Editor, type Page, type Settings } from './editor.ts';

let editor: Editor;
const open = async (text: string, settings?: Settings): Promise<Page> => (editor = await startEditor(settings)).open(text);
afterEach(() => editor.close());

/** The whelk, 84 mm mismatched, as it came out. */
const shot = (outcome = '"dull at the back"'): string => whelk.replace(/\}\s*$/, `  shot 7 on 2026-02-11 {\n    outcome: ${outcome}\n    exposure: 20 s\n  }\n}\n`);
const opens: Settings = { options: { opensWhy: true } };

describe('a shot with an outcome', () => {
  it.each(['shot 7', 'outcome'])('at “%s” has an action that a client can open', async at => {
    const page = await open(shot(), opens);
    const [action, ...more] = await page.actions(page.range(at));
    expect(more).toEqual([]);
    expect(action).toEqual({ title: 'Why “dull at the back”?', command: { title: 'Why “dull at the back”?', command: 'platewright.why', arguments: [page.uri, page.range(at).start.line] } });
  });
  it('has none for a client that cannot open it, for one that asks for fixes only, and elsewhere', async () => {
    const page = await open(shot(), opens);
    expect(await page.actions(page.range('shot 7'), ['quickfix'])).toEqual([]);
    expect(await page.actions(page.range('exposure: 20 s'))).toEqual([]);
    editor.close();
    const other = await open(shot());
    expect(await other.actions(other.range('shot 7'))).toEqual([]);
  });
  it('is answered: the mismatch first', async () => {
    const page = await open(shot());
    const answer = await page.ask<{ title: string; markdown: string }>('platewright/why', { line: page.range('shot 7').start.line });
    expect(answer.title).toBe('Why “dull at the back”?');
    expect(answer.markdown).toContain('1. **The paths of the reference and the object beam differ**: up to 2 1/2 stops.');
    expect(answer.markdown).toContain('*Test:* Stretch a string');
  });
  it('tells the first suspects to whoever points at it', async () => {
    const page = await open(shot());
    expect(await page.hover(page.range('shot 7').start)).toContain('1. **The paths of the reference and the object beam differ**');
  });
  it('in words, without quotes, is as good', async () => {
    const page = await open(shot('dull at the back'), opens);
    expect((await page.actions(page.range('outcome')))[0]?.title).toBe('Why “dull at the back”?');
  });
  it('of no known outcome is answered by what the page speaks for', async () => {
    const page = await open(shot('"purple elephants"'));
    expect(await page.hover(page.range('shot 7').start)).toContain('no outcome that is known here');
  });
});

it('a shot without an outcome has no words', async () => {
  const page = await open(shot('""'), opens);
  expect(await page.hover(page.range('shot 7').start)).toBe('');
  expect(await page.actions(page.range('shot 7'))).toEqual([]);
});
it('any other line is answered for its setup, and one outside of all setups by nothing', async () => {
  const page = await open(`// notebook\n${shot()}`);
  expect(await page.ask('platewright/why', { line: 5 })).toMatchObject({ title: 'What holds back Whelk shell' });
  expect(await page.ask('platewright/why', { line: 0 })).toBeNull();
});
