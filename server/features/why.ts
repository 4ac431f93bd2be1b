/** Why a plate came out as it did: suspects by the figures of its setup, those that the text cannot tell, and one test for each. Plain data; every figure is a result. */
import type { Snapshot } from '../analysis.ts';
import type { Finding } from '../checks/check.ts';
import type { Results } from '../results/plan.ts';
import { CLUES, SPEAKS_FOR, type Clue } from './why/clues.ts';
import { MISTAKES, type Mistake } from './why/mistakes.ts';
import { understand, type Outcome } from './why/outcomes.ts';
import { LEAST_STOPS, lossPage, NOTHING, stopWords } from './report/losses.ts';
import type { LightPage } from './report/light.ts';
import { findingsWithin } from './report/report.ts';

export interface Suspect {
  /** name of the mistake */
  readonly name: string;
  readonly cause: string;
  /** what of this page speaks for it, sentences */
  readonly evidence: readonly string[];
  /** by how many stops it may darken the plate, at the worse end */
  readonly stops?: number;
  /** codes of findings of this page that speak for it */
  readonly codes: readonly string[];
  readonly test: string;
}

export interface Why {
  readonly setup: string;
  readonly variant?: string;
  /** what was seen, in the words that were given */
  readonly seen?: string;
  /** what the words mean */
  readonly outcomes: readonly Outcome[];
  /** the words only say that it went well */
  readonly well: boolean;
  /** where the words mean nothing that is known */
  readonly nearest: readonly Outcome[];
  /** what the figures or findings of this page speak for, the strongest first */
  readonly suspects: readonly Suspect[];
  /** what the text cannot tell */
  readonly untold: readonly Suspect[];
  /** what the figures speak against */
  readonly cleared: readonly Suspect[];
  readonly ladders: readonly LightPage[];
}

/** With no words, or with words that mean nothing known, everything that the page itself speaks for. */
export function whyOf(snapshot: Snapshot, r: Results, seen?: string): Why {
  const { outcomes, well, nearest } = seen === undefined ? { outcomes: [], well: false, nearest: [] } : understand(seen);
  const findings = findingsWithin(snapshot, r);
  const all = MISTAKES.filter(m => outcomes.length === 0 || m.outcomes.some(o => outcomes.includes(o))).map(m => judge(m, r, findings, outcomes));
  const of = (verdict: Verdict): Suspect[] => all.filter(x => x.verdict === verdict).map(x => x.suspect);
  return {
    setup: r.setup.name, ...(r.setup.variant !== undefined ? { variant: r.setup.variant } : {}), ...(seen !== undefined ? { seen } : {}), outcomes, well, nearest,
    suspects: of('speaks').filter(s => outcomes.length > 0 || s.stops !== undefined || s.codes.length > 0).sort((a, b) => weight(b) - weight(a)), untold: outcomes.length === 0 ? [] : of('untold'), cleared: outcomes.length === 0 ? [] : of('cleared'),
    ladders: r.losses.ladders.map(l => lossPage(l, r)).filter(p => p.rows.length > 0),
  };
}

type Verdict = 'speaks' | 'untold' | 'cleared';

/** What a finding of a kind weighs beside stops. */
const FOUND = 1;
const SPEAKS = 0.5;
const weight = (s: Suspect): number => Math.max(s.stops ?? 0, s.codes.length > 0 ? FOUND : 0, SPEAKS);

function judge(m: Mistake, r: Results, findings: readonly Finding[], outcomes: readonly Outcome[]): { verdict: Verdict; suspect: Suspect } {
  const clues = (m.clues ?? []).flatMap((name): Clue[] => {
    const clue: Clue | undefined = CLUES[name](r, outcomes);
    const other = outcomes.length > 0 && SPEAKS_FOR[name]?.some(o => outcomes.includes(o)) === false;
    return clue ? [other ? { stops: 0, words: clue.words } : clue] : [];
  });
  const found = findings.filter(f => m.codes?.includes(f.code));
  const speaking = clues.filter(c => c.speaks === true || (c.stops ?? 0) >= LEAST_STOPS);
  const stops = Math.max(0, ...speaking.map(c => c.stops ?? 0));
  // What the figures speak against, a finding about something else does not bring back.
  const against = speaking.length === 0 && clues.some(c => c.stops !== undefined);
  const verdict = speaking.length > 0 || (found.length > 0 && !against) ? 'speaks' : clues.some(c => c.stops !== undefined) ? 'cleared' : 'untold';
  const told = verdict === 'speaks' ? [...speaking, ...clues.filter(c => c.stops === undefined && !speaking.includes(c))] : clues;
  return {
    verdict,
    suspect: {
      name: m.name, cause: m.cause, test: m.test, codes: verdict === 'speaks' ? [...new Set(found.map(f => f.code))] : [], ...(stops > 0 ? { stops } : {}),
      evidence: [...new Set([...told.map(c => c.words), ...(verdict === 'speaks' && speaking.length === 0 ? found.map(f => f.message) : [])])],
    },
  };
}

/** `up to 1 1/2 stops` */
export function upTo({ stops }: Suspect): string {
  const words = stops === undefined ? '' : stopWords(stops, stops);
  return words === '' || words === NOTHING ? '' : words.startsWith('more') ? words : `up to ${words}`;
}
