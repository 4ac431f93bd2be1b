/** The reference, grammar/language.md, says what the grammar does: its examples, words, spellings and limits are tried. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { MAX_BRACKETS } from '../../grammar/line-issues.ts';
import { MAX_DEPTH } from '../../grammar/nest.ts';
import { MAX_LINES, MAX_SIZE, parse } from '../../grammar/parse.ts';
import { MAX_LINE, parseLine } from '../../grammar/parse-line.ts';
import { CLAUSE_WORDS, RESERVED } from '../../grammar/tokens.ts';
import type { LineTree } from '../../grammar/tree.ts';
import { show } from './check.ts';

const page = readFileSync(new URL('../../grammar/language.md', import.meta.url), 'utf8');
const section = (title: string): string => page.split(/^#+ /m).find(s => s.startsWith(`${title}\n`))!;
const quoted = (text: string): string[] => [...text.matchAll(/`([^`]+)`/g)].map(m => m[1]!);

test('every block of examples is understood', () => {
  const blocks = [...page.matchAll(/^```plate\n([^]*?)^```$/gm)].map(m => m[1]!);
  expect(blocks.length).toBeGreaterThanOrEqual(3);
  for (const block of blocks) {
    const tree = parse(block);
    expect(tree.lines.filter(l => l.issue).map(l => l.text)).toEqual([]);
    expect(tree.issues).toEqual([]);
  }
});

test('every clause of the placement section is understood behind a thing', () => {
  const clauses = quoted(section('Placement')).filter(text => CLAUSE_WORDS.some(w => text.startsWith(`${w} `)));
  expect(clauses.length).toBeGreaterThanOrEqual(6);
  for (const clause of clauses) {
    const line = parseLine(`mirror M9 ${clause.replace('(x, y)', '(3, 4)')}`);
    expect(line.issue, clause).toBeUndefined();
    expect(show(line)).toMatch(/^mirror 'M9' \| /);
  }
});

test('the words that cannot be names are these', () => {
  const sentence = page.split('\n').find(l => l.includes('cannot be names'))!;
  expect(quoted(sentence.split('Nothing else')[0]!)).toEqual([...RESERVED]);
  const rule = /^clauseword += ([^;]+);/m.exec(page)![1]!;
  expect([...rule.matchAll(/"([^"]+)"/g)].map(m => m[1])).toEqual([...CLAUSE_WORDS]);
  for (const word of RESERVED) expect(parseLine(word).issue, word).toBeDefined();
});

describe('the two spellings of a sign mean the same', () => {
  const rows = section('Names, phrases, numbers').split('\n').filter(l => l.startsWith('| `')).map(l => l.split('|').slice(1, 3).map(quoted));
  const tried: Record<string, (sign: string) => string> = {
    '±': s => `n: 5 mm ${s} 1 mm`, '×÷': s => `n: 30% ${s} 3`, '×': s => `n: 40 ${s} 60 mm`, '->': s => `${s} M1`, '<=': s => `expect n ${s} 3`, '>=': s => `expect n ${s} 3`,
  };
  test.each(rows.flatMap(([left, right]) => left!.map((sign, i) => [sign, right![i]!])))('%s and %s', (sign, other) => {
    const line = tried[sign] ?? ((unit: string) => `n: 5 ${{ '²': 'mm', '³': 'mm', '⁻¹': 'mm' }[sign] ?? ''}${unit}${sign === 'µ' ? 'm' : ''}`);
    const [a, b] = [line(sign), line(other)].map(parseLine) as [LineTree, LineTree];
    expect([a.issue, b.issue]).toEqual([undefined, undefined]);
    // Units are compared by their meaning elsewhere; here they are only read.
    if (sign in tried) expect(show(b)).toBe(show(a));
    else expect([show(a), show(b)]).toEqual([expect.stringMatching(/^n \| : 5\[\S+\]$/), expect.stringMatching(/^n \| : 5\[\S+\]$/)]);
  });
});

test('every unit that is named is read as one unit', () => {
  const units = quoted(section('Units').split('Unit traps')[0]!.split('\n\n').slice(2).join(' ')).flatMap(text => text.split(' '));
  expect(units.length).toBeGreaterThan(40);
  for (const unit of units) expect(show(parseLine(`n: 5 ${unit}`))).toBe(`n | : 5[${unit}]`);
});

test('the limits are these', () => {
  const limits = section('Limits');
  const say = (n: number): string => n.toLocaleString('en-US');
  for (const limit of [`${MAX_SIZE / 1e6} MB`, `${say(MAX_LINES)} lines`, `a line ${say(MAX_LINE)} characters`, `blocks nest ${MAX_DEPTH} deep`, `brackets ${MAX_BRACKETS} deep`]) expect(limits).toContain(limit);
});
