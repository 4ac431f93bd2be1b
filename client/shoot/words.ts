/** What the panel says where it has nothing to go through. */
import { l10n } from 'vscode';
export const GONE_PAGE = l10n.t('This page can’t be read any more. What was counted goes on; the entry can be written when the page is back.');
export const STARTING = l10n.t('The server of Platewright is starting.');
export const STOPPED = l10n.t('The server of Platewright is not running. What is counted goes on; for the entry the command “Platewright: Restart Server” is needed.');
export const FAILED = l10n.t('What there is to do could not be told. The command “Platewright: Show Output” says why.');
export const NO_SHOT = l10n.t('Nothing is being shot. The command “Platewright: Shoot” begins with the setup at the cursor.');
export const OTHER = (setup: string): string => l10n.t('“{0}” is being shot: what was begun there is shown. Stop it or let it end, then shoot another setup.', setup);
export const STILL = (setup: string): string => l10n.t('“{0}” is still being counted by the clock, without a sound. “Platewright: Shoot” goes on with it.', setup);
export const OVER = l10n.t('The exposure is over: close the shutter.');
export const SETTLED = l10n.t('The table has rested for as long as was said.');
