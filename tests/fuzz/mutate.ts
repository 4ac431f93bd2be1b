/** Changes a text as a hand, a merge or a broken disk might: words and lines moved, numbers and units swapped, letters flipped, two texts spliced. */
import type { Random } from './random.ts';

const WORD = /[\p{L}\p{N}_.-]+|\s+|[^\s\p{L}\p{N}]/gu;
const NUMBER = /\d+(?:\.\d+)?(?:e[+-]?\d+)?/gi;
const NUMBERS = ['0', '1', '-1', '0.5', '1e-30', '1e30', '1e308', '1e999', '1e-999', '90', '180', '360', '632.8', '2147483648', '9007199254740993', '00', '.', '1.', '7,5'];
const LETTERS = ['\0', '\t', ' ', '\u00a0', '\n', '\r', '\r\n', '\u2028', '\ufeff', '"', '{', '}', '(', ')', '-', '>', '±', '?', ':', '/', 'é', 'µ', '🐚', '\ud83d', '\udc1a', '\u202e', '\\'];
/** Longer texts are cut: they take long, and show nothing that a shorter one would not. */
const MOST = 4000;

/** @param other another text of the same kind; @param words what to put in */
export function mutate(text: string, other: string, words: readonly string[], random: Random): string {
  let made = text;
  for (let n = 1 + random.below(3); n > 0; n--) made = once(made, other, words, random);
  return made.length > MOST ? made.slice(0, MOST) : made;
}

function once(text: string, other: string, words: readonly string[], random: Random): string {
  switch (random.below(12)) {
    case 0: return swapped(text, WORD, random);
    case 1: return one(text, WORD, random, () => random.of(words));
    case 2: return one(text, WORD, random, w => `${w}${random.of(['', ' '])}${random.of(words)} `);
    case 3: return one(text, WORD, random, () => '');
    case 4: return lines(text, all => { const [line] = all.splice(random.below(all.length), 1); all.splice(random.below(all.length + 1), 0, line!); });
    case 5: return lines(text, all => { all.splice(random.below(all.length), 1 + random.below(3)); });
    case 6: return lines(text, all => { all.splice(random.below(all.length + 1), 0, random.of(other.split('\n'))); });
    case 7: return one(text, NUMBER, random, () => random.of(NUMBERS));
    case 8: return swapped(text, NUMBER, random);
    case 9: return splice(text, random, random.of(LETTERS), random.below(2));
    case 10: return text.slice(0, random.below(text.length + 1)) + (random.below(2) === 0 ? '' : other.slice(random.below(other.length + 1)));
    default: return splice(text, random, String.fromCharCode((text.charCodeAt(random.below(text.length + 1)) || 32) ^ (1 << random.below(8))), 1);
  }
}

function splice(text: string, random: Random, by: string, instead: number): string {
  const at = random.below(text.length + 1);
  return text.slice(0, at) + by + text.slice(at + instead);
}

function one(text: string, what: RegExp, random: Random, by: (found: string) => string): string {
  const found = [...text.matchAll(what)];
  if (found.length === 0) return text + by('');
  const { 0: was, index } = random.of(found);
  return text.slice(0, index) + by(was) + text.slice(index + was.length);
}

function swapped(text: string, what: RegExp, random: Random): string {
  const found = [...text.matchAll(what)];
  if (found.length < 2) return text;
  const [a, b] = [random.of(found), random.of(found)].sort((x, y) => x.index - y.index) as [RegExpExecArray, RegExpExecArray];
  return a.index === b.index ? text : text.slice(0, a.index) + b[0] + text.slice(a.index + a[0].length, b.index) + a[0] + text.slice(b.index + b[0].length);
}

function lines(text: string, change: (all: string[]) => void): string {
  const all = text.split('\n');
  change(all);
  return all.join('\n');
}
