/** Ways of the light, as editors show who calls whom: what reaches a thing or a beam, and what it goes on to. */
import type { CallHierarchyItem, ServerCapabilities } from 'vscode-languageserver';
import type { Snapshot } from '../analysis.ts';
import type { Stop } from '../features/ways.ts';
import type { Asks } from './asks.ts';
import { placeOf, position, rangeOf, SYMBOL, type Source } from './convert.ts';
import { later } from './later.ts';

export const WAYS: ServerCapabilities = { callHierarchyProvider: true };

export function serveWays({ connection, answer }: Asks): void {
  const { callHierarchy } = connection.languages;
  callHierarchy.onPrepare(({ textDocument: t, position: p }, token) => answer(t.uri, token, async (s, d) => {
    const stop = (await later()).stopAt(s, ...placeOf(d, p));
    return stop ? [itemOf(d, s, stop)] : null;
  }));
  callHierarchy.onIncomingCalls(({ item }, token) => answer(item.uri, token, async (s, d) => {
    const { reaching } = await later();
    return reaching(s, declaredAt(d, item))?.map(({ stop, by }) => ({ from: itemOf(d, s, stop), fromRanges: by.map(at => rangeOf(d, at)) })) ?? null;
  }));
  callHierarchy.onOutgoingCalls(({ item }, token) => answer(item.uri, token, async (s, d) => {
    const { goingOn } = await later();
    return goingOn(s, declaredAt(d, item))?.map(({ stop, by }) => ({ to: itemOf(d, s, stop), fromRanges: by.map(at => rangeOf(d, at)) })) ?? null;
  }));
}

function declaredAt(d: Source, { selectionRange }: CallHierarchyItem): { line: number; start: number } {
  const [line, start] = placeOf(d, selectionRange.start);
  return { line, start };
}

function itemOf(d: Source, { tree }: Snapshot, { kind, name, detail, at, end }: Stop): CallHierarchyItem {
  const selectionRange = rangeOf(d, at);
  return { name, kind: SYMBOL[kind], detail, uri: d.uri, selectionRange, range: { start: { line: at.line, character: 0 }, end: position(d, end, Math.max(tree.lines[end]?.text.length ?? 0, end === at.line ? at.end : 0)) } };
}
