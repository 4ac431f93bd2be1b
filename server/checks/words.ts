/** How findings quote what the author wrote. */
import { text, type Data } from './check.ts';

const LONGEST = 60;

/** In quotes, shortened in the middle of a long text: a finding never repeats a whole page. */
export const quote = (s: string): string => `“${shorten(s)}”`;
export const quoted = (data: Data, key: string): string => quote(text(data, key));

function shorten(s: string): string {
  const letters = [...s.trim()];
  return letters.length <= LONGEST ? letters.join('') : `${letters.slice(0, LONGEST - 15).join('')} … ${letters.slice(-10).join('')}`;
}

/** With a capital first letter. */
export const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** `5,001` */
// eslint-disable-next-line regexp/no-super-linear-move -- a number has few digits
export const whole = (n: number): string => String(n).replace(/\B(?=(?:\d{3})+$)/g, ',');

/** `a, b or c` */
export const anyOf = (list: string): string => list.replace(/, ([^,]*)$/, ' or $1');

/** A sentence behind another, or nothing. */
export const also = (sentence: string): string => (sentence === '' ? '' : ` ${sentence}`);
