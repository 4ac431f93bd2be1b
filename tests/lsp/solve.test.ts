// What is written ? in an editor: the value stands behind it, and is written in by an action.
import { afterEach, describe, expect, it } from 'vitest';
import type { CodeAction, InlayHint } from 'vscode-languageserver/node';
import { startEditor, type Editor, type Page, type Settings } from './editor.ts';

let editor: Editor;
const open = async (text: string, settings?: Settings): Promise<Page> => (editor = await startEditor(settings)).open(text);
afterEach(() => editor.close());

/** 1471 − 794 − 300 = 377 mm. */
const page = (leg: string, ...lines: string[]): string => `setup "Whelk shell" {
  laser red {
    coherence length: 200 mm
  }
  splitter S1
  mirror M2
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1471 mm
  beam object from S1 reflected
    -> M2: 794 mm
    -> whelk: ${leg}
    -> P1: 300 mm
${lines.map(l => `  ${l}\n`).join('')}}
`;
const whole = { range: { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } } };
const found = async (p: Page): Promise<InlayHint[]> => (await p.ask<InlayHint[]>('textDocument/inlayHint', whole)).filter(h => typeof h.label === 'string');
const actions = (p: Page, of: string): Promise<CodeAction[]> => p.ask('textDocument/codeAction', { range: p.range(of), context: { diagnostics: [] } });

describe('hints', () => {
  it('stand behind the ?, tell the whole answer, and write the value when they are accepted', async () => {
    const p = await open(page('? mm', 'aim mismatch: 0 mm'));
    const [hint, ...others] = await found(p);
    expect(others).toEqual([]);
    expect(hint).toMatchObject({ position: p.range('? mm').end, label: '= 377 mm', textEdits: [{ range: p.range('? mm'), newText: '377 mm' }] });
    expect(JSON.stringify(hint!.tooltip)).toContain('| leg M2 → whelk | 377 mm |');
  });
  it('come when they are there, to a client that asks again', async () => {
    let refresh = (): void => undefined;
    const refreshed = new Promise<void>(resolve => { refresh = resolve; });
    const p = await open(page('? mm', 'aim mismatch: 0 mm'), { capabilities: { workspace: { inlayHint: { refreshSupport: true } } }, answers: { 'workspace/inlayHint/refresh': () => { refresh(); return null; } } });
    await found(p);
    await refreshed;
    expect((await found(p)).map(h => h.label)).toEqual(['= 377 mm']);
  });
  it('follow the text', async () => {
    const p = await open(page('? mm', 'aim mismatch: 0 mm'));
    expect((await found(p)).map(h => h.label)).toEqual(['= 377 mm']);
    await p.type('794 mm', '800 mm');
    expect((await found(p)).map(h => h.label)).toEqual(['= 371 mm']);
  });
  it('say that no value will do', async () => {
    const p = await open(page('? mm from 10 mm to 20 mm', 'aim mismatch: 0 mm'));
    const [hint] = await found(p);
    expect(hint).toMatchObject({ label: 'no value will do' });
    expect(hint!.textEdits).toBeUndefined();
  });
  it('are not there without a goal', async () => {
    expect(await found(await open(page('? mm')))).toEqual([]);
  });
  it('can be turned off', async () => {
    const p = await open(page('? mm', 'aim mismatch: 0 mm'), { capabilities: { workspace: { configuration: true } }, answers: { 'workspace/configuration': () => [{ found: false }] } });
    expect(await found(p)).toEqual([]);
  });
});

describe('actions', () => {
  it('write the value in', async () => {
    const p = await open(page('? mm', 'aim mismatch: 0 mm'));
    const [first] = await actions(p, '? mm');
    expect(first!.title).toBe('Write in 377 mm: mismatch 0 mm');
    expect(await actions(p, 'mirror M2')).toEqual([]);
    await p.apply(first!.edit!);
    expect(p.text).toBe(page('377 mm', 'aim mismatch: 0 mm'));
  });
  it('write all values of the page together', async () => {
    const p = await open(page('? mm', 'aim mismatch: 0 mm', 'aim reference length: 1500 mm').replace('1471 mm', '? mm'));
    const [first] = await actions(p, '? mm');
    // 1500, and 1500 − 794 − 300
    await p.apply(first!.edit!);
    expect(p.text).toBe(page('406 mm', 'aim mismatch: 0 mm', 'aim reference length: 1500 mm').replace('1471 mm', '1500 mm'));
  });
});

it('a text that moves on while it is worked at ends the work', async () => {
  const p = await open(page('? mm', 'aim mismatch: 0 mm'));
  const late = found(p).catch(() => []);
  await p.type('? mm', '377 mm');
  await late;
  expect(await found(p)).toEqual([]);
});
