/** What an editor asks of a server, and its answers beside those of a server that has only ever seen the texts as they are now. */
import { isDeepStrictEqual } from 'node:util';
import type { CallHierarchyItem } from 'vscode-languageserver/node';
import { AGAINST, CHECK, HISTORY, LEARN, LOSSES, OUTCOME, PICTURE, READINGS, REVIEW, SHOOT, SUMMARY, WHY } from '../../../server/lsp/protocol.ts';
import type { Page } from '../editor.ts';
import { Dice } from './dice.ts';
import { NOTEBOOK } from './pages.ts';
import { World } from './world.ts';

export type Question = readonly [method: string, params: object];

export function placeIn(text: string, dice: Dice): { line: number; character: number } {
  const lines = text.split(/\r\n|\n|\r/);
  const line = dice.below(lines.length);
  return { line, character: dice.below(lines[line]!.length + 1) };
}

const OPTIONS = { tabSize: 2, insertSpaces: true };
const DAY = '2026-02-18';

/** Of one page. Those about its text alone come first; those that try things on copies of it, and take long, last. */
export function questionsOf(text: string, name: string, dice: Dice): Question[] {
  const position = placeIn(text, dice);
  const { line } = position;
  const whole = { range: { start: { line: 0, character: 0 }, end: { line: text.split(/\r\n|\n|\r/).length, character: 0 } } };
  return [
    ['textDocument/hover', { position }], ['textDocument/definition', { position }], ['textDocument/documentSymbol', {}], ['textDocument/semanticTokens/full', {}], ['textDocument/semanticTokens/range', whole],
    ['textDocument/references', { position, context: { includeDeclaration: true } }], ['textDocument/documentHighlight', { position }], ['textDocument/documentLink', {}], ['textDocument/foldingRange', {}],
    ['textDocument/codeLens', {}], ['textDocument/prepareRename', { position }], ['textDocument/formatting', { options: OPTIONS }], ['textDocument/rangeFormatting', { ...whole, options: OPTIONS }],
    ['textDocument/completion', { position }], ['textDocument/signatureHelp', { position }], ['textDocument/selectionRange', { positions: [position] }], ['textDocument/linkedEditingRange', { position }],
    ['textDocument/prepareCallHierarchy', { position }], [SUMMARY, { line }], [AGAINST, {}], [READINGS, { line, day: DAY }], [LOSSES, { line }], [OUTCOME, { line }],
    ['textDocument/inlayHint', whole], [WHY, { line }], [PICTURE, { line }], [SHOOT, { line, day: DAY }], [REVIEW, { before: { text: NOTEBOOK[name] ?? '', files: [] } }],
    ['textDocument/codeAction', { ...whole, context: { diagnostics: [] } }],
  ];
}

/** Of all pages. */
const ALL_PAGES: readonly Question[] = [['workspace/symbol', { query: 'r' }], ['workspace/diagnostic', { previousResultIds: [] }], [CHECK, {}], [HISTORY, {}], [LEARN, {}]];

/** Names of answers and versions differ between two servers, and so does the minute by which a fix dates its line. */
const plain = (a: unknown): unknown => JSON.parse(JSON.stringify(a ?? null, (key, value: unknown) => (key === 'version' || key === 'resultId' ? 0 : value)).replace(/\d{4}-\d\d-\d\d at \d\d:\d\d/g, 'now')) as unknown;
const settled = (asked: Promise<unknown>): Promise<unknown> => asked.then(plain, (e: unknown) => String(e));

/** Steps that go from what was answered to what is asked next. */
async function ways(page: Page, found: unknown): Promise<unknown> {
  const [item] = (Array.isArray(found) ? found : []) as CallHierarchyItem[];
  return item === undefined ? null : Promise.all(['incomingCalls', 'outgoingCalls'].map(way => settled(page.ask(`callHierarchy/${way}`, { item }))));
}

/** Of the questions about a page, the last ones take long. */
const LONG = 6;

/** The first answer that differs from that of a fresh server, in words; undefined where none does. @param all false: without what takes long */
export async function difference(world: World, seed: number, all = true): Promise<string | undefined> {
  await world.turn();
  const fresh = await World.of(world.state);
  try {
    const differs = (what: string, here: unknown, there: unknown): string | undefined => (isDeepStrictEqual(here, there) ? undefined : `${what}\n  answered: ${JSON.stringify(here).slice(0, 2000)}\n  a fresh server: ${JSON.stringify(there).slice(0, 2000)}`);
    for (const [name, page] of world.open) {
      const other = fresh.open.get(name)!;
      for (const [method, params] of [['textDocument/diagnostic', {}] as Question, ...questionsOf(page.text, name, new Dice(seed)).slice(0, all ? undefined : -LONG)]) {
        const [here, there] = [await settled(page.ask(method, params)), await settled(other.ask(method, params))];
        const wrong = differs(`${name}: ${method} ${JSON.stringify(params)}`, here, there)
          ?? (method === 'textDocument/prepareCallHierarchy' ? differs(`${name}: ways from ${JSON.stringify(params)}`, await ways(page, here), await ways(other, there)) : undefined);
        if (wrong !== undefined) return wrong;
      }
    }
    for (const [method, params] of all ? ALL_PAGES : []) {
      const wrong = differs(method, ...await Promise.all([world, fresh].map(w => settled(w.editor.connection.sendRequest(method, params)))) as [unknown, unknown]);
      if (wrong !== undefined) return wrong;
    }
    return world.editor.logged.length > 0 ? `the server logged ${world.editor.logged.join('; ')}` : undefined;
  } finally { fresh.close(); }
}
