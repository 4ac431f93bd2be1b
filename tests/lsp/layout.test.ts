// A setup without places is laid out by an action at its line.
import { afterEach, expect, it } from 'vitest';
import type { CodeAction } from 'vscode-languageserver/node';
import { startEditor, type Editor, type Page } from './editor.ts';

let editor: Editor;
const open = async (text: string): Promise<Page> => (editor = await startEditor()).open(text);
afterEach(() => editor.close());
const actions = async (p: Page, of: string): Promise<CodeAction[]> => (await p.ask<CodeAction[]>('textDocument/codeAction', { range: p.range(of), context: { diagnostics: [] } })).filter(a => a.title.startsWith('Lay it out'));

const page = (leg = ''): string => `setup "Cockle" {\n  laser red {\n    coherence length: 200 mm\n  }\n  splitter S1\n  mirror M1\n  mirror M2\n  object cockle\n  plate P1\n  beam raw from red\n    -> S1${leg}\n  beam reference from S1 through\n    -> M1\n    -> P1\n  beam object from S1 reflected\n    -> M2\n    -> cockle\n    -> P1\n}\n`;

it('each says what comes of it, and writes a place for each thing', async () => {
  const p = await open(page());
  const found = await actions(p, 'setup');
  expect(found.length).toBeGreaterThan(0);
  for (const a of found) {
    expect(a.title).toMatch(/^Lay it out(?: \(\d\))?: mismatch [\d.]+ mm, reference angle/);
    expect(JSON.stringify(a.edit).match(/ at \(\d+, \d+\) mm/g)).toHaveLength(6);
  }
});

it('there is none elsewhere, nor where lengths are written', async () => {
  const p = await open(page());
  expect(await actions(p, 'mirror')).toEqual([]);
  editor.close();
  expect(await actions(await open(page(': 300 mm')), 'setup')).toEqual([]);
});
