/** How far somebody is with a shot: a state that is kept, and what makes the next one of it. No clock is read here: `now` is what a clock said, ms. */
import { begin, look, spoken, type Count } from './clock.ts';

export type Phase =
  /** things are ticked off, and between two openings of the shutter what becomes of the table */
  | 'ready'
  /** hands off: the table is left alone */
  | 'settling' | 'settled'
  /** the shutter is open */
  | 'exposing'
  /** it is closed for the last time, and the entry is not written yet */
  | 'exposed';

/** For how long the shutter is to be open, s; with its name where a plate gets several exposures. */
export interface Exposing { readonly name?: string | undefined; readonly seconds: number }

export interface Run {
  readonly page: string;
  readonly setup: string;
  /** grows with each change: of two that were kept, the later one counts */
  readonly n: number;
  readonly phase: Phase;
  readonly ticked: readonly string[];
  /** what was written beside steps, by their words */
  readonly fields: Readonly<Record<string, string>>;
  /** s; 0 where nobody has said */
  readonly settle: number;
  /** of each opening of the shutter */
  readonly exposures: readonly Exposing[];
  /** of those that are over: for how long it was, s */
  readonly opened: readonly number[];
  /** what is counted down, or was last */
  readonly count?: Count | undefined;
  /** how long the table had been left alone when the shutter opened, s; of several openings the least */
  readonly rested?: number | undefined;
  /** what happened, for the entry */
  readonly notes: readonly string[];
}

export const fresh = (page: string, setup: string, settle: number, exposures: readonly Exposing[]): Run => ({ page, setup, n: 0, phase: 'ready', ticked: [], fields: {}, settle, exposures, opened: [], notes: [] });

/** For how long the shutter is to be open next, s; 0 where nobody has said. */
export const due = ({ exposures, opened }: Run): number => exposures[opened.length]?.seconds ?? 0;
/** Nothing can be left to begin with another page. */
export const isUnderWay = ({ phase, opened }: Run): boolean => phase !== 'ready' || opened.length > 0;

const next = (run: Run, change: Partial<Run>): Run => ({ ...run, ...change, n: run.n + 1 });

export const tick = (run: Run, step: string, is: boolean): Run => next(run, { ticked: is ? [...run.ticked.filter(t => t !== step), step] : run.ticked.filter(t => t !== step) });
export const field = (run: Run, step: string, text: string): Run => next(run, { fields: { ...run.fields, [step]: text } });
export const rest = (run: Run, settle: number): Run => next(run, { settle });
export const expose = (run: Run, which: number, seconds: number): Run => next(run, { exposures: run.exposures.map((e, i) => (i === which ? { ...e, seconds } : e)) });

/** Nothing is begun without its time. */
export const settle = (run: Run, now: number): Run => (run.settle > 0 && (run.phase === 'ready' || run.phase === 'settled') ? next(run, { phase: 'settling', count: begin(run.settle, now) }) : run);

/** The shutter opens: how long the table rested is what the clock says, not what was planned. */
export function open(run: Run, now: number): Run {
  if (!(due(run) > 0) || run.phase === 'exposing' || run.phase === 'exposed') return run;
  const rested = run.count && (run.phase === 'settling' || run.phase === 'settled') ? Math.round(look(run.count, now).gone / 1000) : undefined;
  return next(run, { phase: 'exposing', rested: rested === undefined ? run.rested : Math.min(rested, run.rested ?? Infinity), count: begin(due(run), now) });
}

/** The shutter is closed: another opening comes, or it was the last. */
function closed(run: Run, seconds: number, notes: readonly string[]): Run {
  const opened = [...run.opened, seconds];
  return next(run, { opened, notes, ...(opened.length < run.exposures.length ? { phase: 'ready', count: undefined } : { phase: 'exposed' }) });
}

/** Between two openings: no more follow, and what was exposed is written down. */
export const end = (run: Run): Run => (run.phase === 'ready' && run.opened.length > 0 ? next(run, { phase: 'exposed', notes: [...run.notes, `ended after ${run.opened.length} of ${run.exposures.length} exposures`] }) : run);

/** Whoever stops while the table rests begins anew; once the shutter was open there is an exposure, however short. */
export function stop(run: Run, now: number): Run {
  if (run.phase === 'settling' || run.phase === 'settled') return next(run, { phase: 'ready', count: undefined });
  if (run.phase !== 'exposing' || !run.count) return run;
  const gone = look(run.count, now).gone;
  const seconds = Math.max(0.1, Math.round(gone / 100) / 10);
  return closed(run, seconds, seconds < due(run) ? [...run.notes, `closed after ${spoken(gone)} of ${spoken(due(run) * 1000)}`] : run.notes);
}

/** What is worth a word of a look at the clock; what it makes of the run. */
export interface Turn {
  readonly run: Run;
  readonly said?: string;
  /** it has come to its end just now */
  readonly over?: 'settled' | 'exposed';
}

/** Later than that nobody was there when the time was up, ms: the shutter stayed open, or nobody knows. */
const LATE = 2000;

export function turn(run: Run, now: number): Turn {
  if (!run.count || (run.phase !== 'settling' && run.phase !== 'settled' && run.phase !== 'exposing')) return { run };
  const { count, left, back, away } = look(run.count, now);
  const said = back !== undefined ? `The clock of this computer was set back by ${spoken(back)}. The count goes on from what had gone by before.`
    : away !== undefined ? `Nobody looked at the clock for ${spoken(away)}: the computer slept, the window was closed, or the clock was set forward. The count goes by the clock as it is now.` : undefined;
  const note = back !== undefined && run.phase === 'exposing' ? [...run.notes, `the clock was set back by ${spoken(back)} while the shutter was open`] : run.notes;
  // Once a second is often enough to be kept; a look is none of the changes that somebody makes.
  const same: Run = { ...run, count, notes: note };
  if (left > 0 || run.phase === 'settled') return { run: same, ...(said === undefined ? {} : { said }) };
  if (run.phase === 'settling') return { run: next(same, { phase: 'settled' }), over: 'settled', ...(said === undefined ? {} : { said }) };
  const late = -left > LATE;
  const words = late ? `The exposure of ${spoken(count.lasts)} was over ${spoken(-left)} ago, and nobody was told: if the shutter is still open, close it now.` : said;
  return {
    run: closed(same, count.lasts / 1000, late ? [...note, `the end of the exposure was only seen ${spoken(-left)} late: how long the shutter was open is not sure`] : note), over: 'exposed', ...(words === undefined ? {} : { said: words }),
  };
}

/** The entry is written: the next plate finds the times as they were, and nothing ticked. */
export const written = (run: Run): Run => next(run, { phase: 'ready', ticked: [], fields: {}, count: undefined, rested: undefined, opened: [], notes: [] });

/** Of two that were kept of one shot the later one; of another shot the first. */
export function later(a: Run | undefined, b: Run | undefined): Run | undefined {
  if (!a || !b) return a ?? b;
  if (a.page !== b.page || a.setup !== b.setup) return a;
  return b.n > a.n || (b.n === a.n && (b.count?.seen ?? 0) > (a.count?.seen ?? 0)) ? b : a;
}
