/** Words that the grammar of colours knows are those that the program knows, and it agrees with what the server says of words where both speak. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CLAUSE_WORDS, RESERVED } from '../../grammar/tokens.ts';
import { analyse } from '../../server/analysis.ts';
import { tokensOf, type WordToken } from '../../server/features/tokens.ts';
import { FILE_STATEMENTS, STATEMENTS } from '../../server/model/bind/bind.ts';
import { KINDS } from '../../server/model/things/index.ts';
import * as units from '../../server/model/units.ts';
import { FUNCTIONS } from '../../server/results/expression.ts';
import { disk, EXAMPLES, PUBLISHED } from '../examples/library.ts';
import { colours, coloursOf, type Coloured } from './coloured.ts';

const PAGES = [...EXAMPLES, ...PUBLISHED];
/** Words of all kinds: those of the language, of things, and all on the pages. */
const WORDS = [...new Set([...FILE_STATEMENTS, ...STATEMENTS, ...RESERVED, ...FUNCTIONS.keys(), ...KINDS.flatMap(k => k.word.split(' ')), ...PAGES.flatMap(p => p.text.match(/\p{L}[\p{L}\p{N}_-]*/gu) ?? [])])];
const has = (part: Coloured | undefined, ...scopes: readonly string[]): boolean => (part?.scopes ?? []).some(s => scopes.some(scope => s.startsWith(scope)));

describe('words that are coloured as words of the language are those', () => {
  test('that open a statement', () => {
    const tails = [' "a" {', ' "a"', ' a', ' a {', ' a: 3', ' a < 3', ': 3', ' 7 on 2026-02-11 {', ' on 2026-02-11', ' {'];
    const opens = (word: string): boolean => tails.some(tail => { const first = colours(`  ${word}${tail}`)[1]; return first?.text === word && has(first, 'keyword.declaration', 'keyword.control', 'keyword.other.goal', 'keyword.other.reading'); });
    expect(WORDS.length).toBeGreaterThan(300);
    expect(WORDS.filter(opens).sort()).toEqual([...FILE_STATEMENTS, ...STATEMENTS].sort());
  });
  test('that cannot be names', () => {
    const reserved = (word: string): boolean => colours(`P1 ${word} (3)`).some(c => c.text === word && has(c, 'keyword.other.clause', 'keyword.other.std', 'keyword.operator.size'));
    expect(WORDS.filter(reserved).sort()).toEqual([...RESERVED].sort());
  });
  test('and each list of them in the grammar is this one', () => {
    const grammar = readFileSync(new URL('../../grammar/plate.tmLanguage.json', import.meta.url), 'utf8');
    const lists = new Set(grammar.match(/(?<=\(\?:)at\|[a-z|]+(?=\))/g));
    expect(lists).toEqual(new Set([CLAUSE_WORDS.join('|'), [...RESERVED].join('|')]));
    expect(grammar).toContain(`(?:${[...FILE_STATEMENTS, ...STATEMENTS].join('|')})`);
  });
});

test.each([...FUNCTIONS.keys()])('the function %s', name => {
  expect(colours(`let a = ${name}(b)`).filter(c => has(c, 'support.function')).map(c => c.text)).toEqual([name]);
});

test('each unit of the program is one', () => {
  const dims = Object.values(units).filter((value): value is units.Dim => typeof value === 'object' && 'powers' in value);
  const all = dims.flatMap(d => [...units.unitsFor(d), units.siUnit(d)]).filter(unit => unit !== '');
  expect(all.length).toBeGreaterThan(40);
  for (const unit of all) for (const blank of ['', ' ']) expect(colours(`n: 5${blank}${unit} // old`).filter(c => has(c, 'keyword.other.unit')).map(c => c.text), unit).toEqual([unit]);
});

describe('what the server says of a word agrees', () => {
  const NAMES = ['variable.other.plate', 'variable.other.property.plate'];
  // A line alone does not tell that the first word of a change in a variant (`spear {`) is a name.
  const ANY: Readonly<Record<WordToken['type'], readonly string[]>> = {
    type: ['entity.name.type.plate'], unit: ['keyword.other.unit.plate'], sought: ['constant.language.unknown.plate'],
    variable: [...NAMES, 'entity.name.type.plate'], event: NAMES, namespace: NAMES, item: NAMES, property: NAMES, enumMember: ['variable.other.plate'], unknownWord: [],
  };
  const pages = PAGES.map(page => { const s = analyse(page.uri, page.text, disk); return { page, lines: coloursOf(page.text), tokens: tokensOf(s) }; });
  const shown = (text: string, line: number, part: Pick<Coloured, 'start' | 'end'>): string => `${line + 1}: ${text.split('\n')[line]!.slice(part.start, part.end)}`;

  test.each(pages.map(p => [p.page.name, p] as const))('on %s', (_, { page, lines, tokens }) => {
    const apart = tokens.flatMap(t => {
      const end = t.start + t.length;
      const fits = t.modifiers.includes('declaration') ? ['variable.other.definition.plate'] : ANY[t.type];
      const over = lines[t.line]!.filter(c => c.start < end && c.end > t.start);
      return over.length > 0 && over.every(c => fits.includes(c.scopes.at(-1)!)) ? [] : [`${shown(page.text, t.line, { start: t.start, end })} is ${t.type}, coloured ${over.map(c => c.scopes.at(-1)).join(' ')}`];
    });
    expect(apart).toEqual([]);
  });
  test.each(pages.map(p => [p.page.name, p] as const))('in what is coloured on %s', (_, { page, lines, tokens }) => {
    const said = (line: number, part: Coloured, what: (t: WordToken) => boolean): boolean => tokens.some(t => t.line === line && t.start >= part.start && t.start < part.end && what(t));
    const wrong = lines.flatMap((parts, line) => parts.filter(c => (has(c, 'variable.other.definition') && !said(line, c, t => t.modifiers.includes('declaration')))
      || (has(c, 'keyword.other.unit') && !said(line, c, t => t.type === 'unit'))
      || (has(c, 'constant.language.unknown') && !said(line, c, t => t.type === 'sought'))
      || (has(c, 'entity.name.type') && !said(line, c, t => t.type === 'type' || t.type === 'variable'))).map(c => shown(page.text, line, c)));
    expect(wrong).toEqual([]);
  });
});
