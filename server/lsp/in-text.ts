/** What an editor shows in the text: colours of words, links, hints, and what can be folded. */
import { FoldingRangeKind, type ClientCapabilities, type SemanticTokens, type SemanticTokensDelta, type ServerCapabilities } from 'vscode-languageserver';
import type { Snapshot } from '../analysis.ts';
import { TOKEN_MODIFIERS, TOKEN_TYPES } from '../features/token-legend.ts';
import type { Asks } from './asks.ts';
import { hintOf, linkOf, tokensOf as encoded, type HintData } from './convert.ts';
import type { Document } from './documents.ts';
import { later } from './later.ts';
import type { Settings } from './settings.ts';
import type { Solving } from './solve.ts';

/** Differences of colours are offered to who asks for them only: what they are to be held against has to be kept. */
export const inTextFor = (client: ClientCapabilities): ServerCapabilities => ({
  semanticTokensProvider: { legend: { tokenTypes: [...TOKEN_TYPES], tokenModifiers: [...TOKEN_MODIFIERS] }, full: takesDeltas(client) ? { delta: true } : true, range: true },
  documentLinkProvider: { resolveProvider: false }, foldingRangeProvider: true, inlayHintProvider: { resolveProvider: true },
});

function takesDeltas(client: ClientCapabilities): boolean {
  const full = client.textDocument?.semanticTokens?.requests.full;
  return typeof full === 'object' && full.delta === true;
}

export function serveInText({ connection, documents, can, answer }: Asks, solving: Solving, settings: Settings): { refresh(): void } {
  const coloured = async (s: Snapshot, d: Document, from?: number, to?: number): Promise<SemanticTokens> => encoded(d, (await later()).tokensOf(s, from, to));
  /** of each page the colours that were told last, where somebody may ask what has changed in them */
  const told = new WeakMap<Document, { readonly id: string; readonly data: readonly number[] }>();
  let ids = 0;
  const keep = (d: Document, { data }: SemanticTokens): SemanticTokens => {
    if (!takesDeltas(can())) return { data };
    const id = String(++ids);
    told.set(d, { id, data });
    return { resultId: id, data };
  };
  connection.languages.semanticTokens.on(({ textDocument: t }, token) => answer(t.uri, token, async (s, d) => keep(d, await coloured(s, d))));
  connection.languages.semanticTokens.onDelta(({ textDocument: t, previousResultId }, token) => answer(t.uri, token, async (s, d): Promise<SemanticTokens | SemanticTokensDelta> => {
    const before = told.get(d);
    const now = keep(d, await coloured(s, d));
    if (now.resultId === undefined || before?.id !== previousResultId) return now;
    const { numberEdits } = await later();
    return { resultId: now.resultId, edits: numberEdits(before.data, now.data).map(e => ({ ...e, data: [...e.data] })) };
  }));
  connection.languages.semanticTokens.onRange(({ textDocument: t, range }, token) => answer(t.uri, token, (s, d) => coloured(s, d, range.start.line, range.end.line)));

  connection.onDocumentLinks(({ textDocument: t }, token) => answer(t.uri, token, async (s, d) => (await later()).linksOf(s).map(l => linkOf(d, l, documents.spelling(l.to)))));

  connection.onFoldingRanges(({ textDocument: t }, token) => answer(t.uri, token, async s => {
    const { foldsOf } = await later();
    const most = can().textDocument?.foldingRange?.rangeLimit ?? Infinity;
    const kinds = { comment: FoldingRangeKind.Comment, imports: FoldingRangeKind.Imports };
    return foldsOf(s).slice(0, most).map(f => ({ startLine: f.from, endLine: f.to, ...(f.kind ? { kind: kinds[f.kind] } : {}) }));
  }));

  connection.languages.inlayHint.on(({ textDocument: t, range }, token) => answer(t.uri, token, async (_, d) => {
    const { hintsOf, hintWords } = await later();
    const wanted = await settings.wanted();
    const s = await documents.snapshot(d);
    const resolves = can().textDocument?.inlayHint?.resolveSupport?.properties.includes('tooltip') === true;
    const found = wanted.found ? await solving.hints(s, d, range, refreshHints, can().workspace?.inlayHint?.refreshSupport !== true) : [];
    return [...found, ...hintsOf(s, wanted, range.start.line, range.end.line).map(h => hintOf(d, h, uri => documents.get(uri) ?? { uri, version: 0, marks: 0 }, resolves ? undefined : hintWords(s, h.setup, h.result)))];
  }));
  connection.languages.inlayHint.resolve(async (hint, token) => {
    const { uri, setup, result } = (hint.data ?? {}) as Partial<HintData>;
    if (typeof uri !== 'string' || typeof setup !== 'number' || typeof result !== 'string') return hint;
    const words = await answer(uri, token, async s => (await later()).hintWords(s, setup, result));
    return typeof words === 'string' ? { ...hint, tooltip: { kind: 'markdown', value: words } } : hint;
  });

  const refreshHints = (): void => {
    if (can().workspace?.inlayHint?.refreshSupport === true) connection.languages.inlayHint.refresh().catch(() => undefined);
  };
  /** Figures and meanings of open pages may have changed with a file that they use, or with what the user wants to see. */
  const refresh = (): void => {
    const { workspace } = can();
    refreshHints();
    if (workspace?.semanticTokens?.refreshSupport === true) connection.languages.semanticTokens.refresh().catch(() => undefined);
  };
  return { refresh };
}
