/**
 * What no client should send: methods that are none, params of any shape, places outside, versions and addresses that are wrong, in any order, cancelled or not, bodies that
 * are no JSON. Each request is answered, and the server then does what it should.
 * An input is a list of messages, or of bodies as text; `exit` is left out, since it ends the process, and so is the number of a process that the server is to end with.
 */
import fc, { type Arbitrary } from 'fast-check';
import * as own from '../../../server/lsp/protocol.ts';
import { ANSWERED, NOT_ANSWERED, NOT_USED, USED } from '../../lsp/methods.ts';
import { WHELK } from '../../checks/library.ts';
import { ASKS } from '../asks.ts';
import { PAGE } from '../library.ts';
import { randomBy } from '../random.ts';
import { ABLE, Server } from '../server.ts';
import { hash, same, type Target } from '../target.ts';
import { anyJson, spoiled } from '../wild.ts';

const position = { line: 17, character: 9 };
const range = { start: position, end: { line: 18, character: 0 } };
/** All that a request may want to have. */
const PARAMS = {
  textDocument: { uri: PAGE }, position, range, positions: [position], context: { diagnostics: [], includeDeclaration: true, only: ['quickfix'], triggerKind: 1 }, newName: 'Zz', ch: '}', options: { tabSize: 2, insertSpaces: true }, query: 'M', previousResultId: '1', previousResultIds: [{ uri: PAGE, value: '1' }],
  item: { uri: PAGE, name: 'M1', kind: 19, range, selectionRange: range }, data: { uri: PAGE, setup: 0, result: 'P1.object.mismatch', about: { kind: 'fact' } }, label: 'mirror', line: 17, setup: 'Whelk shell', variant: 'closer', shot: '7', day: '2026-02-18', on: '2026-02-18', subject: 'reference', value: '752 mm', exposure: 20, settle: 60, words: 'dull', plate: 'P1', note: 'x',
  before: { text: WHELK, files: [{ uri: PAGE, text: null }] }, base: { text: WHELK, files: [], since: 'the last commit' }, text: WHELK, pages: [PAGE], strict: true, paper: 'a4', form: 'html', view: 'plan', viewpoint: { x: 0, y: 0 }, version: 1, gesture: 'move', x: 3, y: 4, free: false, dropped: false, stepped: false,
};
const TOLD: Readonly<Record<string, unknown>> = {
  'textDocument/didOpen': { textDocument: { uri: PAGE, languageId: 'plate', version: 1, text: WHELK } }, 'textDocument/didChange': { textDocument: { uri: PAGE, version: 2 }, contentChanges: [{ range, text: 'mirror M9\n' }] }, 'textDocument/didClose': { textDocument: { uri: PAGE } }, 'textDocument/didSave': { textDocument: { uri: PAGE } },
  'workspace/didChangeWatchedFiles': { changes: [{ uri: PAGE, type: 2 }] }, 'workspace/didChangeWorkspaceFolders': { event: { added: [{ uri: 'file:///saltmarsh', name: 'a' }], removed: [] } }, 'workspace/didChangeConfiguration': { settings: { platewright: { hints: { legLengths: 'yes' } } } }, '$/cancelRequest': { id: 1 }, '$/setTrace': { value: 'verbose' }, initialized: {}, [own.BASE]: PARAMS,
};
const INITIALIZE = { processId: null, rootUri: null, workspaceFolders: [{ uri: 'file:///saltmarsh', name: 'notebook' }], initializationOptions: { checksAllPages: true, readsFiles: true, listsFiles: true, inventoryFolders: ['/saltmarsh'], opensWhy: true, opensReview: true }, capabilities: { ...ABLE, workspace: { ...ABLE.workspace, didChangeWatchedFiles: { dynamicRegistration: true }, didChangeConfiguration: { dynamicRegistration: true } } } };
const METHODS = [...new Set([...Object.keys({ ...ANSWERED, ...NOT_ANSWERED, ...USED, ...NOT_USED, ...ASKS, ...TOLD }), own.BASE, 'unheard/of', '$/unheard', '', 'constructor', '__proto__'])].filter(m => m !== 'exit');

const message: Arbitrary<unknown> = fc.oneof(
  { weight: 6, arbitrary: fc.tuple(fc.constantFrom(...METHODS), fc.nat(5), fc.nat()).map(([method, id, seed]) => spoiled({ jsonrpc: '2.0', id, method, params: method === 'initialize' ? INITIALIZE : PARAMS }, randomBy(seed), seed % 4)) },
  { weight: 4, arbitrary: fc.tuple(fc.constantFrom(...Object.keys(TOLD)), fc.nat()).map(([method, seed]) => spoiled({ jsonrpc: '2.0', method, params: TOLD[method] }, randomBy(seed), seed % 4)) },
  { weight: 1, arbitrary: fc.tuple(fc.constantFrom(...METHODS), fc.nat(3), anyJson).map(([method, id, params]) => ({ jsonrpc: '2.0', id, method, params: JSON.parse(params) as unknown })) },
  { weight: 1, arbitrary: anyJson.map(m => JSON.parse(m) as unknown) },
);

export const protocol: Target = {
  name: 'protocol', share: 150, few: 25, inputs: fc.array(message, { maxLength: 6 }).map(all => JSON.stringify(all)), words: [...METHODS.map(m => JSON.stringify(m)), 'null', '{}', '[]', '-1', '1e9', '"x"', ...Object.keys(PARAMS).map(k => JSON.stringify(k))],
  run: async input => {
    const server = new Server(REPLIES[hash(input) % REPLIES.length]);
    try {
      await server.ask('initialize', INITIALIZE);
      server.tell('initialized', {});
      for (const { body, id } of bodiesOf(input)) {
        server.send(body);
        if (id !== undefined) waited.add(id);
      }
      // What has been heard by then was heard in order.
      server.tell('textDocument/didOpen', { textDocument: { uri: GOOD, languageId: 'plate', version: 1, text: WHELK } });
      const { result } = await server.ask('textDocument/documentSymbol', { textDocument: { uri: GOOD } });
      same('the outline of a page', namesIn(result), ['Whelk shell', 'red', 'S1', 'M1', 'M2', 'M3', 'whelk', 'P1', 'raw', 'reference', 'object']);
      for (const id of waited) await server.answered(id, `request ${String(id)}`);
    } finally {
      waited.clear();
      server.close();
    }
  },
};
/** How a client answers the questions of the server: as it should, with what makes no sense, or not at all. */
const REPLIES = [{ result: null }, { error: { code: -32601, message: 'unheard of' } }, { result: [null, 7, { uri: 3 }] }, { result: [{ hints: 'yes' }, { setups: false }] }];
const waited = new Set<string | number>();
const GOOD = 'file:///saltmarsh/good.plate';

/** As a tree or as a list, as the client wants it: it may have said otherwise meanwhile. */
const namesIn = (symbols: unknown): unknown[] => (symbols as { name: string; kind: number; children?: unknown }[] | null ?? []).flatMap(s => (s.kind === LEG ? [] : [s.name, ...namesIn(s.children ?? [])]));
/** LSP 3.17, SymbolKind.Field */
const LEG = 8;

/** What is sent, with the id of what has to be answered. An input that is no list of JSON is sent as it stands. */
function bodiesOf(input: string): { readonly body: string; readonly id?: string | number }[] {
  let all: unknown;
  try { all = JSON.parse(input); } catch { return [{ body: input }]; }
  return (Array.isArray(all) ? all : [all]).flatMap((m: unknown) => {
    if (typeof m === 'string') return [{ body: m }];
    const { id, method, jsonrpc, params } = (m ?? {}) as Record<string, unknown>;
    if (method === 'exit') return [];
    const own = method === 'initialize' && typeof params === 'object' && params !== null ? { ...m as object, params: { ...params, processId: null } } : m;
    // Findings of all pages wait for news; a request by JSON-RPC 2.0, section 4, has a version and a method.
    // 1e999 is read as a number that JSON cannot write again: it is sent as null.
    const answered = (typeof id === 'string' || (typeof id === 'number' && Number.isFinite(id))) && typeof method === 'string' && jsonrpc === '2.0' && method !== 'workspace/diagnostic';
    return [{ body: JSON.stringify(own), ...(answered ? { id } : {}) }];
  });
}
