/** Places count UTF-16 units, as editors do; lines end as they like. */
import { describe, expect, test } from 'vitest';
import { LineCache, parse, parseLines, splitLines } from '../../grammar/parse.ts';
import { parseLine } from '../../grammar/parse-line.ts';
import { checkIssues, sample, SAMPLES, show } from './check.ts';

describe('UTF-16', () => {
  test('µ, ±, ², ° count one, an emoji two', () => {
    checkIssues(`
n: 1.6 µW/cm² ± 5% 7
                   ~ unexpected-text
note: "🐚🐚" 3°
             ~~ unexpected-text
note "a" 🐚 b
         ~~ unreadable-character
🐚
~~ unreadable-character
note "🐚" at
          ~~ value-expected a place such as (100, 200) mm
`);
    expect(parseLine('n: 3 🐚🐚 b').issue).toMatchObject({ found: '🐚🐚', start: 5, end: 9 });
  });
  test('letters beyond the basic plane are letters', () => {
    const line = parseLine('mirror 𝑀1 at (3, 4) mm');
    expect(show(line)).toBe("mirror '𝑀1' | at (3, 4)[mm]");
    expect(line.clauses[0]).toMatchObject({ start: 11, end: 23 });
  });
  test('half of a pair is one unreadable unit', () => {
    expect(parseLine('n: \ud83d 3').issue).toMatchObject({ code: 'unreadable-character', start: 3, end: 4 });
  });
  test('blanks of typeset text are blanks', () => {
    expect(show(parseLine('n:\u00a01.6\u2009µW/cm²\u202f±\u30005%\t'))).toBe('n | : {1.6[µW/cm²] ± 5[%]}');
  });
});

describe('lines', () => {
  const lines = ['setup "a" {', '', '  mirror M1', '}', ''];
  test.each([['\n'], ['\r\n'], ['\r']])('end in %j', eol => {
    expect(splitLines(lines.join(eol))).toEqual(lines);
    expect(parse(lines.join(eol))).toEqual(parseLines(lines));
  });
  test('may end in different ways in one text', () => {
    expect(splitLines('a\r\nb\rc\nd\r\re\n\rf')).toEqual(['a', 'b', 'c', 'd', '', 'e', '', 'f']);
  });
  test('do not end at other characters', () => {
    expect(splitLines('// a\u2028b\u2029c\vd\fe\u0085f')).toHaveLength(1);
    expect(parseLine('// a\u2028b { "').kind).toBe('comment');
    expect(show(parseLine('note "a\u2028b"'))).toBe('note "a\u2028b"');
  });
  test('a byte order mark is dropped at the start and counts as a blank elsewhere', () => {
    expect(parse('\ufeffmirror M1').lines.map(show)).toEqual(["mirror 'M1'"]);
    expect(parse('\ufeffmirror M1').lines[0]!.head).toMatchObject({ start: 0, end: 6 });
    expect(parse('\ufeff\ufeffmirror M1').lines[0]!.head).toMatchObject({ start: 0, end: 6 });
    expect(show(parseLine('mirror\ufeff M1'))).toBe("mirror 'M1'");
  });
});

describe('the lines that a document keeps', () => {
  test.each(SAMPLES)('an edit of one line of %s parses one line', name => {
    const texts = splitLines(sample(name));
    const cache = new LineCache();
    parseLines(texts, cache);
    expect(cache.parsed).toBe(new Set(texts).size);
    const edited = [...texts];
    texts.forEach((text, at) => {
      edited[at] = `${text} // edit ${at}`;
      const before = cache.parsed;
      expect(parseLines(edited, cache).lines[at]!.text).toBe(edited[at]);
      expect(cache.parsed).toBe(before + 1);
    });
    const before = cache.parsed;
    expect(parseLines(edited, cache)).toEqual(parseLines(edited));
    expect(cache.parsed, 'nothing is parsed again').toBe(before);
  });
  test('moved and copied lines are not parsed again', () => {
    const cache = new LineCache();
    const first = parse('mirror M1\nmirror M2', cache);
    const second = parse('mirror M2\nmirror M1\nmirror M1', cache);
    expect(cache.parsed).toBe(2);
    expect(second.lines[2]).toBe(first.lines[0]);
  });
  test('lines of long ago are dropped', () => {
    const cache = new LineCache();
    for (let i = 0; i < 1000; i++) parse(`mirror M${i}`, cache);
    expect(cache.parsed).toBe(1000);
    parse('mirror M0', cache);
    expect(cache.parsed).toBe(1001);
  });
});
