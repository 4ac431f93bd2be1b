/** How a card comes to be written: which paper, what the server makes, where it goes, and whether it is opened. Nothing is written that nobody chose a place for. */
import type { CardAnswer } from '../server/lsp/protocol.ts';

/** What the editor does of it. `Place` is where a file is. */
export interface Desk<Place> {
  /** undefined: nobody chose one */
  readonly paper: () => Promise<'a4' | 'letter' | undefined>;
  /** null: the page has no setup; undefined: there is no answer */
  readonly ask: (paper: 'a4' | 'letter') => Promise<CardAnswer | null | undefined>;
  /** a dialog, which asks before it takes the place of a file */
  readonly place: () => Promise<Place | undefined>;
  readonly write: (at: Place, html: string) => Promise<void>;
  readonly say: (words: string, kind: 'note' | 'warning' | 'error') => void;
  /** tells that it is written, and opens it where somebody wants that */
  readonly offer: (at: Place, setup: string) => Promise<void>;
}

export async function writeCard<Place>(desk: Desk<Place>): Promise<void> {
  const paper = await desk.paper();
  if (!paper) return;
  const card = await desk.ask(paper);
  if (card === undefined) { desk.say('The card could not be made, or the page has changed in the meantime. Ask for it again.', 'warning'); return; }
  if (card === null) { desk.say('There is no setup on the page, so that there is no card to write.', 'note'); return; }
  const at = await desk.place();
  if (at === undefined) return;
  try {
    await desk.write(at, card.html);
  } catch (e) {
    desk.say(`The card could not be written: ${e instanceof Error ? e.message : String(e)}`, 'error');
    return;
  }
  await desk.offer(at, card.setup);
}

/** The path of the card beside a page: `whelk-card.html` beside `whelk.plate`. */
export const besidePath = (path: string): string => `${path.replace(/\.plate$/, '')}-card.html`;
