/** What an editor does on Enter, on a closing brace and for words, by its documented meaning of a language configuration. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from '../../grammar/parse.ts';
import { sample, SAMPLES } from './check.ts';

interface Configuration {
  comments: { lineComment: string };
  brackets: [string, string][];
  autoClosingPairs: { open: string; close: string; notIn: string[] }[];
  surroundingPairs: [string, string][];
  wordPattern: { pattern: string; flags: string };
  indentationRules: { increaseIndentPattern: string; decreaseIndentPattern: string };
  onEnterRules: { beforeText: string; afterText?: string; action: { indent: string; appendText?: string } }[];
}
const read = (): Configuration => JSON.parse(readFileSync(new URL('../../grammar/language-configuration.json', import.meta.url), 'utf8')) as Configuration;
const { comments, brackets, autoClosingPairs, surroundingPairs, wordPattern, indentationRules, onEnterRules } = read();
const increases = new RegExp(indentationRules.increaseIndentPattern);
const decreases = new RegExp(indentationRules.decreaseIndentPattern);

/** The line that Enter begins, at the end of a line or before what stands behind the cursor: the first rule that fits decides, else the indentation rules. */
function enter(before: string, after = ''): string {
  const indent = /^ */.exec(before)![0];
  const rule = onEnterRules.find(r => new RegExp(r.beforeText).test(before) && new RegExp(r.afterText ?? '').test(after));
  if (rule) return indent + (rule.action.indent === 'indent' ? '  ' : '') + (rule.action.appendText ?? '');
  return indent + (increases.test(before) ? '  ' : '');
}

describe('Enter', () => {
  test.each([
    ['setup "Whelk" {', '  '],
    ['  mirror M1 at (3, 4) mm { // old', '    '],
    ['  mirror M1', '  '],
    ['  beam raw from red', '    '],
    ['  beam raw', '    '],
    ['  beam reference from S1 through // the short one', '    '],
    ['    -> S1: 350 mm', '    '],
    ['    → S1', '    '],
    ['  beam height: 120 mm', '  '],
    ['  beam stop B1 at (3, 4) mm', '  '],
    ['  beam stop B1 {', '    '],
    ['  /// Last winter\'s whelk', '  '],
    ['  ///', '  '],
    ['  // by way of the post', '  '],
    ['  //////////', '  '],
    ['  note: "a {"', '  '],
    ['  note: "a', '  '],
    ['  mirror M1 // {', '  '],
    ['  // setup "a" {', '  '],
    ['  note: "a // \\" " {', '    '],
    ['  let d = a / b {', '    '],
    ['  }', '  '],
  ])('behind %j', (before, after) => {
    expect(enter(before)).toBe(after);
  });
  // Most notes are one line; one that is parted stays a note.
  test.each([['  /// Last winter\'s', ' whelk', '  /// '], ['  ///', ' Last winter\'s', '  /// '], ['  // by way', ' of the post', '  ']])('within %j%j', (before, rest, after) => {
    expect(enter(before, rest)).toBe(after);
  });
  test.each(SAMPLES)('indents %s as the formatter does, but for the end of legs and of blocks', name => {
    const { lines } = parse(sample(name));
    for (let at = 1; at < lines.length; at++) {
      const [above, line] = [lines[at - 1]!, lines[at]!];
      if (line.kind === 'blank' || above.kind === 'blank') continue;
      if (above.kind === 'leg' && line.kind !== 'leg') continue;
      const wanted = /^ */.exec(line.text)![0].length;
      expect(enter(above.text).length - (decreases.test(line.text) ? 2 : 0), line.text).toBe(wanted);
    }
  });
});

test('a closing brace goes back, alone on its line', () => {
  expect(['}', '  } // end'].every(line => decreases.test(line))).toBe(true);
  expect(['mirror M1 }', '// }'].some(line => decreases.test(line))).toBe(false);
});

test('words hold inner hyphens and dots, and end before signs', () => {
  const words = (text: string): string[] => text.match(new RegExp(wordPattern.pattern, `g${wordPattern.flags}`)) ?? [];
  expect(words('laser red = lab.red-12 at (60, 632.8) mm')).toEqual(['laser', 'red', 'lab.red-12', 'at', '60', '632.8', 'mm']);
  expect(words('measured S1->M1: P1.reference.length - 1.6µW/cm² größe_2 whelk.')).toEqual(['measured', 'S1', 'M1', 'P1.reference.length', '1.6', 'µW', 'cm²', 'größe_2', 'whelk']);
  expect(new RegExp(wordPattern.pattern, wordPattern.flags).test(''), 'editors refuse a pattern that matches nothing').toBe(false);
});

test('comments, brackets and pairs are those of the language', () => {
  const line = parse(`a: 1 ${comments.lineComment} b`).lines[0]!;
  expect(line.comment?.start).toBe(5);
  for (const [open, close] of brackets) expect(parse(open + close).lines[0]!.tokens.map(t => t.type)).toEqual(open === '{' ? ['open', 'close'] : ['lparen', 'rparen']);
  expect(autoClosingPairs.map(p => [p.open, p.close])).toEqual(surroundingPairs);
  for (const pair of autoClosingPairs) expect(pair.notIn).toEqual(['string', 'comment']);
});
