/** Answers with the pages to begin with. */
import type { Asks } from './asks.ts';
import { later } from './later.ts';
import { STARTS, type StartsAnswer } from './protocol.ts';

export function serveStarts({ connection }: Asks): void {
  connection.onRequest(STARTS, async (): Promise<StartsAnswer> => (await later()).STARTS);
}
