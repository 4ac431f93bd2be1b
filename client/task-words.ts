/** What tasks of pages there are, and what they say. */
import { l10n } from 'vscode';

export const TYPE = 'platewright';
/** Finds the findings in what is printed, as package.json says how. */
export const MATCHER = '$platewright';

export type Does = 'check' | 'check all pages';

export const TASKS: readonly { readonly does: Does; readonly name: string }[] = [
  { does: 'check', name: l10n.t('check this page') }, { does: 'check all pages', name: l10n.t('check all pages') },
];

/** What a task that somebody wrote is to do; undefined: no such thing. */
export const doesOf = ({ does }: Readonly<Record<string, unknown>>): Does | undefined => TASKS.find(t => t.does === does)?.does;

export const NO_PAGE = l10n.t('No page is in front, and the task names none. Open one that ends in .plate, or write its path in tasks.json as “page”.');
export const FAILED = l10n.t('The server of Platewright gave no answer. “Platewright: Show Output” says why; “Platewright: Restart Server” may help.');

/** Lines as a terminal wants them. */
export const onTerminal = (text: string): string => text.replaceAll('\n', '\r\n');
