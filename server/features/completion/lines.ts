/** What a line offers at the cursor, by what stands before it and the block that it is in. */
import { factOn } from '../../model/bind/facts.ts';
import { parseLine } from '../../../grammar/parse-line.ts';
import type { Thing } from '../../model/model.ts';
import { factIndex, factsOf, kindOf, SETUP_FACTS } from '../../model/things/index.ts';
import type { Fact, Kind } from '../../model/things/kind.ts';
import { beamOffers, legOffers, lengthOffers } from './beams.ts';
import type { Cursor, Token } from './cursor.ts';
import { factOffers, writtenIn } from './facts.ts';
import { acceptOffers, goalOffers } from './goals.ts';
import type { Offer } from './item.ts';
import { thingOffer } from './names.ts';
import { letOffers, numberOffers, unitsOf } from './numbers.ts';
import { phrases, word } from './phrases.ts';
import { placementOffers } from './placement.ts';
import { readingOffers } from './readings.ts';
import { fileOffers, setupOffers } from './statements.ts';
import { kindOffers, nextName } from './things.ts';
import { valueOffers } from './values.ts';
import { variantOffers } from './variants.ts';
import { FUNCTIONS } from '../../results/expression.ts';
import { ANGLE, LENGTH, POWER, TIME } from '../../model/units.ts';

export function offersAt(c: Cursor): Offer[] {
  const { tokens, block } = c;
  // A dot begins nothing: it is part of a number, or of a name that is not finished.
  if (c.text[c.start - 1] === '.' || tokens.some(t => t.type === 'bad' || t.type === 'open' || t.type === 'close')) return [];
  if (tokens[0]?.type === 'arrow') return c.r ? legOffers(c) : [];
  if (tokens.filter(t => t.type === 'colon').length > 1) return [];
  const colon = tokens.findIndex(t => t.type === 'colon');
  switch (block.in) {
    case 'other': return [];
    case 'file': return tokens.length === 0 ? fileOffers(c) : [];
    case 'facts': return factLine(c, colon, block.facts, () => factOffers(c, block.facts, block.owner, block.node));
    case 'inventory': return thingLine(c) ?? phrases(c, 0, onlyWords(tokens) ? kindOffers(c) : []);
    case 'setup': return setupLine(c, colon);
    case 'variant': return variantLine(c, colon);
  }
}

const onlyWords = (tokens: readonly Token[]): boolean => tokens.every(t => t.type === 'word');

function setupLine(c: Cursor, colon: number): Offer[] {
  const { tokens, r } = c;
  const opening = (): Offer[] => (onlyWords(tokens) ? phrases(c, 0, setupOffers(c)) : []);
  const head = tokens[0]?.text;
  if (head === undefined || !r) return opening();
  const fact = colon < 0 ? undefined : factBefore(c, tokens[colon]!, SETUP_FACTS);
  if (fact) return valueOffers(c, fact, tokens[colon]!.end, tokens.slice(colon + 1), wordsIn(c, SETUP_FACTS));
  switch (head) {
    case 'beam': return [...beamOffers(c), ...opening()];
    case 'measured': return readingOffers(c, r);
    case 'expect': case 'aim': return goalOffers(c, r);
    case 'accept': return acceptOffers(c);
    case 'moved': return movedOffers(c, colon);
    case 'let': return letLine(c);
  }
  return [...(thingLine(c) ?? []), ...opening()];
}

function movedOffers(c: Cursor, colon: number): Offer[] {
  const { tokens } = c;
  if (colon >= 0 || tokens.some(t => t.type === 'clause')) return [];
  const last = tokens[tokens.length - 1]!;
  const named = new Set(tokens.map(t => t.text));
  if (tokens.length === 1 || last.type === 'comma') return c.things.filter(t => !named.has(t.id)).map(t => thingOffer(t, c));
  return [word('on', 'the day, as 2026-02-14', { text: 'on ' })];
}

/** `let gap = 300 mm`: any value, so that the units are those that one writes most. */
function letLine(c: Cursor): Offer[] {
  const equals = c.tokens.findIndex(t => t.type === 'equals');
  if (equals < 0) return c.tokens.length === 2 && c.typed === '' && c.rest === '' ? [word('=', 'its value', { text: '= ' })] : [];
  const all = [LENGTH, ANGLE, TIME, POWER].flatMap(dim => unitsOf({ dim }).units(undefined));
  const functions = [...FUNCTIONS.keys()].map((f): Offer => ({ ...word(f, 'a function', { kind: 'let', text: `${f}(` }) }));
  return numberOffers(c, c.tokens[equals]!.end, c.tokens.slice(equals + 1), { starts: [...letOffers(c), ...functions], units: () => all, spread: [...all, '%'], tolerance: true });
}

/** Behind the words of a kind: a name, then where the thing stands. Undefined where the line declares none. */
function thingLine(c: Cursor): Offer[] | undefined {
  const { tokens } = c;
  const found = tokens[0]?.type === 'word' ? kindOf(tokens[0].text, tokens[1]?.text) : undefined;
  if (!found || tokens.some(t => t.type === 'colon')) return undefined;
  const { kind, length } = found;
  const name = tokens[length];
  if (!name) return c.rest !== '' || kind.word.split(' ').length < length ? [] : named(c, kind);
  if (name.type !== 'word') return kind.light === 'none' ? placed(c, kind, tokens.slice(length)) : [];
  return placed(c, kind, tokens.slice(length + 1));
}

const placed = (c: Cursor, kind: Kind, tokens: readonly Token[]): Offer[] => placementOffers(c, kind, tokens, c.block.in === 'inventory');

/** A name that is free. */
function named(c: Cursor, kind: Kind): Offer[] {
  const name = nextName(kind, c);
  return name === '' ? [] : [word(name, `a name for ${kind.article}`, { kind: 'thing' })];
}

function variantLine(c: Cursor, colon: number): Offer[] {
  const { tokens, r } = c;
  const head = tokens[0]?.text;
  const opening = (): Offer[] => phrases(c, 0, variantOffers(c));
  if (head === undefined || !r) return opening();
  if (colon >= 0) return variantValue(c, tokens[colon]!, tokens.slice(colon + 1), head);
  if (tokens.some(t => t.type === 'arrow') && tokens[1]?.type === 'arrow') return opening();
  if (head === 'beam') return beamOffers(c);
  if (head === 'let') return letLine(c);
  const thing = c.things.find(t => t.id === head);
  if (thing && kindOf(head, tokens[1]?.text) === undefined) return [...placementOffers(c, thing.kind, tokens.slice(1)), ...(onlyWords(tokens) ? opening() : [])];
  return [...(thingLine(c) ?? []), ...(onlyWords(tokens) ? opening() : [])];
}

function variantValue(c: Cursor, colon: Token, tokens: readonly Token[], head: string): Offer[] {
  const { r } = c;
  const fact = factBefore(c, colon, SETUP_FACTS);
  if (fact) return valueOffers(c, fact, colon.end, tokens, wordsIn(c, SETUP_FACTS));
  const dot = head.indexOf('.');
  if (c.tokens[1]?.type === 'arrow' || (dot > 0 && r?.setup.beams.has(head.slice(0, dot)) && /^\d+$/.test(head.slice(dot + 1)))) return lengthOffers(c, colon.end, tokens);
  const owner = dot > 0 ? c.things.find(t => t.id === head.slice(0, dot)) : undefined;
  if (!owner) return [];
  const own = factBefore(c, colon, factsOf(owner.kind), c.tokens[0]!.start + dot + 1);
  return own ? valueOffers(c, own, colon.end, tokens, saidOf(owner)) : [];
}

/** A line of a block of facts. */
function factLine(c: Cursor, colon: number, facts: readonly Fact[], opening: () => Offer[]): Offer[] {
  if (colon < 0) return c.tokens.some(t => t.type !== 'word' && t.type !== 'clause') ? [] : phrases(c, 0, opening());
  const fact = factBefore(c, c.tokens[colon]!, facts);
  return fact ? valueOffers(c, fact, c.tokens[colon]!.end, c.tokens.slice(colon + 1), wordsIn(c, facts)) : [];
}

/** The fact whose phrase stands before a colon. */
function factBefore(c: Cursor, colon: Token, facts: readonly Fact[], from = 0): Fact | undefined {
  // With any value: a line that lacks one is read no further, and finding out why takes most of the time.
  const line = parseLine(`${c.text.slice(from, colon.end)} ?`);
  return line.head ? factOn(line, factIndex(facts))?.fact : undefined;
}

/** The words that the block of the cursor says of a fact: what is assumed of another one may depend on them. */
function wordsIn(c: Cursor, facts: readonly Fact[]): (phrase: string) => string | undefined {
  const thing = c.things.find(t => t.node === c.block.node);
  if (thing) return saidOf(thing);
  const { node } = c.block;
  const lines = node && writtenIn(node, facts, c.line);
  return phrase => { const l = lines?.get(phrase)?.line; return l?.value && l.text.slice(l.value.start, l.comment?.start).trim(); };
}
const saidOf = (thing: Thing) => (phrase: string): string | undefined => { const v = thing.facts.get(phrase)?.value; return v?.kind === 'words' ? v.text : undefined; };
