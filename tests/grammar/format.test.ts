/** What the formatter makes of a page; what it leaves alone. */
import { describe, expect, test } from 'vitest';
import { format } from '../../grammar/format.ts';
import { MAX_DEPTH } from '../../grammar/nest.ts';
import { MAX_LINE } from '../../grammar/parse-line.ts';
import { sample, SAMPLES } from './check.ts';

function golden(source: string, expected: string, left: number[] = []): void {
  expect(format(source)).toEqual({ text: expected, left });
  expect(format(expected).text, 'formatted twice').toBe(expected);
}

test.each(SAMPLES)('%s is formatted already', name => {
  golden(sample(name), sample(name));
});

test.each(SAMPLES)('%s comes back from any indents', name => {
  const flat = sample(name).replace(/^ +/gm, '');
  golden(flat, sample(name));
  golden(flat.replace(/^/gm, '\t\t '), sample(name));
});

test('a page', () => {
  golden(`


///Last winter's whelk
setup   "Whelk  shell"{
hologram :transmission
   laser red=lab.red-12 at(60,100)mm heading -  30 °{
\twavelength:632.8nm±0.1nm//from the label


      }
  // an arm
beam reference from S1 through
// by way of the post
/// the long one

    // kept apart
    ->M1:750mm±2mm
->P1

  }


`, `///Last winter's whelk
setup "Whelk  shell" {
  hologram: transmission
  laser red = lab.red-12 at (60, 100) mm heading -30° {
    wavelength: 632.8 nm ± 0.1 nm //from the label

  }
  // an arm
  beam reference from S1 through
  // by way of the post
  /// the long one

    // kept apart
    -> M1: 750 mm ± 2 mm
    -> P1

}
`);
});

describe('blanks', () => {
  test.each([
    ['tone:35%±5points', 'tone: 35% ± 5 points'],
    ['tone: 30 % */ 3', 'tone: 30% */ 3'],
    ['slope: 5 ° +/-  1 °', 'slope: 5° +/- 1°'],
    ['temperature: 21°C ± 2K', 'temperature: 21 °C ± 2 K'],
    ['table: 1200x900mm', 'table: 1200 x 900 mm'],
    ['size: 40×60 × 35mm', 'size: 40 × 60 × 35 mm'],
    ['place: ( 60 ,100 ) mm', 'place: (60, 100) mm'],
    ['place: (60,100)mm', 'place: (60, 100) mm'],
    ['beam ratio : 4:1', 'beam ratio: 4:1'],
    ['accept 4:1 :3', 'accept 4:1 : 3'],
    ['reflects: ?mm from 80 % to 99%', 'reflects: ? mm from 80% to 99%'],
    ['measured S1->M1→P1: 3mm', 'measured S1 -> M1 → P1: 3 mm'],
    ['measured object -  reference:- 3mm', 'measured object - reference: -3 mm'],
    ['expect mismatch<=10mm', 'expect mismatch <= 10 mm'],
    ['let d = a*b/c -5mm+ - 3', 'let d = a * b / c - 5 mm + -3'],
    ['let d = - gap + ( - (3))', 'let d = -gap + (-(3))'],
    ['let d = --3', 'let d = - -3'],
    ['let d = (2 mm±1mm std)-3', 'let d = (2 mm ± 1 mm std) - 3'],
    ['let d = sin( 30 ° )', 'let d = sin(30°)'],
    ['note sin (3)', 'note sin (3)'],
    ['laser red heading -30°', 'laser red heading -30°'],
    ['laser red heading - 30°', 'laser red heading -30°'],
    ['P1 at(3,4)mm', 'P1 at (3, 4) mm'],
    ['note "a  b"  4:1   2026-02-11', 'note "a  b" 4:1 2026-02-11'],
    ['   }// whelk  ', '} // whelk'],
    ['mirror\u00a0M1\u2009\t', 'mirror M1'],
  ])('%s', (source, expected) => {
    if (source.includes('}')) golden(`mirror M1 {\n${source}`, `mirror M1 {\n${expected}\n`);
    else golden(source, `${expected}\n`);
  });
});

describe('never', () => {
  test('aligns columns', () => {
    golden('mirror M1  at (1, 2) mm // a\nmirror M22 at (1, 2) mm     // b\n', 'mirror M1 at (1, 2) mm // a\nmirror M22 at (1, 2) mm // b\n');
  });
  test('touches a line that it cannot read', () => {
    golden('setup "a"{\n mirror   M1 at (3,4  \n\t;;  \nlet d=3\n}', 'setup "a" {\n mirror   M1 at (3,4  \n\t;;  \n  let d = 3\n}\n', [1, 2]);
  });
  test('takes over what a broken line opens', () => {
    golden('mirror   M1 at {\nloss:4%\n  }\n', 'mirror   M1 at {\n  loss: 4%\n}\n', [0]);
  });
  test('moves lines whose braces do not pair: their indents tell what was meant', () => {
    const source = 'setup "a" {\n    mirror M1 {\n\tloss:4%\n    mirror M2\n}\n';
    golden(source, source.replace('loss:', 'loss: '));
    golden('  mirror M1\n}\n', '  mirror M1\n}\n');
  });
  test('makes a line too long to be read', () => {
    const long = `parts: ${Array.from({ length: (MAX_LINE - 7) / 2 }, () => 'a').join(',')}`;
    golden(`${long}\nlet d=3`, `${long}\nlet d = 3\n`, [0]);
  });
  test('indents deeper than blocks are read', () => {
    const text = format('a {\n'.repeat(10_000) + '}\n'.repeat(10_000)).text;
    expect(Math.max(...text.split('\n').map(line => line.length))).toBe(2 * (MAX_DEPTH + 1) + 3);
    expect(format(text).text).toBe(text);
  });
});

describe('line ends', () => {
  test('stay as they are', () => {
    golden('let a=1\r\n\r\n\r\nlet b=2', 'let a = 1\r\n\r\nlet b = 2\r\n');
    golden('let a=1\nlet b=2', 'let a = 1\nlet b = 2\n');
  });
  test('are made one kind where they are mixed', () => {
    golden('let a=1\nlet b=2\r\nlet c=3\rlet d=4', 'let a = 1\r\nlet b = 2\r\nlet c = 3\r\nlet d = 4\r\n');
  });
  test('lone carriage returns become line ends that every tool knows', () => {
    golden('let a=1\rlet b=2\r', 'let a = 1\nlet b = 2\n');
  });
});

test('nothing makes nothing', () => {
  golden('', '');
  golden('\n\n  \n', '');
  golden('\ufeff', '');
  golden('\ufeff\ufeff(', '(\n', [0]);
  golden('\n\n\ufeff(', '\n\ufeff(\n', [2]);
});

test('a text beyond the limits stays as it is', () => {
  const text = 'let a=1\n'.repeat(20_001);
  expect(format(text)).toEqual({ text, left: [0] });
});
