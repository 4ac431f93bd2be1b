/** Counting by the clock on the wall: what is left is the time of the end less the time that it is now, so that nothing drifts, and a window that is loaded anew goes on where the clock is. All in ms. */

export interface Count {
  readonly from: number;
  readonly lasts: number;
  /** when it was looked at last */
  readonly seen: number;
}

export interface Looked {
  readonly count: Count;
  readonly gone: number;
  /** below zero: so long it has been over */
  readonly left: number;
  /** by how much the clock was set back since it was looked at last, where that is worth a word; what had gone by before still counts */
  readonly back?: number;
  /** for so long nobody had looked: the computer slept, the window was gone, or the clock was set forward */
  readonly away?: number;
}

/** A clock is put right by less than that all the time. */
const WORTH = 1000;
/** Even a window that nobody sees looks at the clock more often. */
const AWAY = 90_000;

export const begin = (seconds: number, now: number): Count => ({ from: now, lasts: seconds * 1000, seen: now });

/** A clock that was set back by an hour has not given back an hour: it goes on from what had gone by when it was looked at last. */
export function look({ from, lasts, seen }: Count, now: number): Looked {
  const back = Math.max(0, seen - now);
  const count = { from: from - back, lasts, seen: now };
  const gone = now - count.from;
  return { count, gone, left: lasts - gone, ...(back > WORTH ? { back } : {}), ...(now - seen > AWAY ? { away: now - seen } : {}) };
}

/** `3:05`, `0:07`; under way a begun second counts as a whole one, so that it is over at 0:00. */
export function digits(ms: number): string {
  const s = Math.ceil(Math.max(0, ms) / 1000 - 1e-9);
  const [h, m] = [Math.floor(s / 3600), Math.floor(s / 60) % 60];
  const two = (n: number): string => String(n).padStart(2, '0');
  return h > 0 ? `${h}:${two(m)}:${two(s % 60)}` : `${m}:${two(s % 60)}`;
}

/** `3 min`, `1 min 35 s`, `7.5 s` */
export function spoken(ms: number): string {
  const s = Math.max(0, ms) / 1000;
  if (s < 60) return `${String(Math.round(s * 10) / 10)} s`;
  const whole = Math.round(s);
  const [h, m, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  return [h > 0 ? `${h} h` : '', m > 0 ? `${m} min` : '', rest > 0 && h === 0 ? `${rest} s` : ''].filter(p => p !== '').join(' ');
}
