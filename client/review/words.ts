/** What the panel says where it has nothing to show, or nothing of now. */
import { l10n } from 'vscode';
export const GONE_FILE = l10n.t('The file that this page was held against can’t be read any more.');
export const NOT_IN_HEAD = l10n.t('This page is not in the last commit.');
export const NOT_IN_REVISION = l10n.t('This page is not in that revision, or the revision is gone.');
export const GONE_PAGE = l10n.t('This page can’t be read any more.');
export const NO_SHOT = l10n.t('The page has no such shot any more. “Compare with another…” lists what there is.');
export const NO_VARIANT = l10n.t('The page has no such variant any more. “Compare with another…” lists what there is.');
export const FAILED = l10n.t('The comparison could not be made. The command “Platewright: Show Output” says why.');
export const STARTING = l10n.t('The server of Platewright is starting.');
export const STOPPED = l10n.t('The server of Platewright is not running, so that nothing is compared. The command “Platewright: Restart Server” starts it.');
export const STOPPED_SINCE = l10n.t('The server of Platewright is not running. This is the comparison from before; “Platewright: Restart Server” makes it anew.');

/** A shot that no date and no revision places. */
export const undated = (shot: string): string => l10n.t('Shot “{0}” has no date and stands in no revision, so that nothing tells how the page stood then. Date it: {1}.', shot, `shot ${shot} on 2026-02-11`);

/** Files of which the revision knows nothing. */
export const borrowed = (names: readonly string[]): string => (names.length === 1 ? l10n.t('{0}: read as it is now, since the revision does not hold it.', names[0]!) : l10n.t('{0}: read as they are now, since the revision does not hold them.', names.join(', ')));
/** What was dated later cannot be left out without what stands around it. */
export const unclosed = (setup: string, shot: string): string => l10n.t('A brace is missing in “{0}”, so that it is not certain what belongs to it, and how the page stood when shot “{1}” was made can’t be told. Close it, and compare again.', setup, shot);
