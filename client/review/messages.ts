/** What the panel and the page in it say to each other. Each side takes only what it knows, and drops the rest. */
import type { PictureSheet, ReviewRow } from '../../server/lsp/protocol.ts';
import { exactly, list, maybe, number, oneOf, record, sheet, truth, words, type Is } from '../guards.ts';

/** What a page is held against: a commit by its hash and the address that the page had in it, the last commit whatever it is, another file, the page as it stood when a plate was shot, or what a variant makes of a setup. */
export type Source =
  | { readonly kind: 'commit'; readonly hash: string; readonly uri: string; readonly name: string }
  | { readonly kind: 'head' }
  | { readonly kind: 'file'; readonly uri: string }
  | { readonly kind: 'shot'; readonly setup: string; readonly shot: string }
  | { readonly kind: 'variant'; readonly setup: string; readonly variant: string };

/** What a page keeps for when the window is loaded anew. */
export interface Remembered { readonly page: string; readonly source: Source }

/** A row; `at` is the number of a place that can be shown, `gone`: it is one of the earlier text. */
export interface Row extends Omit<ReviewRow, 'at'> { readonly at?: number | undefined; readonly gone?: boolean | undefined }
export interface Findings { readonly cured: readonly Row[]; readonly added: readonly Row[]; readonly accepted: readonly Row[]; readonly amiss: readonly Row[]; readonly still: number }
export interface Setup {
  readonly name: string;
  readonly title: string;
  readonly headline: string;
  readonly unchanged: boolean;
  readonly at: number;
  readonly changes: readonly Row[];
  readonly results: readonly Row[];
  readonly goals: readonly Row[];
  readonly same?: string | undefined;
  readonly findings: Findings;
  readonly sheet?: PictureSheet | undefined;
  readonly why?: string | undefined;
  readonly items: readonly { readonly id: string; readonly at: number }[];
}

/** A comparison to be shown. */
export interface Shown {
  readonly kind: 'review';
  /** of which the numbers of places are */
  readonly n: number;
  readonly remember: Remembered;
  readonly before: string;
  readonly after: string;
  readonly setups: readonly Setup[];
  readonly inventories: readonly { readonly name: string; readonly changes: readonly Row[] }[];
  readonly rest: { readonly changes: readonly Row[]; readonly findings: Findings };
  readonly nothing?: string | undefined;
  /** what else should be known of it: it is the one from before, something was read as it is now */
  readonly notes: readonly string[];
}
/** Why there is none. */
export interface Nothing { readonly kind: 'nothing'; readonly words: string; readonly remember?: Remembered | undefined }
export type ToPage = Shown | Nothing;

/** The page is there, and waits. */
export interface Ready { readonly kind: 'ready' }
/** Somebody wants to see a place; with `focus` to write there too. */
export interface Show { readonly kind: 'show'; readonly n: number; readonly at: number; readonly focus: boolean }
/** Somebody wants to choose what it is held against. */
export interface Other { readonly kind: 'other' }
export type FromPage = Ready | Show | Other;

const rows = list(record<Row>({ words, before: maybe(words), after: maybe(words), by: maybe(words), unsure: maybe(truth), code: maybe(words), severity: maybe(oneOf('error', 'warning', 'note', 'hint')), at: maybe(number), gone: maybe(truth) }));
const findings = record<Findings>({ cured: rows, added: rows, accepted: rows, amiss: rows, still: number });
const items = list(record<Setup['items'][number]>({ id: words, at: number }));
const setups = list(record<Setup>({ name: words, title: words, headline: words, unchanged: truth, at: number, changes: rows, results: rows, goals: rows, same: maybe(words), findings, sheet: maybe(sheet), why: maybe(words), items }));

const commit = record<Extract<Source, { kind: 'commit' }>>({ kind: exactly('commit'), hash: words, uri: words, name: words });
const head = record<Extract<Source, { kind: 'head' }>>({ kind: exactly('head') });
const file = record<Extract<Source, { kind: 'file' }>>({ kind: exactly('file'), uri: words });
const shot = record<Extract<Source, { kind: 'shot' }>>({ kind: exactly('shot'), setup: words, shot: words });
const variant = record<Extract<Source, { kind: 'variant' }>>({ kind: exactly('variant'), setup: words, variant: words });
const source: Is<Source> = (v): v is Source => commit(v) || head(v) || file(v) || shot(v) || variant(v);
export const isRemembered = record<Remembered>({ page: words, source });

const isShown = record<Shown>({
  kind: exactly('review'), n: number, remember: isRemembered, before: words, after: words, setups, inventories: list(record<Shown['inventories'][number]>({ name: words, changes: rows })),
  rest: record<Shown['rest']>({ changes: rows, findings }), nothing: maybe(words), notes: list(words),
});
const isNothing = record<Nothing>({ kind: exactly('nothing'), words, remember: maybe(isRemembered) });
export const isToPage = (v: unknown): v is ToPage => isShown(v) || isNothing(v);

const isReady = record<Ready>({ kind: exactly('ready') });
const isShow = record<Show>({ kind: exactly('show'), n: number, at: number, focus: truth });
const isOther = record<Other>({ kind: exactly('other') });
export const isFromPage = (v: unknown): v is FromPage => isReady(v) || isShow(v) || isOther(v);
