/** Answers why a plate came out as it did: as a request, and as an action for a client that can open the answer. */
import type { CancellationToken, CodeAction } from 'vscode-languageserver';
import type { Snapshot } from '../analysis.ts';
import type { Asks } from './asks.ts';
import type { Document } from './documents.ts';
import { later } from './later.ts';
import { WHY, WHY_COMMAND, type WhyAnswer, type WhyParams } from './protocol.ts';

export function serveWhy({ connection, answer }: Asks): void {
  connection.onRequest(WHY, ({ textDocument: t, line }: WhyParams, token: CancellationToken): Promise<WhyAnswer | null> => answer(t.uri, token, async s => {
    const { whyAt } = await later();
    return whyAt(s, line) ?? null;
  }));
}

/** The action at the first line of a shot with an outcome, or at that of the outcome. */
export async function whyActions(s: Snapshot, d: Document, line: number): Promise<CodeAction[]> {
  const { shotAt, whyTitle } = await later();
  const shot = shotAt(s, line);
  if (!shot) return [];
  const title = whyTitle(shot);
  return [{ title, command: { title, command: WHY_COMMAND, arguments: [d.uri, line] } }];
}
