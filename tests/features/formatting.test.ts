import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { format } from '../../grammar/format.ts';
import { analyse } from '../../server/analysis.ts';
import { formatChanges } from '../../server/features/formatting.ts';
import { FILE, whelk } from './source.ts';

/** Applies the changes as an editor does: places of the text before, which must not overlap. */
function applied(text: string): string {
  const mark = text.startsWith('\ufeff') ? 1 : 0;
  const place = (p: { line: number; character: number }) => ({ line: p.line, character: p.character + (p.line === 0 ? mark : 0) });
  return TextDocument.applyEdits(TextDocument.create(FILE, 'plate', 1, text), formatChanges(analyse(FILE, text)).map(c => ({ range: { start: place(c.from), end: place(c.to) }, newText: c.newText })));
}

/** Changes blanks only, gives what the formatter gives, and nothing is left to change. */
function check(text: string): void {
  const mark = text.startsWith('\ufeff') ? '\ufeff' : '';
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
  it('leaves lines that cannot be read', () => check('setup "a" {\n      §  mirror   M1\n mirror    M2\n}\n'));
  it('takes all blanks of an empty text', () => check(' \n\n  '));

  const piece = fc.constantFrom('setup "a" {', '}', 'mirror M1', '  mirror   M1 ', '->', '-> M1:750mm±2 mm', 'beam raw from red', '', '  ', '\t', '// note  ', '///doc', 'depth :  35 mm', '§', '"open', 'laser red{', '\u00a0 plate\u2003P1', '😀 µ');
  const end = fc.constantFrom('\n', '\r\n', '\r', '\n\n', '\n \n\n');
  it('gives what the formatter gives, for any text', () => {
    fc.assert(fc.property(fc.array(fc.tuple(piece, end), { maxLength: 14 }), fc.boolean(), (parts, mark) => { check((mark ? '\ufeff' : '') + parts.map(p => p.join('')).join('')); }), { numRuns: 400 });
  });
});
