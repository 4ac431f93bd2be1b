import { afterEach, describe, expect, it } from 'vitest';
import type { DocumentLink, FoldingRange, InlayHint, InlayHintLabelPart, SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver/node';
import { numberEdits } from '../../server/features/number-edits.ts';
import { TOKEN_TYPES } from '../../server/features/token-legend.ts';
import { but, whelk } from '../features/source.ts';
import { startEditor, type Editor, type Page, type Settings } from './editor.ts';

let editor: Editor;
const open = async (text: string, settings?: Settings): Promise<Page> => (editor = await startEditor(settings)).open(text);
afterEach(() => editor.close());

const whole = { range: { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } } };
/** Words with their types, as a client reads them. */
function words(page: Page, { data }: SemanticTokens): string[] {
  const found: string[] = [];
  let [line, character] = [0, 0];
  for (let i = 0; i < data.length; i += 5) {
    const [down, right, length, type, modifiers] = data.slice(i, i + 5) as [number, number, number, number, number];
    [line, character] = [line + down, down > 0 ? right : character + right];
    found.push(`${page.slice({ start: { line, character }, end: { line, character: character + length } })}·${TOKEN_TYPES[type]!}${modifiers & 1 ? '!' : ''}`);
  }
  return found;
}
const hints = (page: Page, range = whole): Promise<InlayHint[]> => page.ask('textDocument/inlayHint', range);
const label = (h: InlayHint): string => (h.label as InlayHintLabelPart[]).map(p => p.value).join('');

describe('colours', () => {
  it('count UTF-16 units, behind a byte order mark, emoji and carriage returns', async () => {
    const page = await open('\ufeffinventory lab {\r\n  laser red // 😀\r\n}\r\nsetup "😀 µ" {\r\n  laser µ1 = lab.red\r\n}');
    expect(words(page, await page.ask('textDocument/semanticTokens/full'))).toEqual(['lab·namespace!', 'laser·type', 'red·item!', 'laser·type', 'µ1·variable!', 'lab·namespace', 'red·item']);
  });
  it('are those of the lines that are seen', async () => {
    const page = await open(whelk);
    expect(words(page, await page.ask('textDocument/semanticTokens/range', { range: { start: page.range('mirror M1').start, end: page.range('mirror M2').end } }))).toEqual(['mirror·type', 'M1·variable!', 'mirror·type', 'M2·variable!']);
  });
  it('have the names that the server tells', async () => {
    await open(whelk);
    expect(editor.initialized!.capabilities.semanticTokensProvider).toMatchObject({ legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: ['declaration', 'readonly'] }, full: true, range: true });
  });
});

describe('changes of colours', () => {
  const full = { requests: { full: { delta: true }, range: true }, tokenTypes: [], tokenModifiers: [], formats: ['relative'] };
  const start = (): Promise<Page> => open(whelk, { capabilities: { textDocument: { semanticTokens: full } } });
  const changed = (page: Page, previousResultId: string): Promise<SemanticTokens & SemanticTokensDelta> => page.ask('textDocument/semanticTokens/full/delta', { previousResultId });
  const applied = (data: readonly number[], edits: SemanticTokensDelta['edits']): number[] => edits.reduceRight((all, e) => [...all.slice(0, e.start), ...e.data ?? [], ...all.slice(e.start + e.deleteCount)], [...data]);

  it('make the old ones the new ones', async () => {
    const page = await start();
    expect(editor.initialized!.capabilities.semanticTokensProvider).toMatchObject({ full: { delta: true } });
    const first = await page.ask<SemanticTokens>('textDocument/semanticTokens/full');
    await page.type('mirror M3', 'plate P9');
    const { resultId, edits } = await changed(page, first.resultId!);
    // `plate` is one letter shorter than `mirror`: that length and how far the name lies behind it change, and with M3 gone where it is used.
    expect(edits.length).toBeGreaterThan(0);
    const whole = await page.ask<SemanticTokens>('textDocument/semanticTokens/full');
    expect(applied(first.data, edits)).toEqual(whole.data);
    expect(resultId).not.toBe(first.resultId);
  });
  it('are none where nothing has changed', async () => {
    const page = await start();
    const { resultId } = await page.ask<SemanticTokens>('textDocument/semanticTokens/full');
    expect((await changed(page, resultId!)).edits).toEqual([]);
  });
  it('are all of them where the old ones are not known', async () => {
    const page = await start();
    const { data } = await page.ask<SemanticTokens>('textDocument/semanticTokens/full');
    expect((await changed(page, 'elsewhere')).data).toEqual(data);
  });
});

it('a piece of numbers is replaced by another', () => {
  expect(numberEdits([1, 2, 3, 4], [1, 9, 9, 4])).toEqual([{ start: 1, deleteCount: 2, data: [9, 9] }]);
  expect(numberEdits([1, 1], [1, 1, 1])).toEqual([{ start: 2, deleteCount: 0, data: [1] }]);
  expect(numberEdits([1, 2, 2], [1, 2])).toEqual([{ start: 2, deleteCount: 1, data: [] }]);
  expect(numberEdits([], [])).toEqual([]);
});

describe('hints', () => {
  it('stand behind the text, name the reference, and are explained when somebody points', async () => {
    const page = await open(whelk, { capabilities: { textDocument: { inlayHint: { resolveSupport: { properties: ['tooltip'] } } } } });
    const found = await hints(page);
    expect(found.map(label)).toEqual(['in all 1471 ± 3 mm', 'in all 1555 ± 6 mm', '· mismatch 84 ± 7 mm']);
    expect(found[2]).toMatchObject({ position: page.range('300 mm ± 3 mm').end, paddingLeft: true });
    expect((found[2]!.label as InlayHintLabelPart[])[1]!.location).toEqual({ uri: page.uri, range: page.range('reference') });
    expect(found[2]!.tooltip).toBeUndefined();
    const explained = await editor.connection.sendRequest<InlayHint>('inlayHint/resolve', found[2]);
    expect(explained.tooltip).toMatchObject({ kind: 'markdown', value: expect.stringMatching(/^\*\*84 ± 7 mm\*\*: mismatch of object/) as string });
  });
  it('are explained at once to a client that will not ask', async () => {
    const page = await open(whelk);
    expect((await hints(page))[2]!.tooltip).toMatchObject({ kind: 'markdown' });
  });
  it('are those of the lines that are seen', async () => {
    const page = await open(whelk);
    expect((await hints(page, { range: { start: page.range('beam object').start, end: page.range('-> M3').end } })).map(label)).toEqual(['in all 1555 ± 6 mm']);
  });

  const until = async (test: () => boolean): Promise<void> => { for (let n = 0; n < 200 && !test(); n++) await new Promise(r => { setTimeout(r, 5); }); };
  it('come and go with the settings, where the client is asked for them', async () => {
    let settings: unknown = { legLengths: true, armTotals: false, mismatch: true };
    let refreshed = 0;
    const page = await open(whelk, {
      capabilities: { workspace: { configuration: true, inlayHint: { refreshSupport: true }, didChangeConfiguration: { dynamicRegistration: true } } },
      answers: { 'workspace/configuration': p => (p as { items: { section: string }[] }).items.map(i => (i.section === 'platewright.hints' ? settings : null)), 'workspace/inlayHint/refresh': () => { refreshed++; return null; } },
    });
    expect((await hints(page)).map(label)).toEqual(['· mismatch 84 ± 7 mm']);
    settings = { mismatch: false };
    await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    expect((await hints(page)).map(label)).toEqual(['in all 1471 ± 3 mm', 'in all 1555 ± 6 mm']);
    await until(() => refreshed > 0);
    expect(refreshed).toBe(1);
  });
  it('come and go with the settings that a client tells', async () => {
    const page = await open(whelk);
    await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: { platewright: { hints: { armTotals: false } } } });
    expect((await hints(page)).map(label)).toEqual(['· mismatch 84 ± 7 mm']);
    for (const settings of [null, 7, { platewright: null }, { platewright: { hints: 'no' } }]) await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings });
    expect(await hints(page)).toHaveLength(3);
  });
  it('are asked for again when a file that the page uses has changed', async () => {
    let refreshed = 0;
    const page = await open(`use "lab.plate"\n${but('mirror M1', 'mirror M1 = lab.flat')}`, { folder: 'file:///saltmarsh', read: () => Promise.resolve(undefined), capabilities: { workspace: { inlayHint: { refreshSupport: true } } }, answers: { 'workspace/inlayHint/refresh': () => { refreshed++; return null; } } });
    const lab = await editor.open('inventory lab {\n  mirror flat\n}\n', 'file:///saltmarsh/lab.plate');
    expect(await hints(page)).toHaveLength(3);
    await lab.type('mirror flat', 'mirror flat-50');
    await until(() => refreshed > 0);
    expect(refreshed).toBeGreaterThan(0);
    const before = refreshed;
    await page.type('468 mm', '384 mm');
    expect((await hints(page)).map(label)).toContain('in all 1471 ± 6 mm');
    expect(refreshed).toBe(before);
  });
});

it('a path is a link, in the spelling of the client', async () => {
  const page = await open('use "lab µ.plate"\n', { folder: 'file:///saltmarsh', read: () => Promise.resolve('inventory lab {\n}\n') });
  const [link, ...more] = await page.ask<DocumentLink[]>('textDocument/documentLink');
  expect(page.slice(link!.range)).toBe('lab µ.plate');
  expect(link).toMatchObject({ target: 'file:///saltmarsh/lab%20%C2%B5.plate', tooltip: 'Open lab µ.plate' });
  expect(more).toEqual([]);
});

it('folds are as many as the client takes', async () => {
  const page = await open(`// a\n// b\n${whelk}`, { capabilities: { textDocument: { foldingRange: { rangeLimit: 2 } } } });
  expect(await page.ask<FoldingRange[]>('textDocument/foldingRange')).toEqual([{ startLine: 0, endLine: 1, kind: 'comment' }, { startLine: 3, endLine: page.range('\n}').start.line }]);
});
