/** The plates that were shot, by date: what each was, how it was exposed, and what came of it. Plain data. */
import type { Shot } from '../learn/shots.ts';

export interface HistoryRow {
  readonly shot: Shot;
  /** said of it where something about it is amiss */
  readonly remarks: readonly string[];
}

export interface History {
  /** by date, the oldest first; those without a date last, in the order of their pages */
  readonly rows: readonly HistoryRow[];
  /** columns of numbers that any shot has */
  readonly numbers: readonly string[];
}

export const HISTORY_NUMBERS = ['exposure', 'best exposure', 'dose', 'power', 'settle', 'beam ratio', 'temperature', 'humidity', 'brightness', 'replay wavelength', 'replay angle'] as const;

export function historyOf(shots: readonly Shot[]): History {
  const rows = shots.map((shot): HistoryRow => ({ shot, remarks: remarksOn(shot, shots) }));
  const day = ({ shot }: HistoryRow): string => shot.on ?? '~';
  return { rows: rows.map((r, i) => ({ r, i })).sort((a, b) => (day(a.r) < day(b.r) ? -1 : day(a.r) > day(b.r) ? 1 : a.i - b.i)).map(({ r }) => r), numbers: HISTORY_NUMBERS.filter(n => shots.some(s => s.numbers.has(n))) };
}

function remarksOn(shot: Shot, all: readonly Shot[]): string[] {
  const own = all.filter(s => s.setup === shot.setup);
  const before = own[own.indexOf(shot) - 1];
  const expires = shot.plate?.facts.get('expires')?.value;
  return [
    ...(shot.on === undefined ? ['no date'] : []), ...(shot.words.has('outcome') || shot.numbers.has('best exposure') ? [] : ['no outcome']),
    ...(own.filter(s => s.name === shot.name).length > 1 ? ['its number is on the page twice'] : []),
    ...(before?.on !== undefined && shot.on !== undefined && before.on.slice(0, 10) > shot.on.slice(0, 10) ? [`it stands behind shot ${before.name}, which is of ${before.on}`] : []),
    ...(expires?.kind === 'words' && shot.on !== undefined && shot.on.slice(0, 10) > expires.text ? [`after ${expires.text}, the date on the box`] : []),
  ];
}

