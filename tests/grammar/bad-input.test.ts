/** Whatever is in the file: nothing throws, limits are said once, and half a page is half a page. */
import { describe, expect, test, vi } from 'vitest';
import { format } from '../../grammar/format.ts';
import { LineCache, MAX_LINES, MAX_SIZE, parse } from '../../grammar/parse.ts';
import type { Tree } from '../../grammar/tree.ts';
import { expectPlaces, sample, SAMPLES, showTree } from './check.ts';

// Many texts, and machines differ: how long it takes is no part of what is checked.
vi.setConfig({ testTimeout: 120_000 });

/** The codes of all issues and how many lines each concerns. */
function issues(tree: Tree): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const code of [...tree.lines.flatMap(l => (l.issue ? [l.issue.code] : [])), ...tree.issues.map(i => i.code)]) counts[code] = (counts[code] ?? 0) + 1;
  return counts;
}

function expectHarmless(text: string): Tree {
  const tree = parse(text);
  for (const line of tree.lines.slice(0, 100)) expectPlaces(line);
  const once = format(text).text;
  expect(format(once).text === once, 'formatted twice').toBe(true);
  return tree;
}

test('nothing', () => {
  expect(parse('')).toMatchObject({ nodes: [], issues: [], lines: [{ kind: 'blank' }] });
});

test('every byte, as text, in any order', () => {
  const bytes = Uint8Array.from({ length: 65_536 }, (_, i) => (i * 40_503 + (i >> 8)) & 255);
  for (const encoding of ['latin1', 'utf-8', 'utf-16le'] as const) expectHarmless(new TextDecoder(encoding).decode(bytes));
  expectHarmless('\0'.repeat(5000));
});

test('every UTF-16 unit on a line of its own', () => {
  expectHarmless(Array.from({ length: 19_000 }, (_, i) => `a ${String.fromCharCode(i)} b`).join('\n'));
  expectHarmless(Array.from({ length: 19_000 }, (_, i) => String.fromCharCode(65_535 - i)).join('\n'));
});

describe('more than a file may hold', () => {
  test('5 MB on one line, or on many', () => {
    expect(issues(expectHarmless('a'.repeat(5_000_000)))).toEqual({ 'file-too-large': 1 });
    expect(issues(expectHarmless('mirror M1 at (3, 4) mm\n'.repeat(217_392)))).toEqual({ 'file-too-large': 1 });
  });
  test('one character too many', () => {
    const lines = (size: number): string => `${'a'.repeat(size - 10)}\nmirror M1`;
    expect(issues(parse(lines(MAX_SIZE - 1)))).toEqual({ 'line-too-long': 1 });
    expect(issues(parse(lines(MAX_SIZE)))).toEqual({ 'line-too-long': 1, 'file-too-large': 1 });
  });
  test('one line too many; what lies within is read', () => {
    const lines = (n: number): string => Array.from({ length: n }, (_, i) => `mirror M${i}`).join('\n');
    expect(issues(parse(lines(MAX_LINES)))).toEqual({});
    expect(issues(parse(`${lines(MAX_LINES)}\n`)), 'the last line may have its line end').toEqual({});
    const tree = expectHarmless(lines(MAX_LINES + 1));
    expect(tree.issues).toEqual([{ code: 'file-too-large', at: MAX_LINES }]);
    expect(tree.nodes).toHaveLength(MAX_LINES);
    expect(issues(parse(`${lines(MAX_LINES)}\n `))).toEqual({ 'file-too-large': 1 });
  });
});

describe('nested beyond measure', () => {
  test('10,000 braces', () => {
    expect(issues(expectHarmless('a {\n'.repeat(10_000) + '}\n'.repeat(10_000)))).toEqual({ 'nested-too-deep': 1 });
    expect(issues(expectHarmless('a {\n'.repeat(10_000)))).toEqual({ 'nested-too-deep': 1, 'brace-not-closed': 8 });
    expect(issues(expectHarmless('}\n'.repeat(10_000)))).toEqual({ 'brace-not-opened': 10_000 });
    expect(issues(expectHarmless('{'.repeat(10_000)))).toEqual({ 'line-too-long': 1, 'brace-not-closed': 1 });
    expect(issues(expectHarmless('{'.repeat(1000)))).toEqual({ 'brace-on-own-line': 1, 'brace-not-closed': 1 });
  });
  test('indents like stairs, with braces that do not pair', () => {
    const stairs = Array.from({ length: 1400 }, (_, i) => `${' '.repeat(i)}a`).join('\n');
    expect(issues(expectHarmless(`}\n${stairs}\n${`${' '.repeat(1400)}b\n`.repeat(600)}`))).toEqual({ 'brace-not-opened': 1 });
  });
  test('10,000 brackets on one line', () => {
    expect(issues(expectHarmless('('.repeat(10_000)))).toEqual({ 'line-too-long': 1 });
    for (const inside of ['(', 'f(', '-(', '((', '1+(', 'a, (', '(1 x ']) {
      for (const behind of ['', '1', ';', '1e999', '"', ')'.repeat(900), ' {']) {
        const found = issues(expectHarmless(`a: ${inside.repeat(200)}${behind}`));
        expect(Object.keys(found).filter(code => code !== 'brace-not-closed'), inside + behind).toEqual(['nesting-too-deep']);
      }
    }
  });
  test('10,000 brackets over lines', () => {
    expect(issues(expectHarmless('(\n'.repeat(10_000)))).toEqual({ 'unexpected-text': 10_000 });
    expect(issues(expectHarmless('a: (\n'.repeat(10_000)))).toEqual({ 'value-expected': 10_000 });
    expect(issues(expectHarmless('a: (1\n'.repeat(10_000)))).toEqual({ 'unclosed-bracket': 10_000 });
  });
  test('a line full of one thing', () => {
    const things = ['a ', '-', '+', '->', '->a', 'a:', ':', '4:1 ', '1:', '"', '\\"', 'a-', 'a.', '1-', '2026-', '2026-02-11', '1e', '1.', '.', 'x', '1x', '×', '÷', '/', '*', '±', '<', '=', '}', ';', '🐚', '\ud83d', 'm/', '1 m^', '(1)', ',', '1,', 'at ', '? ', '{ ', '\ufeff', '\t1', 'at:'];
    for (const thing of things) {
      for (const head of ['', 'a: ', '-> ', 'a at ', 'a = ', 'a < ']) expectHarmless(head + thing.repeat(Math.floor((2000 - head.length) / thing.length)));
    }
  });
});

test('a name a megabyte long', () => {
  const tree = expectHarmless(`setup "a" {\nmirror ${'m'.repeat(1_000_000)}\nmirror M2\n}`);
  expect(issues(tree)).toEqual({ 'line-too-long': 1 });
  expect(tree.nodes[0]!.children).toHaveLength(2);
});

test('numbers beyond doubles', () => {
  expect(issues(expectHarmless('power: 1e999 mW\npower: 9e307 mW\npower: 1e-999 mW'))).toEqual({ 'number-too-large': 1 });
});

describe.each(SAMPLES)('%s, as far as it is typed', name => {
  const text = sample(name);
  const whole = parse(text);
  const starts = whole.lines.reduce<number[]>((all, line) => [...all, all[all.length - 1]! + line.text.length + 1], [0]);
  const boundaries = whole.lines.flatMap((line, at) => [starts[at]!, ...line.tokens.flatMap(t => [starts[at]! + t.start, starts[at]! + t.end])]);

  test('has at most one issue a line, and only in the line that is typed or about braces that are open', () => {
    const cache = new LineCache();
    for (const end of boundaries) {
      const tree = parse(text.slice(0, end), cache);
      const typed = tree.lines.length - 1;
      const at = [...tree.lines.flatMap((line, i) => (line.issue ? [i] : [])), ...tree.issues.map(i => i.at)];
      expect(at, text.slice(0, end)).toEqual([...new Set(at)]);
      tree.lines.forEach((line, i) => {
        if (i < typed) expect(line.text).toBe(whole.lines[i]!.text);
        if (line.issue) expect(i).toBe(typed);
      });
      expect(tree.issues.every(i => i.code === 'brace-not-closed'), text.slice(0, end)).toBe(true);
    }
  });
  test('keeps what every finished line means', () => {
    const lines = text.split('\n');
    for (let n = 1; n < lines.length; n++) {
      const tree = parse(lines.slice(0, n).join('\n'));
      const seen = showTree({ ...tree, issues: [] }).replace(/ \(to \d+\)/g, '');
      expect(showTree({ ...whole, issues: [] }).replace(/ \(to \d+\)/g, '').startsWith(seen), seen).toBe(true);
    }
  });
  test('survives the loss of any character, and any stray one', () => {
    const cache = new LineCache();
    for (let at = 0; at < text.length; at++) {
      const without = parse(text.slice(0, at) + text.slice(at + 1), cache);
      expect(without.lines.filter(l => l.issue).length).toBeLessThanOrEqual(1);
      for (const stray of ['"', '(', '{', '}', ';']) {
        const tree = parse(text.slice(0, at) + stray + text.slice(at), cache);
        expect(tree.lines.filter(l => l.issue).length, `${stray} at ${at}`).toBeLessThanOrEqual(1);
        // a brace amid a beam is one issue, and legs without their beam may be another
        expect(tree.issues.length, `${stray} at ${at}: ${showTree(tree)}`).toBeLessThanOrEqual(stray === '{' || stray === '}' ? 2 : 1);
      }
    }
  });
});
