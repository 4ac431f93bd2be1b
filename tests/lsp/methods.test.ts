/** The page of methods, held against what the server declares and answers. */
import { readFileSync, writeFileSync } from 'node:fs';
import { afterEach, expect, it } from 'vitest';
import * as protocol from 'vscode-languageserver-protocol';
import { whelk } from '../features/source.ts';
import { startEditor, type Editor } from './editor.ts';
import { ANSWERED, NOT_ANSWERED, NOT_USED, USED } from './methods.ts';

const PAGE = new URL('../../server/lsp/METHODS.md', import.meta.url);
let editor: Editor | undefined;
afterEach(() => { editor?.close(); editor = undefined; });

/** All methods that the library of the protocol knows, by its own description of them. */
const known = Object.entries(protocol).flatMap(([name, of]) => {
  const { method, messageDirection } = of as { method?: unknown; messageDirection?: unknown };
  return typeof method === 'string' && typeof messageDirection === 'string' ? [{ method, asked: name.includes('Request') && messageDirection === 'clientToServer' }] : [];
});
const unique = (all: readonly string[]): string[] => [...new Set(all)].sort();

function page(): string {
  const rows = (all: Readonly<Record<string, string>>, yes: boolean): string[] => Object.entries(all).map(([m, words]) => `| \`${m}\` | ${yes ? 'yes' : 'no'} | ${words} |`);
  const table = (...all: string[][]): string => ['| method | supported | how, or why not |', '|---|---|---|', ...all.flat().sort()].join('\n');
  return `# Methods of the protocol\n\nMade by \`UPDATE=1 npx vitest run tests/lsp/methods.test.ts\` from \`tests/lsp/methods.ts\`, which the same test holds against the server.\n\n## Asked by the client\n\n${table(rows(ANSWERED, true), rows(NOT_ANSWERED, false))}\n\n`
    + `## Told by the client; told and asked by the server\n\n${table(rows(USED, true), rows(NOT_USED, false))}\n`;
}

it('every method that the protocol has is told once', () => {
  expect(known.length).toBeGreaterThan(60);
  expect(Object.keys({ ...ANSWERED, ...NOT_ANSWERED }).sort()).toEqual(unique(known.filter(k => k.asked).map(k => k.method)));
  expect(Object.keys({ ...USED, ...NOT_USED }).sort()).toEqual(unique(known.filter(k => !k.asked).map(k => k.method)));
  for (const why of Object.values({ ...NOT_ANSWERED, ...NOT_USED })) expect(why).not.toBe('');
});

it('what is told as answered is answered, and nothing else', async () => {
  editor = await startEditor();
  const { uri } = await editor.open(whelk);
  const answers: string[] = [];
  for (const method of Object.keys({ ...ANSWERED, ...NOT_ANSWERED })) {
    // These two begin and end a session; `workspace/diagnostic` waits for nothing where nothing is known before.
    if (method === 'initialize' || method === 'shutdown') { answers.push(method); continue; }
    const position = { line: 0, character: 0 };
    const params = { textDocument: { uri }, position, positions: [], range: { start: position, end: position }, context: { diagnostics: [] }, item: { uri, selectionRange: { start: position } }, previousResultIds: [], query: '', newName: 'x', ch: '}' };
    const code = await editor.connection.sendRequest(method, params).then(() => 0, (e: unknown) => (e as { code: number }).code);
    // JSON-RPC 2.0, section 5.1: method not found.
    if (code !== -32601) answers.push(method);
  }
  expect(answers.sort()).toEqual(Object.keys(ANSWERED).sort());
});

it('what is declared is what is told', async () => {
  editor = await startEditor({ options: { checksAllPages: true }, capabilities: { textDocument: { diagnostic: {}, codeLens: {}, rename: { prepareSupport: true }, semanticTokens: { requests: { full: { delta: true } } } } } });
  // Language Server Protocol 3.17, ServerCapabilities: the provider that each method belongs to.
  const PROVIDERS: Readonly<Record<string, string>> = {
    callHierarchyProvider: 'textDocument/prepareCallHierarchy', codeActionProvider: 'textDocument/codeAction', codeLensProvider: 'textDocument/codeLens', completionProvider: 'textDocument/completion', definitionProvider: 'textDocument/definition', diagnosticProvider: 'textDocument/diagnostic',
    documentFormattingProvider: 'textDocument/formatting', documentHighlightProvider: 'textDocument/documentHighlight', documentLinkProvider: 'textDocument/documentLink', documentOnTypeFormattingProvider: 'textDocument/onTypeFormatting', documentRangeFormattingProvider: 'textDocument/rangeFormatting',
    documentSymbolProvider: 'textDocument/documentSymbol', foldingRangeProvider: 'textDocument/foldingRange', hoverProvider: 'textDocument/hover', inlayHintProvider: 'textDocument/inlayHint', linkedEditingRangeProvider: 'textDocument/linkedEditingRange', referencesProvider: 'textDocument/references',
    renameProvider: 'textDocument/rename', selectionRangeProvider: 'textDocument/selectionRange', semanticTokensProvider: 'textDocument/semanticTokens/full', signatureHelpProvider: 'textDocument/signatureHelp', workspaceSymbolProvider: 'workspace/symbol',
  };
  const { capabilities } = editor.initialized!;
  expect(Object.keys(capabilities).filter(k => k.endsWith('Provider')).sort()).toEqual(Object.keys(PROVIDERS).sort());
  for (const method of Object.values(PROVIDERS)) expect(Object.keys(ANSWERED)).toContain(method);
  expect(capabilities).toMatchObject({ diagnosticProvider: { workspaceDiagnostics: true }, semanticTokensProvider: { full: { delta: true }, range: true }, renameProvider: { prepareProvider: true }, completionProvider: { resolveProvider: true }, inlayHintProvider: { resolveProvider: true }, codeLensProvider: { resolveProvider: false } });
});

it('the page is as committed; UPDATE=1 writes it anew', () => {
  if (process.env['UPDATE'] === '1') writeFileSync(PAGE, page());
  expect(readFileSync(PAGE, 'utf8')).toBe(page());
});
