/** What the panel and the page in it say to each other. Each side takes only what it knows, and drops the rest. */
import type { ShootAnswer } from '../../server/lsp/protocol.ts';
import { exactly, list, maybe, number, object, oneOf, record, truth, words, type Is } from '../guards.ts';
import type { Count } from './clock.ts';
import type { Run } from './run.ts';

export type Evening = Exclude<ShootAnswer, { readonly refused: string }>;

/** What is to be done, and how far it is. */
export interface Shown { readonly kind: 'evening'; readonly evening: Evening; readonly run: Run }
export interface Nothing { readonly kind: 'nothing'; readonly words: string }
/** The entry stands on the page; not saved, where that failed. */
export interface Written { readonly kind: 'written'; readonly shot: string; readonly saved: boolean; readonly notes: readonly string[] }
/** It does not, and why. */
export interface NotWritten { readonly kind: 'not written'; readonly words: string }
export type ToPage = Shown | Nothing | Written | NotWritten;

export interface Ready { readonly kind: 'ready' }
/** How far it is now, to be kept. `over`: something has just come to its end. */
export interface Kept { readonly kind: 'run'; readonly run: Run; readonly over?: string | undefined }
/** The shutter is closed: the entry can be written. `on` is the day by the clock of whoever shot. */
export interface Write { readonly kind: 'write'; readonly run: Run; readonly on: string }
export type FromPage = Ready | Kept | Write;

/** No clock shows another: so far from 1970 a date of ECMAScript may lie, ms. */
const time: Is<number> = (v): v is number => number(v) && Math.abs(v) <= 8.64e15;
const count = record<Count>({ from: time, lasts: time, seen: time });
const fields: Is<Run['fields']> = (v): v is Run['fields'] => object(v) && Object.values(v).every(words);
export const isRun = record<Run>({
  page: words, setup: words, n: number, phase: oneOf('ready', 'settling', 'settled', 'exposing', 'exposed'), ticked: list(words), fields, settle: time, exposures: list(record<Run['exposures'][number]>({ name: maybe(words), seconds: time })), opened: list(time), count: maybe(count), rested: maybe(time), notes: list(words),
});

const steps = list(record<Evening['before'][number]>({ text: words, small: maybe(words), write: maybe(words) }));
const opening = record<Evening['openings'][number]>({ name: maybe(words), change: steps, close: words, seconds: maybe(time), byPage: words, strips: list(record<Evening['openings'][number]['strips'][number]>({ of: words, times: list(words) })) });
const evening = record<Evening>({
  setup: words, shot: words, cautions: list(words), before: steps, dark: steps, handsOff: words, away: words, settle: maybe(time), openings: list(opening), notes: list(words),
  dim: record<Evening['dim']>({ hue: oneOf('red', 'green', 'blue', 'black'), why: words }),
});
const isShown = record<Shown>({ kind: exactly('evening'), evening, run: isRun });
const isNothing = record<Nothing>({ kind: exactly('nothing'), words });
const isWritten = record<Written>({ kind: exactly('written'), shot: words, saved: truth, notes: list(words) });
const isNotWritten = record<NotWritten>({ kind: exactly('not written'), words });
export const isToPage = (v: unknown): v is ToPage => isShown(v) || isNothing(v) || isWritten(v) || isNotWritten(v);

const isReady = record<Ready>({ kind: exactly('ready') });
const isKept = record<Kept>({ kind: exactly('run'), run: isRun, over: maybe(words) });
const isWrite = record<Write>({ kind: exactly('write'), run: isRun, on: words });
export const isFromPage = (v: unknown): v is FromPage => isReady(v) || isKept(v) || isWrite(v);
