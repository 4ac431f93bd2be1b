/** How readings are asked for: one after the other, each written as soon as it is given. What is left empty is skipped; whoever stops keeps what is written. */
import { l10n } from 'vscode';
import type { EnterAnswer, ReadingsAnswer } from '../../server/lsp/protocol.ts';
import type { Added } from './adding.ts';

export type Reading = ReadingsAnswer['readings'][number];
export type Entered = Exclude<EnterAnswer, { readonly refused: string }>;

export interface Question {
  readonly title: string;
  readonly prompt: string;
  readonly placeholder: string;
  /** what was typed and could not be taken */
  readonly value: string;
  /** about what was typed, or what came of the reading before */
  readonly said: { readonly words: string; readonly kind: 'note' | 'warning' | 'error' } | undefined;
}

/** What the editor does of it. */
export interface Desk {
  /** null: the page has no setup; undefined: there is no answer */
  readonly list: () => Promise<ReadingsAnswer | null | undefined>;
  /** where to begin; undefined: nobody wants to */
  readonly choose: (readings: readonly Reading[], first: number) => Promise<number | undefined>;
  readonly ask: (question: Question) => Promise<string | { readonly to: 'back' | 'list' } | undefined>;
  readonly enter: (setup: string, subject: string, value: string) => Promise<Added<Entered>>;
  readonly unsaved: (line: string) => void;
  readonly say: (words: string, kind: 'note' | 'warning') => void;
  /** at the end, with what disagreed, and whether there are powers by which losses can be told */
  readonly done: (written: number, disagree: readonly string[], losses: boolean) => void;
}

export const NO_SETUP = l10n.t('There is no setup on the page, so that there is nothing to read.');
export const NO_ANSWER = l10n.t('What there is to read could not be told, or the page has changed in the meantime. Ask for it again.');
export const NOTHING = l10n.t('There is nothing to read in this setup yet: it has no beams.');

export async function enterReadings(desk: Desk): Promise<void> {
  let answer = await desk.list();
  if (!answer || answer.readings.length === 0) { desk.say(answer === null ? NO_SETUP : answer ? NOTHING : NO_ANSWER, answer === undefined ? 'warning' : 'note'); return; }
  const { setup } = answer;
  let at = await desk.choose(answer.readings, firstOf(answer.readings));
  if (at === undefined) return;
  const disagree: string[] = [];
  let [written, value] = [0, ''];
  let said: Question['said'];
  while (at < answer.readings.length) {
    const reading: Reading = answer.readings[at]!;
    const typed = await desk.ask({ ...questionOf(reading, at, answer.readings.length), value, said });
    if (typed === undefined) break;
    value = '';
    if (typeof typed !== 'string') {
      at = typed.to === 'back' ? Math.max(0, at - 1) : await desk.choose(answer.readings, at) ?? at;
      said = undefined;
      continue;
    }
    if (typed.trim() === '') { at++; said = undefined; continue; }
    const made = await desk.enter(setup, reading.subject, typed);
    if (made.kind === 'not') { [value, said] = [typed, { words: made.words, kind: 'error' }]; continue; }
    written++;
    if (!made.saved) desk.unsaved(made.answer.line);
    said = { words: [made.answer.says, ...made.answer.findings].join(' '), kind: made.answer.agrees === false || made.answer.findings.length > 0 ? 'warning' : 'note' };
    if (said.kind === 'warning') { disagree.push(made.answer.says); desk.say(said.words, 'warning'); }
    // What comes next may be expected to be another one now.
    const next = await desk.list();
    if (next?.setup !== setup) break;
    at = Math.max(0, next.readings.findIndex(r => r.subject === reading.subject)) + 1;
    answer = next;
  }
  if (written > 0) desk.done(written, disagree, answer.readings.filter(r => r.read !== undefined && isPower(r)).length > 1);
}

const isPower = (r: Reading): boolean => r.group === 'powers' || (r.group === 'light' && r.unit.endsWith('W') && r.subject !== 'dark');

/** The first of the last group in which something was read today, that was not read; else the first of all. */
export function firstOf(readings: readonly Reading[]): number {
  const last = readings.findLastIndex(r => r.today);
  const next = readings.findIndex((r, i) => i > last && !r.today);
  return Math.max(0, next);
}

/** `should come to 752 ± 2 mm, as read` */
export const expectedWords = ({ expected, known }: Reading): string => (expected === '' ? known : `${l10n.t('should come to {0}', expected)}${known === '' ? '' : `, ${known}`}`);

function questionOf(r: Reading, at: number, all: number): Omit<Question, 'value' | 'said'> {
  const should = expectedWords(r);
  // What came of the reading before may lie over these words: what it should come to stands in the box as well.
  const parts = [capital(r.how), capital(should), r.read === undefined ? '' : l10n.t('On the page: {0}', r.read), r.by === undefined ? '' : l10n.t('By {0} unless you say otherwise', r.by), r.unit === '' ? '' : l10n.t('A bare number is in {0}', r.unit)];
  return { title: l10n.t('{0} ({1} of {2})', r.what, at + 1, all), prompt: `${parts.filter(p => p !== '').map(p => `${p}.`).join(' ')} ${l10n.t('Empty goes on; Escape ends, and what is written stays.')}`, placeholder: r.expected === '' ? (r.unit === '' ? l10n.t('what you read') : l10n.t('what you read, in {0}', r.unit)) : should };
}
const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
