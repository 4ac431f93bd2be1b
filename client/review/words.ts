/** What the panel says where it has nothing to show, or nothing of now. */
export const GONE_FILE = 'The file that this page was held against can’t be read any more.';
export const NOT_IN_HEAD = 'This page is not in the last commit.';
export const NOT_IN_REVISION = 'This page is not in that revision, or the revision is gone.';
export const GONE_PAGE = 'This page can’t be read any more.';
export const NO_SHOT = 'The page has no such shot any more. “Compare with another…” lists what there is.';
export const NO_VARIANT = 'The page has no such variant any more. “Compare with another…” lists what there is.';
export const FAILED = 'The comparison could not be made. The command “Platewright: Show Output” says why.';
export const STARTING = 'The server of Platewright is starting.';
export const STOPPED = 'The server of Platewright is not running, so that nothing is compared. The command “Platewright: Restart Server” starts it.';
export const STOPPED_SINCE = 'The server of Platewright is not running. This is the comparison from before; “Platewright: Restart Server” makes it anew.';

/** A shot that no date and no revision places. */
export const undated = (shot: string): string => `Shot “${shot}” has no date and stands in no revision, so that nothing tells how the page stood then. Date it: shot ${shot} on 2026-02-11.`;

/** Files of which the revision knows nothing. */
export const borrowed = (names: readonly string[]): string => `${names.join(', ')}: read as ${names.length === 1 ? 'it is' : 'they are'} now, since the revision does not hold ${names.length === 1 ? 'it' : 'them'}.`;
