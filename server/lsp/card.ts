/** Answers with the card for the bench. */
import type { CancellationToken } from 'vscode-languageserver';
import type { Asks } from './asks.ts';
import { later } from './later.ts';
import { CARD, type CardAnswer, type CardParams } from './protocol.ts';

export function serveCard({ connection, answer }: Asks): void {
  connection.onRequest(CARD, ({ textDocument: t, line, paper }: CardParams, token: CancellationToken) => answer(t.uri, token, async (s): Promise<CardAnswer | null> => {
    const { cardHtml, cardOf, cardSvg, chosen } = await later();
    const r = chosen(s.results, typeof line === 'number' ? { line } : {});
    if (!r) return null;
    const card = cardOf(s, r, nameOf(s.uri));
    return { setup: r.setup.name, html: cardHtml([card], card.title, paper === 'letter' ? 'letter' : 'a4', [cardSvg(r, 'card-')]) };
  }));
}

/** The name of the page, without its folder. */
function nameOf(uri: string): string {
  const name = uri.slice(uri.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}
