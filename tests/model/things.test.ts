/** The vocabulary: every value that it names can be written, what it assumes has a reason, and the rules ask for facts that it has. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parseLine } from '../../grammar/parse-line.ts';
import { readFact, takesClause } from '../../server/model/bind/fact-values.ts';
import { assumedFor, factIndex, factsOf, KINDS, kindNamed, kindOf, PROCESS_FACTS, SETUP_FACTS, SHOT_FACTS, takersOf } from '../../server/model/things/index.ts';
import { COMMON, type Fact } from '../../server/model/things/kind.ts';

const lists: readonly (readonly [string, readonly Fact[]])[] = [...KINDS.map(k => [k.word, factsOf(k)] as const), ['setup', SETUP_FACTS], ['shot', SHOT_FACTS], ['process', PROCESS_FACTS]];
const all = lists.flatMap(([of, facts]) => facts.map(fact => ({ of, fact, facts })));
/** Words and values that the vocabulary itself names for a fact. */
const named = all.flatMap(({ of, fact }) => {
  const { type } = fact;
  const words = type.type === 'choice' ? type.words : (type.type === 'quantity' || type.type === 'count') && type.words ? type.words : [];
  const assumed = [fact.assumed, ...Object.values(fact.assumedBy?.of ?? {})].flatMap(a => (a ? [a.text] : []));
  return [...new Set([...words, ...(fact.usual ?? []), ...assumed])].map(value => ({ line: `${fact.phrase}${fact.numbered ? ' 4.5' : ''}: ${value}`, of, fact }));
});

test.each(named.map(n => [`${n.of}: ${n.line}`, n] as const))('%s can be written', (_, { line: text, fact }) => {
  const line = parseLine(text);
  expect(line.issue).toBeUndefined();
  expect(readFact(line, line.value!, fact.type)).toHaveProperty('ok');
  expect(line.clauses.filter(c => !takesClause(line, c, fact.type))).toEqual([]);
});

test.each(all.filter(a => a.fact.type.type === 'quantity').map(a => [`${a.of}: ${a.fact.phrase}`, a.fact] as const))('%s has a value as it is usually written', (_, fact) => {
  expect(fact.usual?.length).toBeGreaterThan(0);
});

test('every kind is found by its words, and each fact of a kind is named once', () => {
  for (const k of KINDS) {
    const [first, second] = k.word.split(' ');
    expect(kindOf(first!, second)?.kind).toBe(k);
    expect(parseLine(`${k.word} X1`).issue).toBeUndefined();
    const phrases = factsOf(k).map(f => f.phrase);
    expect(new Set(phrases).size).toBe(phrases.length);
    expect((k.usual ?? []).filter(p => !phrases.includes(p)), k.word).toEqual([]);
    expect(k.usual?.length, k.word).toBeGreaterThan(0);
  }
});

test('meanings are sentences, and facts that name things name a kind', () => {
  for (const { of, fact } of all) {
    expect(fact.doc, `${of}: ${fact.phrase}`).toMatch(/^[\p{Lu}].*\.$/u);
    if (fact.type.type === 'name') expect(kindNamed(fact.type.of)).toBeDefined();
  }
});

describe('what is assumed', () => {
  const guesses = all.flatMap(({ of, fact, facts }) => [fact.assumed, ...Object.values(fact.assumedBy?.of ?? {})].flatMap(a => (a ? [{ of, fact, facts, ...a }] : [])));
  test('has a reason, which goes on behind “is assumed:”', () => {
    for (const { of, fact, why } of guesses) {
      expect(why.length, `${of}: ${fact.phrase}`).toBeGreaterThan(15);
      expect(why, `${of}: ${fact.phrase}`).toMatch(/^(?!The |A |An )\S.*[^.\s]$/);
    }
  });
  // Powers, wavelengths, coherence, distances and splits are never guessed: without them the answer is that it is not known.
  test('is nothing that only a meter, a string or a label can tell', () => {
    const open = ['laser: wavelength', 'laser: power', 'laser: coherence length', 'laser: linewidth', 'laser: tube length', 'laser: modes', 'splitter: reflects', 'splitter: wheel', 'splitter: mark', 'mirror: focal length', 'spreader: focal length', 'spreader: pinhole',
      'attenuator: density', 'object: depth', 'object: size', 'plate: size', 'plate: reference angle', 'hologram: depth', 'hologram: image distance', 'lamp: distance', 'viewer: distance', 'setup: exposure', 'setup: beam ratio'];
    for (const name of open) {
      const found = all.find(({ of, fact }) => `${of}: ${fact.phrase}` === name);
      expect(found, name).toBeDefined();
      expect(found!.fact.assumed, name).toBeUndefined();
    }
  });
  test('of shares of light has a band, since nobody has metered it', () => {
    for (const { of, fact, text } of guesses) if (fact.type.type === 'quantity' && fact.type.sign === 'share' && fact.phrase !== 'coherence contrast') expect(text, `${of}: ${fact.phrase}`).toMatch(/±|×÷/);
  });
  test('keeps within what is possible, to the end of its band', () => {
    for (const { of, fact, text } of guesses) {
      if (fact.type.type !== 'quantity') continue;
      const line = parseLine(`a: ${text}`);
      const read = readFact(line, line.value!, fact.type);
      if (!('ok' in read) || read.ok.kind !== 'quantity') throw new Error(text);
      const { value, spread } = read.ok.quantity;
      const [low, high] = spread?.kind === 'within' ? [value - spread.amount, value + spread.amount] : spread?.kind === 'factor' ? [value / spread.amount, value * spread.amount] : [value, value];
      const bounds = fact.type.within ?? (fact.type.sign === 'share' ? { from: 0, to: 1 } : undefined);
      if (bounds) {
        expect(low, `${of}: ${fact.phrase}`).toBeGreaterThanOrEqual(bounds.from - 1e-12);
        expect(high, `${of}: ${fact.phrase}`).toBeLessThanOrEqual(bounds.to + 1e-12);
      }
    }
  });
  test('by another fact names that fact’s words', () => {
    for (const { of, fact, facts } of all) {
      if (!fact.assumedBy) continue;
      const by = factIndex(facts).get(fact.assumedBy.phrase)?.type;
      expect(by?.type, `${of}: ${fact.phrase}`).toBe('choice');
      if (fact.used) expect(factIndex(facts).get(fact.assumedBy.phrase)?.used, `${of}: ${fact.assumedBy.phrase}`).toBe(true);
      for (const word of Object.keys(fact.assumedBy.of)) expect(by?.type === 'choice' && by.words, `${of}: ${word}`).toContain(word);
    }
  });
  test('follows what is written of the other fact, and else is what holds for all', () => {
    const loss = factIndex(factsOf(kindNamed('mirror')!)).get('loss')!;
    expect(assumedFor(loss, p => (p === 'coating' ? 'dielectric' : undefined))?.text).toBe('1% ×÷ 3');
    expect(assumedFor(loss, () => undefined)?.text).toBe('12% ± 5 points');
    const sensitivity = factIndex(factsOf(kindNamed('plate')!)).get('sensitivity')!;
    expect(assumedFor(sensitivity, () => undefined)).toBeUndefined();
  });
});

/**
 * Bands of the sorts of layers. Ends as stated in Collier, Burckhardt and Lin (1971), Bjelkhagen (1993) and Hariharan (1996), from memory;
 * SI. A band must reach both ends to a tenth.
 */
test.each<[phrase: string, material: string, low: number, high: number]>([
  ['sensitivity', 'fine-grain silver halide', 0.015, 1], ['sensitivity', 'finer-grain silver halide', 0.5, 3], ['sensitivity', 'ultra-fine silver halide', 3, 50],
  ['sensitivity', 'dichromated gelatin', 100, 5000], ['sensitivity', 'photopolymer', 50, 500], ['sensitivity', 'photoresist', 200, 5000], ['sensitivity', 'thermoplastic', 0.01, 1],
  ['resolving power', 'dichromated gelatin', 5e6, 1e7], ['resolving power', 'photopolymer', 3e6, 6e6], ['resolving power', 'photoresist', 1e6, 3e6], ['resolving power', 'thermoplastic', 4e5, 1.5e6],
  ['layer', 'fine-grain silver halide', 5e-6, 7e-6], ['layer', 'ultra-fine silver halide', 6e-6, 10e-6], ['layer', 'dichromated gelatin', 5e-6, 30e-6], ['layer', 'photopolymer', 5e-6, 50e-6], ['layer', 'photoresist', 0.5e-6, 3e-6],
])('%s of %s covers what the handbooks give', (phrase, material, low, high) => {
  const fact = factIndex(factsOf(kindNamed('plate')!)).get(phrase)!;
  const line = parseLine(`a: ${assumedFor(fact, p => (p === 'material' ? material : undefined))!.text}`);
  const read = readFact(line, line.value!, fact.type);
  if (!('ok' in read) || read.ok.kind !== 'quantity' || !read.ok.quantity.spread || read.ok.quantity.spread.kind === 'one of') throw new Error(line.text);
  const { value, spread } = read.ok.quantity;
  const ends = spread.kind === 'factor' ? [value / spread.amount, value * spread.amount] : [value - spread.amount, value + spread.amount];
  expect(Math.abs(ends[0]! / low - 1)).toBeLessThan(0.1);
  expect(Math.abs(ends[1]! / high - 1)).toBeLessThan(0.1);
});

test('what takes a fact is told with its article', () => {
  expect(takersOf('tone')).toEqual(['a fill card', 'an object']);
  expect(takersOf('hole spacing')).toEqual(['a setup']);
  expect(takersOf('hole spacings')).toEqual([]);
});

describe('facts that the rules ask for', () => {
  const folder = new URL('../../server/results/', import.meta.url);
  const texts = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(f => f.endsWith('.ts')).map(f => readFileSync(new URL(f.replaceAll('\\', '/'), folder), 'utf8'));
  const asked = new Set(texts.flatMap(text => [...text.matchAll(/(?:\.(?:fact|words|isWritten)\([\w.]+, |\.facts\.(?:get|has)\(|\.setupFact\()'([^']+)'/g)].map(m => m[1]!)));
  const every = [...KINDS.flatMap(k => k.facts), ...COMMON, ...SETUP_FACTS];
  test('are found in the sources', () => expect([...asked]).toEqual(expect.arrayContaining(['wavelength', 'thickness', 'glass', 'depth', 'beam height'])));
  test.each([...asked])('%s is in the vocabulary, and marked as computed with', phrase => {
    expect(every.some(f => f.phrase === phrase && f.used)).toBe(true);
  });
});
