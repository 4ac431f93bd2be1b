/** Every rule of the grammar in grammar/language.md, in its order. */
import { describe, expect, test } from 'vitest';
import { parseLine } from '../../grammar/parse-line.ts';
import { CLAUSE_WORDS } from '../../grammar/tokens.ts';
import { check } from './check.ts';

describe('line', () => {
  test('may be empty', () => {
    check('', 'blank');
    check(' \t ', 'blank');
  });
  test('may be a comment or a note', () => {
    check('// borrowed until Friday', 'comment');
    check('  /// Last winter\'s whelk', 'doc');
    check('// { } "', 'comment');
  });
  test('may close a block, with a comment behind', () => {
    check('}', 'close');
    check('  } // whelk', 'close');
  });
  test('may hold a comment behind its fact', () => {
    check('use "saltmarsh-lab.plate" // stocks', 'use "saltmarsh-lab.plate" | //');
    check('mirror M1 { // the thick one', "mirror 'M1' | { | //");
  });
});

describe('statement', () => {
  test('is a word, and what it is about', () => {
    check('room', 'room');
    check('mirror M1', "mirror 'M1'");
    check('half-wave plate H1', "half-wave 'plate H1'");
  });
  test('names a thing, its item, its place, and opens a block', () => {
    check('laser red = lab.red-12 at (60, 100) mm heading 0° {', "laser 'red' | = 'lab.red-12' | at (60, 100)[mm] | heading 0[°] | {");
  });
  test('takes clauses on both sides of the item', () => {
    check('plate P1 facing whelk = lab.fine-grain at (700, 700) mm', "plate 'P1' | facing 'whelk' | = 'lab.fine-grain' | at (700, 700)[mm]");
  });
  test('compares', () => {
    check('expect mismatch < 10 mm', "expect 'mismatch' | < 10[mm]");
    check('expect P1.whelk.near.brightness ≥ 70%', "expect 'P1.whelk.near.brightness' | >= 70[%]");
    check('expect mismatch >= 0 mm', "expect 'mismatch' | >= 0[mm]");
    check('expect mismatch ≤ 1 mm', "expect 'mismatch' | <= 1[mm]");
    check('expect mismatch <= 1 mm', "expect 'mismatch' | <= 1[mm]");
    check('expect mismatch > 1 mm', "expect 'mismatch' | > 1[mm]");
  });
  test('gives a fact behind a colon, with clauses behind the value', () => {
    check('hologram: transmission', "hologram | : 'transmission'");
    check('tube length: 350 mm', "tube 'length' | : 350[mm]");
    check('reflects: ? from 80% to 99%', 'reflects | : ? | from 80[%] | to 99[%]');
    check('M2.loss: 4%', 'M2.loss | : 4[%]');
  });
  test('has its comparison before its fact', () => {
    check('note a < 3: 4 {', "note 'a' | < 3 | : 4 | {");
  });
});

describe('leg', () => {
  test('names what the light meets next, and how far it goes', () => {
    check('-> M1', "leg 'M1'");
    check('    → S1: 350 mm', "leg 'S1' | : 350[mm]");
    check('-> P1 through: 900 mm ± 2 mm', "leg 'P1 through' | : {900[mm] ± 2[mm]}");
  });
  test('takes clauses before and behind the length', () => {
    check('-> M1 on table: 3 mm by string', "leg 'M1' | on 'table' | : 3[mm] | by 'string'");
  });
});

describe('subject', () => {
  test('joins rows by an arrow, a minus or a plus', () => {
    check('measured S1 -> M1: 752 mm', "measured {'S1' -> 'M1'} | : 752[mm]");
    check('measured S1 -> M1 -> P1: 2 m', "measured {'S1' -> 'M1' -> 'P1'} | : 2[m]");
    check('measured object - reference: -3 mm', "measured {'object' - 'reference'} | : {-3[mm]}");
    check('measured object + reference: 3 mm', "measured {'object' + 'reference'} | : 3[mm]");
  });
  test('reads a minus between the things next to it, not across an arrow', () => {
    check('measured S1 -> M1 - M2: 3 mm', "measured {'S1' -> {'M1' - 'M2'}} | : 3[mm]");
    check('measured a - b - c: 3 mm', "measured {{'a' - 'b'} - 'c'} | : 3[mm]");
  });
});

describe('row', () => {
  test('holds values side by side', () => {
    check('setup "Whelk shell" {', 'setup "Whelk shell" | {');
    check('shot 7 on 2026-02-11 {', 'shot 7 | on 2026-02-11 | {');
    check('accept ghost-fringes "every plate of mine has them"', `accept {'ghost-fringes' "every plate of mine has them"}`);
    check('accept ghost-fringes "they all do" for P1', `accept {'ghost-fringes' "they all do"} | for 'P1'`);
    check('note a 4:1 2026-02-11 3', "note {'a' 4:1 2026-02-11 3}");
  });
});

describe('clause', () => {
  test.each(CLAUSE_WORDS)('opens with “%s”', word => {
    check(`P1 ${word} S1`, `P1 | ${word} 'S1'`);
    expect(parseLine(`mirror ${word}`).issue?.code, 'is no name').toBe('value-expected');
    check(`mirror ${word}-1`, `mirror '${word}-1'`);
  });
  test('may name a leg', () => {
    check('spreader R1 on M1 -> P1 by 60 mm', "spreader 'R1' | on {'M1' -> 'P1'} | by 60[mm]");
  });
  test('may follow one another', () => {
    check('mirror M2 beyond M1 by 500 mm ± 2 mm turning left tilted 5°', "mirror 'M2' | beyond 'M1' | by {500[mm] ± 2[mm]} | turning 'left' | tilted 5[°]");
  });
});

describe('list', () => {
  test('parts values by commas', () => {
    check('parts: shell, 3 mm, "the rim"', `parts | : {'shell', 3[mm], "the rim"}`);
    check('parts: 3, 4', 'parts | : {3, 4}');
  });
});

describe('value', () => {
  test('says how sure it is', () => {
    check('depth: 35 mm ± 2 mm', 'depth | : {35[mm] ± 2[mm]}');
    check('depth: 35 mm +/- 2 mm', 'depth | : {35[mm] ± 2[mm]}');
    check('depth: 35 mm ± 2 mm std', 'depth | : {35[mm] ± 2[mm] std}');
    check('tone: 30% ×÷ 3', 'tone | : {30[%] ×÷ 3}');
    check('tone: 30%*/3', 'tone | : {30[%] ×÷ 3}');
    check('let d = 750 ± 2 mm', "let 'd' | = {750 ± 2[mm]}");
  });
  test('gives way to the sum on its left, not on its right', () => {
    check('let d = a + b ± 2 mm', "let 'd' | = {{'a' + 'b'} ± 2[mm]}");
  });
});

describe('sizes', () => {
  test('are parted by x or ×', () => {
    check('table: 1200 x 900 mm', 'table | : {1200 x 900[mm]}');
    check('size: 40 × 60 × 35 mm', 'size | : {40 x 60 x 35[mm]}');
    check('size: 40x60x35 mm', 'size | : {40 x 60 x 35[mm]}');
    check('size: 40 mm x 60 mm', 'size | : {40[mm] x 60[mm]}');
    check('size: 40 mm x60 mm', 'size | : {40[mm] x 60[mm]}');
    check('size: a x (b + c) x ?', "size | : {'a' x ({'b' + 'c'}) x ?}");
  });
  test('leave names alone that begin with x', () => {
    check('mirror x1', "mirror 'x1'");
    check('mirror x-ray', "mirror 'x-ray'");
    check('x1.loss: 3%', 'x1.loss | : 3[%]');
    check('let d = a x b', "let 'd' | = {'a' x 'b'}");
  });
});

describe('sum, product, operand', () => {
  test('bind as in arithmetic, from the left', () => {
    check('let d = a + b * c', "let 'd' | = {'a' + {'b' * 'c'}}");
    check('let d = a - b - c', "let 'd' | = {{'a' - 'b'} - 'c'}");
    check('let d = 6 / 3 * 2', "let 'd' | = {{6 / 3} * 2}");
    check('let d = 2 * (a + 5 mm)', "let 'd' | = {2 * ({'a' + 5[mm]})}");
  });
  test('take signs', () => {
    check('let d = -5 mm', "let 'd' | = {-5[mm]}");
    check('let d = 4 - -5', "let 'd' | = {4 - {-5}}");
    check('let d = -+-gap', "let 'd' | = {-{+{-'gap'}}}");
    check('laser red heading -30°', "laser 'red' | heading {-30[°]}");
    check('let d = −5 mm', "let 'd' | = {-5[mm]}");
  });
  test('part a minus from a hyphen by blanks', () => {
    check('let d = object - reference', "let 'd' | = {'object' - 'reference'}");
    check('let d = object-reference', "let 'd' | = 'object-reference'");
  });
});

describe('primary', () => {
  test('number', () => {
    check('n: 12', 'n | : 12');
    check('n: 0.5', 'n | : 0.5');
    check('n: .5', 'n | : 0.5');
    check('n: 1.5e-3', 'n | : 0.0015');
    check('n: 2E3', 'n | : 2000');
  });
  test('unit, behind a number, “?” or a bracket', () => {
    check('n: 1.6 µW/cm²', 'n | : 1.6[µW/cm²]');
    check('n: 1.6uW/cm2', 'n | : 1.6[uW/cm2]');
    check('n: 60 lines/mm', 'n | : 60[lines/mm]');
    check('n: 60 mm⁻¹', 'n | : 60[mm⁻¹]');
    check('n: 60 mm^-1', 'n | : 60[mm^-1]');
    check('n: 21 °C ± 2 K', 'n | : {21[°C] ± 2[K]}');
    check('n: 85% ± 2 points', 'n | : {85[%] ± 2[points]}');
    check('n: ? mm', 'n | : ?[mm]');
    check('n: (60, 100) mm', 'n | : (60, 100)[mm]');
    check('n: sin(30°) mm', 'n | : sin(30[°])[mm]');
    check('n: 30′', 'n | : 30[′]');
  });
  test('unit letters elsewhere are names', () => {
    check('mirror mm', "mirror 'mm'");
    check('let mm = m / s', "let 'mm' | = {'m' / 's'}");
  });
  test('ratio, date, text', () => {
    check('beam ratio: 4:1', "beam 'ratio' | : 4:1");
    check('beam ratio: 2.5:1', "beam 'ratio' | : 2.5:1");
    check('date: 2026-02-11', 'date | : 2026-02-11');
    check('date: 2026-02-11T18:30', 'date | : 2026-02-11T18:30');
    check('note: "dull at the back"', 'note | : "dull at the back"');
    check(String.raw`note: "\"dull\" \\ {"`, String.raw`note | : "\"dull\" \\ {"`);
  });
  test('phrase', () => {
    check('emulsion: toward the object', "emulsion | : 'toward the object'");
    check('stock: lab.fine-grain', "stock | : 'lab.fine-grain'");
    check('lit at: 30°', "lit 'at' | : 30[°]");
    check('größe: übersicht_2', "größe | : 'übersicht_2'");
  });
  test('call, with its bracket close by', () => {
    check('let d = sqrt(a * a + b * b)', "let 'd' | = sqrt({{'a' * 'a'} + {'b' * 'b'}})");
    check('let d = max(3 mm, gap)', "let 'd' | = max(3[mm], 'gap')");
    check('let d = f()', "let 'd' | = f()");
    check('note the sqrt(4)', "note {'the' sqrt(4)}");
    check('note sqrt (4)', "note {'sqrt' (4)}");
  });
  test('group', () => {

    check('place: (60 ± 1, 100, 120) mm', 'place | : ({60 ± 1}, 100, 120)[mm]');
    check('place: ()', 'place | : ()');
    check('place: ((1 + 2) * 3) mm', 'place | : ({({1 + 2}) * 3})[mm]');
  });
});
