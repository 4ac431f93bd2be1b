/** Lines above setups and beams: their figures, and what has become of a setup. */
import { CodeLensRefreshRequest, type CodeLens, type ServerCapabilities, type ClientCapabilities } from 'vscode-languageserver';
import type { Asks } from './asks.ts';
import { later } from './later.ts';
import type { Document } from './documents.ts';
import type { Settings } from './settings.ts';

const shows = (client: ClientCapabilities): boolean => client.textDocument?.codeLens !== undefined;

/** Figures are offered to who shows lines above the text, and `reviews` to who can open them. */
export const lensesFor = (client: ClientCapabilities, reviews: boolean): ServerCapabilities => (reviews || shows(client) ? { codeLensProvider: { resolveProvider: false } } : {});

/** `since` tells what has become of the setups of a page. */
export function serveLenses({ connection, can, answer }: Asks, settings: Settings, since: (d: Document) => Promise<readonly CodeLens[]>): { refresh(): void } {
  connection.onCodeLens(({ textDocument: t }, token) => answer(t.uri, token, async (s, d): Promise<CodeLens[]> => {
    const told = await since(d);
    if (!shows(can())) return [...told];
    const [wanted, hints] = [await settings.lenses(), await settings.wanted()];
    const hinted = can().textDocument?.inlayHint !== undefined;
    const { lensesOf } = await later();
    const figures = lensesOf(s, { ...wanted, lengths: !(hinted && hints.armTotals), mismatch: !(hinted && hints.mismatch) });
    // In a narrow editor the end of the line is out of sight: what can be opened comes first. Behind figures there is nothing to be opened.
    return [...told, ...figures.map(({ line, text }) => ({ range: { start: { line, character: 0 }, end: { line, character: 0 } }, command: { title: text, command: '' } }))];
  }));
  return {
    refresh: () => { if (can().workspace?.codeLens?.refreshSupport === true) connection.sendRequest(CodeLensRefreshRequest.type).catch(() => undefined); },
  };
}
