import { afterEach, expect, it } from 'vitest';
import type { CodeLens } from 'vscode-languageserver/node';
import { whelk } from '../features/source.ts';
import { startEditor, type Editor, type Settings } from './editor.ts';

let editor: Editor;
afterEach(() => editor.close());
async function titles(textDocument: object, more: Settings & { readonly workspace?: object } = {}): Promise<string[]> {
  const { workspace = {}, ...settings } = more;
  editor = await startEditor({ capabilities: { textDocument: { codeLens: {}, ...textDocument }, workspace }, ...settings });
  const page = await editor.open(`\ufeff${whelk.replaceAll('\n', '\r\n')}`);
  return (await page.ask<CodeLens[]>('textDocument/codeLens')).map(l => `${l.range.start.line} ${l.command!.title} ${l.command!.command}|`);
}

it('figures stand above the setup and above its beams', async () => {
  expect(await titles({})).toEqual(['1 mismatch 84 ± 7 mm |', '18 reference 1471 ± 3 mm |', '21 object 1555 ± 6 mm |']);
});
it('what the hints of the same client say is not said again', async () => expect(await titles({ inlayHint: {} })).toEqual([]));
it('unless these are off', async () => {
  const configuration = (params: unknown): unknown[] => (params as { items: { section: string }[] }).items.map(i => (i.section === 'platewright.hints' ? { armTotals: false } : { setups: false }));
  expect(await titles({ inlayHint: {} }, { workspace: { configuration: true }, answers: { 'workspace/configuration': configuration } })).toEqual(['18 reference 1471 ± 3 mm |', '21 object 1555 ± 6 mm |']);
});
it('nothing is offered to a client that shows none', async () => {
  editor = await startEditor();
  expect(editor.initialized!.capabilities.codeLensProvider).toBeUndefined();
});
