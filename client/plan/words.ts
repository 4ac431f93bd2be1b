/** What the panel says where it has no picture, or none of the text as it is now. */
import { l10n } from 'vscode';
export const NO_PAGE = { words: l10n.t('No page is open. Open a file that ends in .plate, and its bench plan is drawn here.') };

export const NO_SETUP = { words: l10n.t('There is no setup on this page yet. One begins like this:'), example: 'setup "Whelk shell" {\n  table: 1200 x 900 mm\n  laser red at (60, 100) mm heading 0°\n}' };

export const noPlaces = (setup: string): { words: string; example: string } => ({
  words: l10n.t('Nothing of “{0}” has a place on the table yet, so there is nothing to draw. Write where things stand, such as:', setup),
  example: 'laser red at (60, 100) mm heading 0°\nmirror M1 at (1100, 100) mm\nplate P1 at (700, 700) mm facing whelk',
});

export const STARTING = { words: l10n.t('The server of Platewright is starting.') };
export const STOPPED = { words: l10n.t('The server of Platewright is not running, so that nothing is drawn. The command “Platewright: Restart Server” starts it.') };

export const NEVER_MADE = { words: l10n.t('This picture could not be made. The command “Platewright: Show Output” says why.') };

export const UNREADABLE = l10n.t('This page can’t be read as a setup at the moment. The picture is the one from before.');
export const STOPPED_SINCE = l10n.t('The server of Platewright is not running. The picture is the one from before; “Platewright: Restart Server” draws it anew.');
export const NOT_MADE = l10n.t('This picture could not be made anew. It is the one from before; “Platewright: Show Output” says why.');

/** Shown is the first view that can be drawn. */
export const otherView = ({ words, why = '' }: { readonly words: string; readonly why?: string }): string => l10n.t('Not drawn: {0}. {1}', words, why);

export const MOVED_ON = l10n.t('The text has changed meanwhile, so nothing was written.');
export const NOT_MOVED = l10n.t('The editor did not take the change, so nothing was written.');
