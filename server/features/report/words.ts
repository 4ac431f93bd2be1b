/** The words in which a report puts figures: how a part will look, and how two paths compare. */
import { BANDS, brightnessWord } from '../../checks/brightness.ts';
import { giveOrTake, percent, show } from '../../model/show.ts';
import type { Quantity } from '../../model/quantity.ts';

/** `dull to full`; one word where both ends read the same. */
export function brightnessWords(low: number, high: number): string {
  const [a, b] = [brightnessWord(low), brightnessWord(high)];
  return a === b ? a : `${a} to ${b}`;
}

/** What the words mean, in one line. */
export const bandLegend = (): string => BANDS.map((b, i) => (b.from > 0 ? `${b.word} from ${percent(b.from)}` : `${b.word} below ${percent(BANDS[i - 1]!.from)}`)).join(', ');

/** “the object beam”, or the beam by its name where it is called something else. */
export const beamWords = (name: string, role: 'reference' | 'object'): string => (name === role ? (role === 'object' ? 'the object beam' : 'the reference') : `the beam “${name}”`);

/** How much longer one path is: `The object beam is 84 ± 7 mm longer than the reference.` `shown` is the mismatch as it is shown, `u` its standard uncertainty. */
export function comparePaths(object: string, reference: string, shown: string, mismatch: number, u: number): string {
  const size = shown.replace(/^−/, '');
  if (/^[0.]+ (?!±)/.test(size)) return sentence(`${object} and ${reference} are equally long.`);
  if (/^[0.]+ ±/.test(size)) return sentence(`${object} and ${reference} are equally long: ${size}.`);
  const longer = `${object} is ${size} ${mismatch > 0 ? 'longer' : 'shorter'} than ${reference}`;
  return Math.abs(mismatch) < 2 * u ? sentence(`${longer}: as far as the lengths are known, both match.`) : sentence(`${longer}.`);
}

const sentence = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** A length as its author wrote it: `750 ± 2 mm`, where `±` says “surely within”. */
export function asWritten(q: Quantity): string {
  const bare = show(q.value, q.dim, 0, q.unit);
  const unit = q.unit?.text ?? '';
  const number = unit !== '' && bare.endsWith(unit) ? bare.slice(0, -unit.length).trimEnd() : bare;
  const amount = (a: number): string => {
    const text = show(a, q.dim, 0, q.unit && { ...q.unit, offset: 0 });
    return unit !== '' && text.endsWith(unit) ? text.slice(0, -unit.length).trimEnd() : text;
  };
  switch (q.spread?.kind) {
    case 'within': return giveOrTake(number, amount(q.spread.amount), q.unit);
    case 'std': return `${giveOrTake(number, amount(q.spread.amount), q.unit)} std`;
    case 'factor': return `${bare} ×÷ ${String(q.spread.amount)}`;
    default: return bare;
  }
}

/** What is not computed yet, kind by kind: `coverage; laser: power, warm-up; setup: table`. */
export function pendingWords(what: string): string {
  const plain: string[] = [];
  const groups = new Map<string, string[]>();
  for (const item of what.split(', ')) {
    const [, before, word, behind] = /^([^“]*)“([^”]*)”(?: of a (.*))?$/u.exec(item) ?? [];
    const group = before === '' ? behind : before?.trimEnd();
    if (group === undefined) { plain.push(word ?? item); continue; }
    const list = groups.get(group) ?? [];
    if (!groups.has(group)) groups.set(group, list);
    list.push(word!);
  }
  return [...(plain.length > 0 ? [plain.join(', ')] : []), ...[...groups].map(([group, list]) => `${group}: ${list.join(', ')}`)].join('; ');
}
