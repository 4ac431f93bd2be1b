/** The calendar by which the text dates. */

/** Why no calendar or clock has that date; undefined where they have it. Gregorian calendar, ISO 8601. */
export function noSuchDate(text: string): string | undefined {
  const [day, time] = text.split('T') as [string, string | undefined];
  const [y, m, d] = day.split('-').map(Number) as [number, number, number];
  if (m < 1 || m > 12) return `a year has 12 months, and this is month ${m}`;
  const days = m === 2 ? (y % 4 === 0 && (y % 100 !== 0 || y % 400 === 0) ? 29 : 28) : [4, 6, 9, 11].includes(m) ? 30 : 31;
  if (d < 1 || d > days) return `that month has ${days} days`;
  const [h, min] = (time ?? '0:0').split(':').map(Number) as [number, number];
  return h > 23 || min > 59 ? 'a day goes from 00:00 to 23:59' : undefined;
}
