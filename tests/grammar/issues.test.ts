/** What can't be read: one issue in its line, at its place, and what stands before it is kept. */
import { describe, expect, test } from 'vitest';
import { MAX_LINE } from '../../grammar/parse-line.ts';
import { MAX_BRACKETS } from '../../grammar/line-issues.ts';
import { parseLine } from '../../grammar/parse-line.ts';
import type { SyntaxIssue } from '../../grammar/tree.ts';
import { check, checkIssues, checkTree, expectPlaces } from './check.ts';

test('value-expected marks what waits for its value, or what stands in its place', () => {
  checkIssues(`
beam height:
           ~ value-expected a value
mirror M1 at
          ~~ value-expected a place such as (100, 200) mm
plate P1 facing // who?
         ~~~~~~ value-expected what follows “facing”
plate P1 =
         ~ value-expected a value or an inventory item
  ->
  ~~ value-expected the name of what the light meets next
  -> M1:
       ~ value-expected a value
  -> : 750 mm
     ~ value-expected the name of what the light meets next
  -> M1: 750 mm ±
                ~ value-expected how much either way
  -> M1: 750 mm ± at
                  ~~ value-expected how much either way
expect mismatch <
                ~ value-expected a value
expect mismatch <= ≥ 3 mm
                   ~ value-expected a value
measured S1 ->
            ~~ value-expected the name of what the light meets next
measured object - : 3 mm
                  ~ value-expected a value
size: 40 x
         ~ value-expected a value
size: x 40 mm
      ~ value-expected a value
let d = 5 mm * / 3
               ~ value-expected a value
parts: shell,
            ~ value-expected a value
parts: , shell
       ~ value-expected a value
place: (3, ) mm
           ~ value-expected a value
place: (
       ~ value-expected a value
`);
});

test('a brace at the end is not what is wrong', () => {
  checkIssues(`
mirror M1 at {
          ~~ value-expected a place such as (100, 200) mm
plate P1 = {
         ~ value-expected a value or an inventory item
mirror M1 at (1100, 100 {
                    ~~~ unclosed-bracket
mirror M1 at (1100, 100) mm 7 {
                            ~ unexpected-text
`);
});

test('unclosed-bracket marks what stands before the missing bracket', () => {
  checkIssues(`
mirror M1 at (1100, 100 mm
                        ~~ unclosed-bracket
mirror M1 at (1100, 100 facing whelk
                    ~~~ unclosed-bracket
let d = sqrt(a * (b + c)
                       ~ unclosed-bracket
let d = (a: 3
         ~ unclosed-bracket
`);
});

test('unexpected-text marks the rest of the line, up to a brace or a comment', () => {
  checkIssues(`
beam height: 120 mm measured at the laser
                    ~~~~~~~~~~~~~~~~~~~~~ unexpected-text
beam height: 120 mm mm // twice
                    ~~ unexpected-text
= 5 mm
~~~~~~ unexpected-text
5 mm
~~~~ unexpected-text
at (3, 4) mm
~~~~~~~~~~~~ unexpected-text
std
~~~ unexpected-text
M1 -> P1
M1 ->
   ~~ value-expected the name of what the light meets next
mirror M1 ± 3
          ~~~ unexpected-text
tone: 3% std
         ~~~ unexpected-text
tone: 3% ± 1% std std
                  ~~~ unexpected-text
tone: 3% ± 1% ± 1%
              ~~~~ unexpected-text
let d = sin (30°)
            ~~~~~ unexpected-text
let d = (3 4)
           ~~ unexpected-text
let d = 3)
         ~ unexpected-text
beam ratio: 4:1:2
             ~~~~ unexpected-text
beam ratio: 4:1.5.2
             ~~~~~~ unexpected-text
  -> M1 = lab.m {
        ~~~~~~~ unexpected-text
  -> M1 {
        ~ unexpected-text
} M1
  ~~ unexpected-text
`);
});

test('brace-on-own-line marks the brace that has company', () => {
  checkIssues(`
mirror M1 { loss: 4% }
          ~ brace-on-own-line
mirror M1 {}
           ~ brace-on-own-line
loss: 4% }
         ~ brace-on-own-line
} }
  ~ brace-on-own-line
} else {
  ~~~~ unexpected-text
{
~ brace-on-own-line
`);
});

test('unreadable-character marks what means nothing here', () => {
  checkIssues(`
beam height: 120 mm;
                   ~ unreadable-character
tone: 3%, 4%; 5%
            ~ unreadable-character
@@@
~~~ unreadable-character
note: 'dull'
      ~ unreadable-character
room [21]
     ~ unreadable-character
`);
});

test('unclosed-text marks the text', () => {
  checkIssues(`
setup "Whelk shell
      ~~~~~~~~~~~~ unclosed-text
note: "a \\" // b
      ~~~~~~~~~~ unclosed-text
note: "
      ~ unclosed-text
note: "dull\\
      ~~~~~ unclosed-text
`);
});

test('decimal-comma marks the number, outside of brackets only', () => {
  checkIssues(`
wavelength: 632,8 nm
            ~~~~~ decimal-comma
parts: 632, 8
place: (632,8) mm
`);
  expect(parseLine('wavelength: 632,8 nm').issue?.found).toBe('632,8');
});

test('number-too-large marks numbers beyond the largest double', () => {
  checkIssues(`
power: 1e999 mW
       ~~~~~ number-too-large
power: 1.7976931348623157e308 mW
power: 1.8e308 mW
       ~~~~~~~ number-too-large
power: 1e-999 mW
`);
  const nines = '9'.repeat(400);
  for (const source of [`n: ${nines}`, `n: ${nines}:1`, `n: 1:${nines}`]) expectIssue(source, 'number-too-large', 3, source.length);
});

test('nesting-too-deep marks the first bracket or sign too many', () => {
  const deep = (n: number): string => `n: ${'('.repeat(n)}1${')'.repeat(n)}`;
  expect(parseLine(deep(MAX_BRACKETS)).issue).toBeUndefined();
  expectIssue(deep(MAX_BRACKETS + 1), 'nesting-too-deep', 3 + MAX_BRACKETS, 4 + MAX_BRACKETS);
  expect(parseLine(`n: ${'-'.repeat(MAX_BRACKETS)}1`).issue).toBeUndefined();
  expectIssue(`n: ${'-'.repeat(MAX_BRACKETS + 1)}1`, 'nesting-too-deep', 3 + MAX_BRACKETS, 4 + MAX_BRACKETS);
  check(`n${'('.repeat(MAX_BRACKETS + 1)} {`, 'n | { ! nesting-too-deep');
});

test('line-too-long marks the whole line', () => {
  const long = (n: number): string => `n: "${'a'.repeat(n - 5)}"`;
  expect(parseLine(long(MAX_LINE)).issue).toBeUndefined();
  expectIssue(long(MAX_LINE + 1), 'line-too-long', 0, MAX_LINE + 1);
  check(' '.repeat(MAX_LINE + 1), 'blank');
});

function expectIssue(source: string, code: SyntaxIssue['code'], start: number, end: number): void {
  const line = parseLine(source);
  expectPlaces(line);
  expect(line.issue).toMatchObject({ code, start, end });
}

describe('what stands before an issue is kept', () => {
  test('in the line', () => {
    check('mirror M1 at (1100, 100) mm facing', "mirror 'M1' | at (1100, 100)[mm] | facing ! value-expected");
    check('mirror M1 at (1100, 100 mm', "mirror 'M1' | at ! unclosed-bracket");
    check('laser red = lab.red-12 at (60, 100) mm heading 0° 5', "laser 'red' | = 'lab.red-12' | at (60, 100)[mm] | heading 0[°] ! unexpected-text");
    check('beam height: 120 mm;', "beam 'height' | : 120[mm] ! unreadable-character");
    check('expect mismatch <', "expect 'mismatch' | < ! value-expected");
    check('wavelength: 632,8 nm', 'wavelength | : ! decimal-comma');
    check('setup "Whelk', 'setup ! unclosed-text');
    check('-> P1: 721 mm ± 2 mm 3', "leg 'P1' | : {721[mm] ± 2[mm]} ! unexpected-text");
    check('; mirror M1', 'unreadable ! unreadable-character');
  });
  test('the first issue of several is the one', () => {
    check('a: 632,8 @ "b', 'a | : ! decimal-comma');
    check('a: "b @ 632,8', 'a | : ! unclosed-text');
    check('a: 1e999 @', 'a | : ! number-too-large');
  });
  test('a broken line keeps its comment', () => {
    const line = parseLine('mirror M1 at // where?');
    expect(line.text.slice(line.comment?.start, line.comment?.end)).toBe('// where?');
  });
});

describe('a broken line still opens or closes its block', () => {
  const block = (first: string): string => `setup "a" {\n${first}\nloss: 4%\n}\nmirror M2\n}\n`;
  const nested = (first: string): string => `setup "a" { (to 5)\n  ${first} (to 3)\n    loss: 4%\n  mirror M2`;
  test.each([
    'mirror M1 at {', 'mirror M1 @ {', 'mirror M1 at (3, 4 {', 'mirror M1 632,8 {', 'mirror M1 1e999 {', '{', '@ {', '5 {', '= {', `n: ${'('.repeat(40)} {`, `n: ${'('.repeat(900)}@ {`,
    'note "dull {', `mirror ${'a'.repeat(2000)} {`,
  ])('%s', first => void checkTree(block(first), nested(first)));
  test('a block on one line is closed again', () => {
    checkTree('setup "a" {\nmirror M1 { loss: 4% }\nmirror M2\n}', 'setup "a" { (to 3)\n  mirror M1 { loss: 4% }\n  mirror M2');
  });
  test('a brace in a comment or a closed text opens nothing', () => {
    checkTree(`mirror M1 at // {\nnote "{" "\n// ${'a'.repeat(2000)} {\nmirror M2`, `mirror M1 at\nnote "{" "\n// ${'a'.repeat(2000)} {\nmirror M2`);
  });
  test('a closing brace with company', () => {
    checkTree('setup "a" {\n} mirror M1\nmirror M2', 'setup "a" { (to 1)\nmirror M2');
    checkTree(`setup "a" {\n} // ${'a'.repeat(2000)}\nmirror M2`, 'setup "a" { (to 1)\nmirror M2');
  });
  test('a leg takes no block, but its braces pair and the legs behind it find their beam', () => {
    checkTree('beam raw from red\n  -> M1 {\n    loss: 4%\n  }\n  -> P1\nmirror M1', 'beam raw from red (to 4)\n    -> M1 { (to 3)\n      loss: 4%\n    -> P1\nmirror M1');
    checkTree('beam raw from red\n  -> M1 {\n    loss: 4%\n  }\nmirror M1', 'beam raw from red (to 3)\n    -> M1 { (to 3)\n      loss: 4%\nmirror M1');
  });
});
