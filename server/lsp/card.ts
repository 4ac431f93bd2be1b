/** Answers with the card for the bench. */
import type { CancellationToken } from 'vscode-languageserver';
import type { Sheet } from '../drawing/marks.ts';
import type { OnCard } from '../drawing/on-card.ts';
import type { Card } from '../features/blocks/blocks.ts';
import type { Paper } from '../features/card/paper.ts';
import type { Asks } from './asks.ts';
import { later } from './later.ts';
import { CARD, type CardAnswer, type CardParams } from './protocol.ts';

/** Makes a PDF of a card, where there is a disk with the fonts for it. */
export type Print = (card: Card, paper: Paper, pictures: OnCard<Sheet>) => Promise<{ readonly pdf: string } | { readonly refused: string }>;

const NO_PRESS = 'PDF is made by a server that runs beside the editor, which has the fonts for it; this one runs in a browser. Write the card as HTML, and print that from the browser, into a PDF if you like.';

export function serveCard({ connection, answer }: Asks, print?: Print): void {
  connection.onRequest(CARD, ({ textDocument: t, line, paper, form }: CardParams, token: CancellationToken) => answer(t.uri, token, async (s): Promise<CardAnswer | null> => {
    const { cardHtml, cardOf, cardPictures, cardSheets, chosen } = await later();
    const r = chosen(s.results, typeof line === 'number' ? { line } : {});
    if (!r) return null;
    const card = cardOf(s, r, nameOf(s.uri));
    const [setup, on] = [r.setup.name, paper === 'letter' ? 'letter' : 'a4'] as const;
    if (form === 'pdf') return { setup, ...(print ? await print(card, on, cardSheets(r)) : { refused: NO_PRESS }) };
    return { setup, html: cardHtml([card], card.title, on, [cardPictures(r, 'card-')]) };
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
