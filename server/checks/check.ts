/** What a check is. One check a file, named after its code; its page is generated from the file. */
import type { Problem } from '../model/model.ts';
import type { Results } from '../results/plan.ts';

export type Severity = 'error' | 'warning' | 'note' | 'hint';
export type Data = Problem['data'];

export interface Check {
  /** kebab-case words of the trade; never renamed, never used again for something else */
  readonly code: string;
  readonly severity: Severity;
  /** one line: what is found */
  readonly title: string;
  /** Markdown for the page: what will be seen, why, what to do */
  readonly page: string;
  /** a file that raises this finding exactly once, and no other warning or error; a very long one is made when it is asked for */
  readonly example: string;
  /** the other files that the example uses, by their names */
  readonly files?: Readonly<Record<string, string>>;
  /** told once a file, where it first holds */
  readonly once?: true;
  /** what, why, what to do, with the numbers */
  message(data: Data): string;
  /** where the severity depends on the numbers */
  severityOf?(data: Data): Severity;
  /** Looks at a computed setup. Checks without it put into words what reading and binding found. */
  run?(results: Results): Problem[];
}

/** A finding, ready to be shown. Its text is no contract; code, setup, subject and data are. */
export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  readonly setup?: string;
  /** the variant in which alone it occurs */
  readonly variant?: string;
  readonly subject: string;
  readonly at: Problem['at'];
  readonly message: string;
  readonly data: Data;
  /** the reason with which the text accepts it; accepted findings are kept apart */
  readonly accepted?: string;
}

export const text = (data: Data, key: string): string => String(data[key] ?? '');
export const num = (data: Data, key: string): number => Number(data[key] ?? 0);
/** `, did you mean “mirror”?` where there is a suggestion. */
export const didYouMean = (data: Data): string => (data['suggestion'] === undefined ? '' : ` Did you mean “${text(data, 'suggestion')}”?`);
