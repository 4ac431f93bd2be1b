/** Every question that a client may ask of a page, with fitting params: what the server is known to answer, and what its own client asks. A test holds the list. */
import * as own from '../../server/lsp/protocol.ts';
import type { Answer } from './server.ts';

export interface Asked {
  readonly uri: string;
  readonly text: string;
  readonly lines: readonly string[];
  /** a place in the text */
  readonly position: { readonly line: number; readonly character: number };
  readonly range: { readonly start: Asked['position']; readonly end: Asked['position'] };
  /** a number that is another one in each text and place */
  readonly chance: number;
  /** Asks, and gives the answer; throws where the answer is an error that it should not be. */
  readonly ask: (method: string, params: unknown) => Promise<Answer>;
}
type Ask = (a: Asked) => Promise<unknown>;

const at: (method: string, more?: object) => Ask = (method, more = {}) => ({ ask, uri, position }) => ask(method, { textDocument: { uri }, position, ...more });
const whole: (method: string, more?: object) => Ask = (method, more = {}) => ({ ask, uri }) => ask(method, { textDocument: { uri }, ...more });
const over: (method: string, more?: object) => Ask = (method, more = {}) => ({ ask, uri, range }) => ask(method, { textDocument: { uri }, range, ...more });
const list = (v: unknown): readonly Record<string, unknown>[] => (Array.isArray(v) ? v as Record<string, unknown>[] : []);
const pick = <T>(all: readonly T[], n: number): T | undefined => all[n % Math.max(1, all.length)];
const options = { tabSize: 2, insertSpaces: true };

/** Asks for items and then for one of them. */
const resolved = (first: string, method: string, of: (result: unknown) => readonly unknown[]): Ask => async a => {
  const { result } = await a.ask(first, { textDocument: { uri: a.uri }, position: a.position, range: { start: { line: 0, character: 0 }, end: { line: a.lines.length, character: 0 } } });
  const item = pick(of(result), a.chance);
  if (item !== undefined) await a.ask(method, item);
};
const ways = (method: string): Ask => async a => {
  const { result } = await a.ask('textDocument/prepareCallHierarchy', { textDocument: { uri: a.uri }, position: a.position });
  for (const item of list(result)) await a.ask(method, { item });
};
const setupOf = async (a: Asked): Promise<string | undefined> => pick(list((await a.ask(own.AGAINST, { textDocument: { uri: a.uri } })).result), a.chance)?.['setup'] as string | undefined;
const earlier = (a: Asked): own.EarlierText => ({ text: a.lines.toSpliced(a.chance % a.lines.length, 1 + (a.chance % 2)).join('\n'), files: [] });

export const ASKS: Readonly<Record<string, Ask>> = {
  'callHierarchy/incomingCalls': ways('callHierarchy/incomingCalls'), 'callHierarchy/outgoingCalls': ways('callHierarchy/outgoingCalls'), 'textDocument/prepareCallHierarchy': at('textDocument/prepareCallHierarchy'),
  'completionItem/resolve': resolved('textDocument/completion', 'completionItem/resolve', r => list((r as { items?: unknown } | null)?.items)), 'inlayHint/resolve': resolved('textDocument/inlayHint', 'inlayHint/resolve', list),
  'textDocument/codeAction': over('textDocument/codeAction', { context: { diagnostics: [] } }), 'textDocument/codeLens': whole('textDocument/codeLens'), 'textDocument/completion': at('textDocument/completion'), 'textDocument/definition': at('textDocument/definition'),
  'textDocument/diagnostic': whole('textDocument/diagnostic'), 'textDocument/documentHighlight': at('textDocument/documentHighlight'), 'textDocument/documentLink': whole('textDocument/documentLink'), 'textDocument/documentSymbol': whole('textDocument/documentSymbol'),
  'textDocument/foldingRange': whole('textDocument/foldingRange'), 'textDocument/formatting': whole('textDocument/formatting', { options }), 'textDocument/hover': at('textDocument/hover'), 'textDocument/inlayHint': over('textDocument/inlayHint'), 'textDocument/linkedEditingRange': at('textDocument/linkedEditingRange'),
  'textDocument/onTypeFormatting': a => at('textDocument/onTypeFormatting', { ch: a.chance % 2 === 0 ? '}' : '\n', options })(a), 'textDocument/rangeFormatting': over('textDocument/rangeFormatting', { options }), 'textDocument/references': at('textDocument/references', { context: { includeDeclaration: true } }),
  'textDocument/prepareRename': at('textDocument/prepareRename'), 'textDocument/rename': a => at('textDocument/rename', { newName: pick(['Zz', 'x-1', 'M1', 'mirror', '7', '', 'a b', 'lab.x', '🐚'], a.chance) })(a),
  'textDocument/selectionRange': a => a.ask('textDocument/selectionRange', { textDocument: { uri: a.uri }, positions: [a.position, a.range.end] }), 'textDocument/signatureHelp': at('textDocument/signatureHelp'),
  'textDocument/semanticTokens/full': whole('textDocument/semanticTokens/full'), 'textDocument/semanticTokens/range': over('textDocument/semanticTokens/range'),
  'textDocument/semanticTokens/full/delta': async a => {
    const { result } = await a.ask('textDocument/semanticTokens/full', { textDocument: { uri: a.uri } });
    await a.ask('textDocument/semanticTokens/full/delta', { textDocument: { uri: a.uri }, previousResultId: (result as { resultId?: unknown } | null)?.resultId ?? '' });
  },
  'workspace/symbol': a => a.ask('workspace/symbol', { query: pick(['', 'm', 'P1', '🐚'], a.chance) }),

  [own.SUMMARY]: a => a.ask(own.SUMMARY, { textDocument: { uri: a.uri }, line: a.position.line }), [own.WHY]: a => a.ask(own.WHY, { textDocument: { uri: a.uri }, line: a.position.line }),
  [own.CARD]: a => a.ask(own.CARD, { textDocument: { uri: a.uri }, line: a.position.line, paper: a.chance % 2 === 0 ? 'a4' : 'letter' }),
  [own.PICTURE]: async a => {
    const { result } = await a.ask(own.PICTURE, { textDocument: { uri: a.uri }, line: a.position.line });
    const view = pick(list((result as { views?: unknown } | null)?.views), a.chance)?.['name'];
    if (view !== undefined) await a.ask(own.PICTURE, { textDocument: { uri: a.uri }, line: a.position.line, view, viewpoint: { x: (a.chance % 5) / 2 - 1, y: (a.chance % 7) / 3 - 1 } });
  },
  [own.DRAG]: async a => {
    const { result } = await a.ask(own.PICTURE, { textDocument: { uri: a.uri }, line: a.position.line });
    const item = pick(list((result as { items?: unknown } | null)?.items), a.chance)?.['id'];
    const far = pick([0, -350.5, 1100, 1e9, 1e308, 0.1], a.chance)!;
    if (item !== undefined) await a.ask(own.DRAG, { textDocument: { uri: a.uri }, line: a.position.line, version: 1, item, gesture: a.chance % 2 === 0 ? 'move' : 'turn', x: far, y: -far / 3, stepped: a.chance % 3 === 0, free: a.chance % 5 === 0, dropped: a.chance % 7 < 3 });
  },
  [own.USED]: a => a.ask(own.USED, { textDocument: { uri: a.uri }, before: earlier(a) }), [own.AGAINST]: whole(own.AGAINST),
  [own.AS_SHOT]: async a => {
    const { result } = await a.ask(own.AGAINST, { textDocument: { uri: a.uri } });
    for (const s of list(result)) for (const shot of list(s['shots'])) await a.ask(own.AS_SHOT, { textDocument: { uri: a.uri }, setup: s['setup'], shot: shot['name'] });
  },
  [own.HAS_SHOT]: a => a.ask(own.HAS_SHOT, { text: a.text, shot: '7' }), [own.REVIEW]: a => a.ask(own.REVIEW, { textDocument: { uri: a.uri }, before: earlier(a) }),
  [own.CHECK]: a => a.ask(own.CHECK, { pages: [a.uri] }), [own.LEARN]: a => a.ask(own.LEARN, {}), [own.HISTORY]: a => a.ask(own.HISTORY, {}), [own.STARTS]: a => a.ask(own.STARTS, {}),
  [own.READINGS]: a => a.ask(own.READINGS, { textDocument: { uri: a.uri }, line: a.position.line, day: '2026-02-18' }),
  [own.ENTER]: async a => {
    const { result } = await a.ask(own.READINGS, { textDocument: { uri: a.uri }, line: a.position.line, day: '2026-02-18' });
    const subject = pick(list((result as { readings?: unknown } | null)?.readings), a.chance)?.['subject'];
    const value = pick(['752', '752 mm ± 2 mm by tape', '-1', '1e39', '0', '3 µW/cm²', '4.5', '}', '', '🐚', '0.31'], a.chance);
    if (subject !== undefined) await a.ask(own.ENTER, { textDocument: { uri: a.uri }, line: a.position.line, subject, value, on: '2026-02-18T21:40' });
  },
  [own.LOSSES]: a => a.ask(own.LOSSES, { textDocument: { uri: a.uri }, line: a.position.line }), [own.SHOOT]: a => a.ask(own.SHOOT, { textDocument: { uri: a.uri }, line: a.position.line, day: '2026-02-18' }),
  [own.SHOT]: async a => { const setup = await setupOf(a); await a.ask(own.SHOT, { textDocument: { uri: a.uri }, ...(setup === undefined ? {} : { setup }), on: '2026-02-18', exposures: [{ seconds: pick([20, 0.1, 1e39, 1e-39], a.chance) }, ...(a.chance % 3 === 0 ? [{ name: 'second', seconds: 7 }] : [])], settle: 60, note: 'wet sand "cut" }\n🐚' }); },
  [own.OUTCOME]: async a => {
    const { result } = await a.ask(own.OUTCOME, { textDocument: { uri: a.uri }, line: a.position.line });
    const { shot, setup } = (result ?? {}) as { shot?: unknown; setup?: unknown };
    if (shot !== undefined) await a.ask(own.OUTCOME, { textDocument: { uri: a.uri }, setup, shot, words: pick(['dull at the back', 'nothing at all', '"', '', '🐚\n'], a.chance) });
  },
};
