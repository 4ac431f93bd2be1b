import { expect, test } from 'vitest';
import { parseLine } from '../../grammar/parse-line.ts';
import { factsOf, KINDS, kindOf, PROCESS_FACTS, SETUP_FACTS, SHOT_FACTS } from '../../server/model/things/index.ts';

const all = [...KINDS.flatMap(k => factsOf(k).map(f => ({ of: k.word, fact: f }))), ...[SETUP_FACTS, SHOT_FACTS, PROCESS_FACTS].flatMap(list => list.map(f => ({ of: 'setup', fact: f })))];

test.each(all.map(({ of, fact }) => [`${of}: ${fact.phrase}`, fact] as const))('%s can be written', (_, fact) => {
  const { type } = fact;
  const words = type.type === 'choice' ? type.words : (type.type === 'quantity' || type.type === 'count') && type.words ? type.words : ['1'];
  for (const value of words) expect(parseLine(`${fact.phrase}: ${value}`).issue).toBeUndefined();
  if (fact.assumed) expect(parseLine(`${fact.phrase}: ${fact.assumed.text}`).issue).toBeUndefined();
});

test('every kind is found by its words, and each fact of a kind is named once', () => {
  for (const k of KINDS) {
    const [first, second] = k.word.split(' ');
    expect(kindOf(first!, second)?.kind).toBe(k);
    expect(parseLine(`${k.word} X1`).issue).toBeUndefined();
    const phrases = factsOf(k).map(f => f.phrase);
    expect(new Set(phrases).size).toBe(phrases.length);
  }
});
