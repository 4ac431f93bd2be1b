/** Offers of several words. */
import type { Cursor } from './cursor.ts';
import type { Offer } from './item.ts';

/** Of some offers those that what is typed from `from` on may be the beginning of: all where that is no more than a word, else those that go on as it does. */
export function phrases(c: Cursor, from: number, offers: readonly Offer[]): Offer[] {
  const lead = c.text.slice(from, c.start);
  const typed = lead.trim().replace(/\s+/g, ' ').toLowerCase();
  if (typed === '') return [...offers];
  const start = from + lead.length - lead.trimStart().length;
  return offers.filter(o => (o.filter ?? o.label).toLowerCase().startsWith(`${typed} `)).map(o => ({ ...o, from: start }));
}

/** Words that are written as they are. */
export const word = (label: string, detail: string, more: Partial<Offer> = {}): Offer => ({ label, kind: 'word', detail, text: label, ...more });

/** Each label once, the first that has it. */
export function distinct(offers: readonly Offer[]): Offer[] {
  const seen = new Set<string>();
  return offers.filter(o => !seen.has(o.label) && seen.add(o.label));
}
