/** At which values a map has its lines, and how light what lies between them is. */

/** Lines that a map has at most, about. */
const LINES = 7;
/** Nothing less than this share of the whole is a difference that is worth a line. */
const ALIKE = 0.004;

/** Round values between the least and the greatest: even steps, or 1, 2, 5 and so on where it grows tenfold and more. */
export function levelsOf(least: number, most: number): number[] {
  if (!(most - least > ALIKE * Math.max(Math.abs(most), Math.abs(least)))) return [];
  if (least > 0 && most / least >= 10) {
    const tens = Array.from({ length: Math.ceil(Math.log10(most)) - Math.floor(Math.log10(least)) + 1 }, (_, i) => Math.floor(Math.log10(least)) + i);
    const all = tens.flatMap(e => [1, 2, 5].map(m => m * 10 ** e)).filter(v => v > least && v < most);
    const every = Math.ceil(all.length / (LINES + 2));
    return all.filter((_, i) => (all.length - 1 - i) % every === 0);
  }
  const rough = (most - least) / LINES;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = ten * [1, 2, 5, 10].find(m => m * ten >= rough)!;
  const first = Math.floor(least / step) + 1;
  const levels: number[] = [];
  // Multiples of the step, each found afresh: sums would drift.
  for (let i = first; i * step < most; i++) if (i * step > least) levels.push(Number((i * step).toPrecision(12)));
  return levels;
}

/** From the darkest to the lightest colour are two stops at least, so that what hardly differs hardly looks different; and six at most. */
const [NARROW, WIDE] = [2, 6];

/** How light a value is, 0 to 1, where `most` is the lightest: even in stops. */
export function lightnessIn(least: number, most: number): (value: number) => number {
  const span = Math.min(WIDE, Math.max(NARROW, least > 0 && most > 0 ? Math.log2(most / least) : WIDE));
  return v => (v > 0 && most > 0 ? Math.max(0, 1 - Math.log2(most / v) / span) : 0);
}
