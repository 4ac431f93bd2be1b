import { afterEach, describe, expect, it } from 'vitest';
import { but, whelk } from '../features/source.ts';
import { startEditor, type Editor, type Settings } from './editor.ts';

let editor: Editor;
const start = async (settings?: Settings): Promise<Editor> => (editor = await startEditor(settings));
afterEach(() => editor.close());

describe('a client that asks', () => {
  it('is offered findings on request, and none are sent', async () => {
    const page = await (await start()).open(whelk);
    expect(editor.initialized!.capabilities.diagnosticProvider).toEqual({ interFileDependencies: true, workspaceDiagnostics: false });
    expect(await page.codes()).toEqual(['arms-mismatched']);
    expect(editor.sent).toEqual([]);
  });

  it('is told what, where and how bad', async () => {
    const page = await (await start()).open(whelk);
    const [found] = await page.findings();
    expect(found).toMatchObject({ severity: 2, source: 'platewright', code: 'arms-mismatched' });
    expect(page.slice(found!.range)).toBe('object');
    expect(found!.range.start.line).toBe(page.range('beam object').start.line);
    expect(found!.message).toMatch(/\b84 mm\b/);
  });

  it('is told that nothing has changed', async () => {
    const page = await (await start()).open(whelk);
    const first = await page.pull();
    expect(await page.pull()).toEqual({ kind: 'unchanged', resultId: first.resultId });
    await page.type('468 mm', '384 mm');
    expect(await page.pull()).toMatchObject({ kind: 'full', items: [] });
  });

  it('gets notes as information and hints as hints', async () => {
    const page = await (await start()).open('setup "a" {\n  settle: 3 min\n  laser red\n  mirror M1\n  mirror M2\n  beam stop B1\n  beam raw from red\n    -> M1: 300 mm\n    -> B1: 300 mm\n}\n');
    const found = await page.findings();
    expect(found.find(f => f.code === 'unused-thing')?.severity).toBe(3);
    expect(found.find(f => f.code === 'not-computed-yet')?.severity).toBe(4);
  });

  it('is not shown what the text accepts', async () => {
    const page = await (await start()).open(but('  plate P1', '  accept arms-mismatched "on purpose"\n  plate P1'));
    expect(await page.codes()).toEqual([]);
  });

  it('has the findings of the last text after a burst of typing', async () => {
    const page = await (await start()).open(whelk);
    const burst: Promise<unknown>[] = [];
    for (let mm = 468; mm > 384; mm -= 4) {
      void page.type(`${mm} mm`, `${mm - 4} mm`);
      burst.push(page.ask('textDocument/diagnostic').catch((e: unknown) => e));
    }
    const answers = await Promise.all(burst);
    expect(answers[answers.length - 1]).toMatchObject({ kind: 'full', items: [] });
    // Those that a newer text had overtaken are cancelled, never empty.
    const cancelled = answers.filter(a => a instanceof Error) as (Error & { code: number; data: unknown })[];
    for (const e of cancelled) expect(e).toMatchObject({ code: -32802, data: { retriggerRequest: true } });
    for (const a of answers.slice(0, 12)) if (!(a instanceof Error)) expect((a as { items: unknown[] }).items).not.toEqual([]);
    expect(cancelled.length).toBeGreaterThan(0);
  });

  it('may cancel a request that waits for its turn', async () => {
    const page = await (await start()).open(whelk);
    const first = page.ask('textDocument/diagnostic');
    const { CancellationTokenSource } = await import('vscode-languageserver/node');
    const source = new CancellationTokenSource();
    const second = editor.connection.sendRequest('textDocument/hover', { textDocument: { uri: page.uri }, position: { line: 3, character: 3 } }, source.token);
    source.cancel();
    await expect(second).rejects.toMatchObject({ code: -32800 });
    await expect(first).resolves.toMatchObject({ kind: 'full' });
  });
});

describe('a client that does not ask', () => {
  it('is sent the findings of each text', async () => {
    const page = await (await start({ pulls: false })).open(whelk);
    expect(editor.initialized!.capabilities.diagnosticProvider).toBeUndefined();
    expect((await editor.next(page.uri)).diagnostics.map(d => d.code)).toEqual(['arms-mismatched']);
    const undo = await page.type('468 mm', '384 mm');
    expect(await editor.next(page.uri)).toEqual({ uri: page.uri, version: 2, diagnostics: [] });
    await undo();
    expect(await editor.next(page.uri)).toMatchObject({ version: 3, diagnostics: [{ code: 'arms-mismatched' }] });
  });

  it('is sent the last of a burst, and nothing older after it', async () => {
    const page = await (await start({ pulls: false })).open(whelk);
    for (let mm = 468; mm > 384; mm -= 4) void page.type(`${mm} mm`, `${mm - 4} mm`);
    const versions: number[] = [];
    await editor.next(page.uri, p => { versions.push(p.version!); return p.version === 22; });
    expect([...versions].sort((a, b) => a - b)).toEqual(versions);
    await page.ask('textDocument/hover', { position: { line: 0, character: 0 } });
    expect(editor.sent).toEqual([]);
  });

  it('is told to forget a page that is closed', async () => {
    const page = await (await start({ pulls: false })).open(whelk);
    await editor.next(page.uri);
    await page.close();
    expect(await editor.next(page.uri)).toEqual({ uri: page.uri, diagnostics: [] });
  });
});

describe('a page that is not open', () => {
  it('has no findings and no answers', async () => {
    const page = await (await start()).open(whelk);
    await page.close();
    expect(await page.codes()).toEqual([]);
    for (const method of ['hover', 'definition']) expect(await page.ask(`textDocument/${method}`, { position: { line: 3, character: 3 } })).toBeNull();
    expect(await page.ask('textDocument/formatting', { options: { tabSize: 2, insertSpaces: true } })).toBeNull();
    expect(await page.ask('platewright/summary', { line: 3 })).toBeNull();
  });
});
