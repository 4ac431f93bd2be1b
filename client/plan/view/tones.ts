/** What is heard while the panel is dark: few signs, told apart by pitch that rises, falls or stays. Plain data; `sound.ts` plays it. */

/** Frequency in Hz; when it begins and how long it lasts, s. */
export interface Tone { readonly hz: number; readonly at: number; readonly lasts: number }

/** Of a page: how many errors it has, or that the picture is not of the text as it is now. */
export type Order = number | 'unknown';

const [HIGH, HIGHER, LOW] = [660, 880, 220];
/** Nobody counts further by ear. */
const MOST = 4;

/** Two tones that rise: no error is on the page. A low one for each error, up to four. A long low one: it is not known. */
export function tonesOf(order: Order): Tone[] {
  if (order === 'unknown') return [{ hz: LOW, at: 0, lasts: 1.2 }];
  if (order === 0) return [{ hz: HIGH, at: 0, lasts: 0.14 }, { hz: HIGHER, at: 0.16, lasts: 0.18 }];
  return Array.from({ length: Math.min(order, MOST) }, (_, i) => ({ hz: LOW, at: 0.32 * i, lasts: 0.2 }));
}

/** Two tones that fall: it is lit again. */
export const LIT: readonly Tone[] = [{ hz: HIGHER, at: 0, lasts: 0.14 }, { hz: HIGH, at: 0.16, lasts: 0.18 }];
