import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { format } from '../../grammar/format.ts';
import { analyse } from '../../server/analysis.ts';
import { formatChanges, formatRange, formatTyped, type TextChange } from '../../server/features/formatting.ts';
import { FILE, whelk } from './source.ts';

const marksIn = (text: string): string => /^\ufeff*/.exec(text)![0];

/** Applies the changes as an editor does: places of the text before, which must not overlap. */
function applied(text: string, changes: readonly TextChange[] = formatChanges(analyse(FILE, text))): string {
  const mark = marksIn(text).length;
  const place = (p: { line: number; character: number }) => ({ line: p.line, character: p.character + (p.line === 0 ? mark : 0) });
  return TextDocument.applyEdits(TextDocument.create(FILE, 'plate', 1, text), changes.map(c => ({ range: { start: place(c.from), end: place(c.to) }, newText: c.newText })));
}

/** Changes blanks only, gives what the formatter gives, and nothing is left to change. */
function check(text: string): void {
  const mark = marksIn(text);
  const now = applied(text);
  expect(now).toBe(mark + format(text).text);
  expect(formatChanges(analyse(FILE, now))).toEqual([]);
  for (const c of formatChanges(analyse(FILE, text))) expect(c.newText).toMatch(/^\s*$/);
}

describe('the formatter as edits', () => {
  it('leaves a tidy text alone', () => expect(formatChanges(analyse(FILE, whelk))).toEqual([]));
  it('changes one run of blanks for one that is wrong', () =>
    expect(formatChanges(analyse(FILE, 'setup "a" {\n  mirror    M1\n}\n'))).toEqual([{ from: { line: 1, character: 8 }, to: { line: 1, character: 12 }, newText: ' ' }]));
  it('puts in what is missing', () => check('setup "a"{\n mirror M1   // left\n\n\n  laser red{\nwavelength:632.8nm\n  }}\n'));
  it('takes empty lines away at the top and the end', () => check('\n\n  \nsetup "a" {\n}\n\n \n'));
  it('puts in the last line end', () => check('setup "a" {\n}'));
  it('keeps carriage returns', () => check('setup "a" {\r\n   mirror   M1\r\n\r\n\r\n}\r\n\r\n'));
  it('makes mixed line ends one', () => check('setup "a" {\r\n  mirror M1\n  mirror M2\r}\n'));
  it('keeps a byte order mark', () => check('\ufeff  setup   "a" {\n}\n'));
  it('keeps two of them, also before a line that cannot be read, and lets none come to the start', () => {
    check('\ufeff\ufeff  setup   "a" {\n}\n');
    check('\ufeff\ufeff§  setup\n\ufeff\n');
    check('\n\n\ufeff§\n');
    check('\ufeff\n\ufeff\ufeff§\n');
  });
  it('leaves lines that cannot be read', () => check('setup "a" {\n      §  mirror   M1\n mirror    M2\n}\n'));
  it('takes all blanks of an empty text', () => check(' \n\n  '));

  const piece = fc.constantFrom('setup "a" {', '}', 'mirror M1', '  mirror   M1 ', '->', '-> M1:750mm±2 mm', 'beam raw from red', '', '  ', '\t', '// note  ', '///doc', 'depth :  35 mm', '§', '\ufeff', '\ufeff§', '"open', 'laser red{', '\u00a0 plate\u2003P1', '😀 µ');
  const end = fc.constantFrom('\n', '\r\n', '\r', '\n\n', '\n \n\n');
  it('gives what the formatter gives, for any text', () => {
    fc.assert(fc.property(fc.array(fc.tuple(piece, end), { maxLength: 14 }), fc.nat(2), (parts, marks) => { check('\ufeff'.repeat(marks) + parts.map(p => p.join('')).join('')); }), { numRuns: 400 });
  });
});

describe('some lines', () => {
  const untidy = 'setup "a"{\n mirror   M1\n\n\n mirror   M2\n mirror   M3\n}\n\n';
  const range = (first: number, last: number): string => applied(untidy, formatRange(analyse(FILE, untidy), first, last));
  it('are put in order, and no other', () => {
    expect(range(1, 1)).toBe('setup "a"{\n  mirror M1\n\n\n mirror   M2\n mirror   M3\n}\n\n');
    expect(range(4, 5)).toBe('setup "a"{\n mirror   M1\n\n\n  mirror M2\n  mirror M3\n}\n\n');
    expect(range(1, 4)).toBe('setup "a"{\n  mirror M1\n\n  mirror M2\n mirror   M3\n}\n\n');
  });
  it('all of them, as the formatter does', () => expect(range(0, 99)).toBe(format(untidy).text));
  it('leave the rest of any text as it is', () => {
    const piece = fc.constantFrom('setup "a" {', '}', '  mirror   M1 ', '-> M1:750mm', '', '  ', '// note  ', '"open', 'laser red{', '😀 µ');
    fc.assert(fc.property(fc.array(piece, { minLength: 1, maxLength: 12 }), fc.nat(12), fc.nat(12), (lines, a, b) => {
      const [first, last] = [Math.min(a, b), Math.max(a, b)];
      const text = lines.join('\n');
      const now = applied(text, formatRange(analyse(FILE, text), first, last)).split('\n');
      expect(now.slice(0, first)).toEqual(lines.slice(0, first));
      if (last < lines.length - 1) expect(now.slice(now.length - (lines.length - 1 - last))).toEqual(lines.slice(last + 1));
      expect(now.join('').replace(/\s/g, '')).toBe(text.replace(/\s/g, ''));
    }), { numRuns: 300 });
  });
});

describe('while somebody types', () => {
  /** Behind what was typed last stands the mark. */
  const typed = (source: string, ch: string): string => {
    const [before, after] = source.split('|') as [string, string];
    return applied(before + after, formatTyped(analyse(FILE, before + after), before.split('\n').length - 1, ch));
  };
  it('a line end puts the line before in order, and leaves the one that begins', () => {
    expect(typed('setup "a"{\n mirror   M1  \n   |\n mirror   M2\n}', '\n')).toBe('setup "a"{\n  mirror M1\n   \n mirror   M2\n}');
    expect(typed(' setup   "a" {\n  |\n}', '\n')).toBe('setup "a" {\n  \n}');
    expect(typed('setup "a"{\r\n mirror   M1\r\n|\r\n}', '\n')).toBe('setup "a"{\r\n  mirror M1\r\n\r\n}');
  });
  it('a brace puts the block in order that it closes', () => {
    expect(typed('setup "a"{\n laser   red{\n power:1 mW\n    }|\n mirror   M1\n}', '}')).toBe('setup "a"{\n  laser red {\n    power: 1 mW\n  }\n mirror   M1\n}');
    expect(typed('setup "a"{\n\n\n mirror   M1\n  }|', '}')).toBe('setup "a" {\n\n\n  mirror M1\n}');
  });
  it('a brace in a text or a note, or one that closes nothing, does nothing', () => {
    for (const text of ['setup   "}|', '  setup "a" {\n // }|', 'mirror   M1\n}|']) expect(typed(text, '}')).toBe(text.replace('|', ''));
  });
});
