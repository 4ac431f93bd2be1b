/** Facts in words, for hovers and pages. */
import { oneOf } from '../literal.ts';
import { dimName, NUMBER, unitsFor } from '../units.ts';
import type { Assumed, Fact, FactType } from './kind.ts';

/** What stands before the colon: `loss`, or `mark 4.5` of a numbered fact. */
export const factHead = (fact: Fact): string => (fact.numbered ? `${fact.phrase} 4.5` : fact.phrase);

/** What is assumed of a fact, by the words of another where that decides: `coating: silver`, 4% ± 3 points, its reason. What is assumed alike of several stands there once. */
export function assumedByWords({ assumedBy }: Fact): readonly (readonly [string, Assumed])[] {
  const alike = new Map<Assumed, string[]>();
  for (const [word, a] of Object.entries(assumedBy?.of ?? {})) alike.set(a, [...(alike.get(a) ?? []), word]);
  return [...alike].map(([a, words]) => [`${assumedBy!.phrase}: ${oneOf(words)}`, a]);
}

/** What a fact takes, in words. */
export function typeWords(type: FactType): string {
  const or = (words: readonly string[] | undefined): string => (words ? `, or ${oneOf(words)}` : '');
  switch (type.type) {
    case 'quantity': return oneOf([type.dim, ...(type.or ?? [])].map(dim => quantity({ ...type, dim }))) + or(type.words);
    case 'count': return `a whole number${or(type.words)}`;
    case 'choice': return oneOf(type.words);
    case 'sizes': return `${oneOf(type.numbers.map(String))} sizes such as ${type.numbers[0] === 3 ? '40 x 60 x 35 mm' : '40 x 60 mm'}`;
    case 'ratio': return 'a ratio such as 4:1';
    case 'points': return type.single ? 'a place such as (10, 5, -3) mm' : 'places such as (10, 5, -3) mm, parted by commas';
    case 'text': return 'words, or a text in quotes';
    case 'date': return 'a date such as 2026-02-11';
    case 'name': return `the name of a ${type.of}`;
  }
}

function quantity({ dim, sign, within }: FactType & { type: 'quantity' }): string {
  if (dim === NUMBER) return within?.words ?? (sign === 'share' ? 'a share, 0 % to 100 %' : 'a number');
  const name = dimName(dim);
  if (within) return `${name}, ${within.words}`;
  return `${name.startsWith('a quantity') ? 'a value' : name} in ${oneOf(unitsFor(dim).slice(0, 4))}`;
}
