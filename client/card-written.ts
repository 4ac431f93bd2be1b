/** How a card comes to be written: on which paper and as what, what the server makes, where it goes, and whether it is opened. Nothing is written that nobody chose a place for, and nothing over a file that nobody gave up. */
import { l10n } from 'vscode';
import type { CardAnswer } from '../server/lsp/protocol.ts';

export interface Kind { readonly paper: 'a4' | 'letter'; readonly form: 'html' | 'pdf' }

/** What the editor does of it. `Place` is where a file is. */
export interface Desk<Place> {
  /** undefined: nobody chose one */
  readonly kind: () => Promise<Kind | undefined>;
  /** null: the page has no setup; undefined: there is no answer */
  readonly ask: (kind: Kind) => Promise<CardAnswer | null | undefined>;
  /** a dialog, which asks before it takes the place of a file */
  readonly place: (kind: Kind) => Promise<Place | undefined>;
  readonly write: (at: Place, file: Uint8Array) => Promise<void>;
  readonly say: (words: string, kind: 'note' | 'warning' | 'error') => void;
  /** tells that it is written, and opens it where somebody wants that */
  readonly offer: (at: Place, setup: string, form: Kind['form']) => Promise<void>;
}

export async function writeCard<Place>(desk: Desk<Place>): Promise<void> {
  const kind = await desk.kind();
  if (!kind) return;
  const card = await desk.ask(kind);
  if (card === undefined) { desk.say(l10n.t('The card could not be made, or the page has changed in the meantime. Ask for it again.'), 'warning'); return; }
  if (card === null) { desk.say(l10n.t('There is no setup on the page, so that there is no card to write.'), 'note'); return; }
  const file = fileOf(card, kind.form);
  if (!file) { desk.say(card.refused ?? l10n.t('The card could not be made. Ask for it as HTML.'), 'warning'); return; }
  const at = await desk.place(kind);
  if (at === undefined) return;
  try {
    await desk.write(at, file);
  } catch (e) {
    desk.say(l10n.t('The card could not be written: {0}', e instanceof Error ? e.message : String(e)), 'error');
    return;
  }
  await desk.offer(at, card.setup, kind.form);
}

function fileOf({ html, pdf }: CardAnswer, form: Kind['form']): Uint8Array | undefined {
  if (form === 'html') return html === undefined ? undefined : new TextEncoder().encode(html);
  return pdf === undefined ? undefined : Uint8Array.from(atob(pdf), c => c.charCodeAt(0));
}

/** The path of the card beside a page: `whelk-card.pdf` beside `whelk.plate`. */
export const besidePath = (path: string, form: Kind['form']): string => `${path.replace(/\.plate$/, '')}-card.${form}`;

/** What a key or another extension may say at once, instead of being asked: as much of it as can be understood. */
export function saidKind(said: unknown): Partial<Kind> {
  const { paper, form } = (typeof said === 'object' && said !== null ? said : {}) as Record<string, unknown>;
  return { ...(paper === 'a4' || paper === 'letter' ? { paper } : {}), ...(form === 'html' || form === 'pdf' ? { form } : {}) };
}
