/** What stands behind a fact's colon: its words, values as they are often written, the value that is assumed, names. */
import { assumedFor } from '../../model/things/index.ts';
import type { Fact } from '../../model/things/kind.ts';
import { LENGTH, NUMBER } from '../../model/units.ts';
import type { Cursor, Token } from './cursor.ts';
import { type Offer, type Piece } from './item.ts';
import { letOffers, numberOffers, unitsOf, type Numbers } from './numbers.ts';
import { distinct, phrases, word } from './phrases.ts';
import { itemNames, thingOffer } from './names.ts';

const ASKED = { label: '?', kind: 'value', detail: 'to be found', text: '?', words: 'An unknown that the program is to find. `? from 1% to 99%` says between which values.' } as const;
const ANY = { tolerance: false, units: () => [], spread: [] } as const;

/** `from`: the end of the colon; `tokens`: what stands between it and the word at the cursor; `said`: the words of another fact of the same thing. */
export function valueOffers(c: Cursor, fact: Fact, from: number, tokens: readonly Token[], said: (phrase: string) => string | undefined = () => undefined): Offer[] {
  const { type } = fact;
  const starts = startOffers(c, fact, said);
  switch (type.type) {
    case 'choice': case 'name': case 'text': case 'date': return phrases(c, from, starts);
    case 'ratio': return tokens.length === 0 ? starts : [];
    case 'count': return tokens.length === 0 ? starts : [];
    case 'sizes': return numberOffers(c, from, tokens, { starts, ...unitsOf({ dim: LENGTH, ...usualOf(fact) }), tolerance: true, parts: type.numbers });
    case 'points': return tokens.some(t => t.type === 'comma') && type.single ? [] : numberOffers(c, from, tokens, { ...ANY, starts, units: () => ['mm', 'cm'], places: true });
    case 'quantity': {
      const numbers: Numbers = { starts, ...unitsOf({ dim: type.dim, ...(type.sign ? { sign: type.sign } : {}), ...(type.within ? { within: type.within } : {}), ...usualOf(fact) }), tolerance: true };
      const asked = tokens[0]?.type === 'unknown';
      const limit = tokens.findLastIndex(t => t.type === 'clause' && (t.text === 'from' || t.text === 'to'));
      if (!asked) return numberOffers(c, from, tokens, numbers);
      if (limit < 0) return [word('from', 'between which values it is to be found')];
      const inLimit = numberOffers(c, tokens[limit]!.end, tokens.slice(limit + 1), { ...numbers, starts: starts.filter(o => o.kind === 'let'), tolerance: false });
      return tokens[limit]!.text === 'from' && limit < tokens.length - 1 ? [...inLimit, word('to', 'the upper end')] : inLimit;
    }
  }
}

const usualOf = (fact: Fact): { usual?: readonly string[] } => ({ ...(fact.usual ? { usual: fact.usual } : {}) });

/** With what a value begins, the likeliest first. */
function startOffers(c: Cursor, fact: Fact, said: (phrase: string) => string | undefined): Offer[] {
  const { type } = fact;
  const assumed = assumedFor(fact, said);
  const because = assumed && { detail: 'assumed where nothing is written', words: `Where nothing is written, \`${assumed.text}\` is assumed: ${assumed.why}.` };
  const value = (text: string, kind: Offer['kind'] = 'value'): Offer => ({ label: text, kind, text, ...(text === assumed?.text ? because : kind === 'value' ? { detail: 'often' } : {}) });
  const usual = (fact.names ? [] : fact.usual ?? []).map(u => value(u));
  switch (type.type) {
    case 'choice': return distinct([...(fact.usual ?? []), ...type.words].filter(w => type.words.includes(w)).map(w => value(w, 'choice')));
    case 'name': return [...c.things.filter(t => t.kind.word === type.of).map(t => thingOffer(t, c)), ...itemNames(c, i => i.kind.word === type.of)];
    case 'quantity': case 'count': {
      const lets = letOffers(c, [type.type === 'count' ? NUMBER : type.dim]);
      return distinct([...usual, ...(type.words ?? []).map(w => value(w, 'choice')), ...(assumed ? [value(assumed.text)] : []), ...lets, ...(type.type === 'count' ? [] : [ASKED])]);
    }
    // The variants that there are, in their quotes.
    case 'text': return fact.names && fact.phrase === 'variant' ? (c.r?.setup.variants ?? []).map(v => ({ label: `"${v.name}"`, kind: 'value', text: `"${v.name}"`, detail: 'a variant of this setup' })) : usual;
    default: return usual;
  }
}

/** The value of a fact in a piece that is written whole: with what stands there most often. */
export function valuePieces(fact: Fact, names: readonly string[] = []): Piece[] {
  const { type } = fact;
  const first = (fact.names ? undefined : fact.usual?.[0]) ?? fact.assumed?.text ?? '';
  switch (type.type) {
    case 'choice': return [{ pick: [...new Set([...(fact.usual ?? []).filter(u => type.words.includes(u)), ...type.words])] }];
    case 'name': return [names.length > 0 ? { pick: names } : { stop: '' }];
    case 'text': return first.startsWith('"') || first === '' ? ['"', { stop: first.replaceAll('"', '') }, '"'] : [{ stop: first }];
    default: return [{ stop: first }];
  }
}
