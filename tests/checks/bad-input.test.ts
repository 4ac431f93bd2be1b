/** What no one would write on purpose: each slip is one finding at its place; nothing throws, and no NaN or infinity comes out. */
import { describe, expect, it } from 'vitest';
import type { Snapshot } from '../../server/analysis.ts';
import { findings, look, numbersOf, serious, WHELK } from './library.ts';

const setup = (...lines: string[]): string => `setup "Whelk shell" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`;
const many = (n: number, line: (i: number) => string): string[] => Array.from({ length: n }, (_, i) => line(i));
const leg = (length: string): string => WHELK.replace('721 mm ± 2 mm', length);
/** The signature and first chunk of a PNG file (Portable Network Graphics specification, third edition, 5.2 and 11.2.1), read as text. */
const PNG = String.fromCharCode(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d, 0x49, 0x48, 0x44, 0x52, 0, 0, 0, 1, 0, 0, 0, 1, 8, 6, 0, 0, 0, 0x1f, 0x15, 0xc4, 0x89);

interface Case {
  readonly text: string;
  readonly files?: Readonly<Record<string, string>>;
  /** line and code of each error and warning */
  readonly found: readonly string[];
}

const CASES: Readonly<Record<string, Case>> = {
  'an empty file': { text: '', found: [] },
  'blanks only': { text: ' \n\t\n\r\n', found: [] },
  'a picture': { text: PNG, found: ['1 unreadable-character'] },
  'a byte order mark': { text: `\ufeff${WHELK}`, found: [] },
  'Windows line ends': { text: WHELK.replaceAll('\n', '\r\n'), found: [] },
  'old Macintosh line ends': { text: WHELK.replaceAll('\n', '\r'), found: [] },
  'emoji in notes': { text: setup('// 🐚 on wet sand', 'note: "🐚🐚"'), found: [] },
  'an emoji as a name': { text: setup('mirror 🐚 at (100, 100) mm'), found: ['2 unreadable-character'] },
  'an emoji behind a value': { text: leg('721 mm 🐚'), found: ['21 unreadable-character'] },
  'five million letters in one line': { text: 'x'.repeat(5_000_000), found: ['1 file-too-large'] },
  'five million letters in short lines': { text: '// wet sand, cold hands, no fringes\n'.repeat(140_000), found: ['20000 file-too-large'] },
  'a setup that is cut by the limit': { text: setup(...many(25_000, () => '// wet sand')), found: ['20000 file-too-large'] },
  'a name of a megabyte': { text: setup(`mirror ${'M'.repeat(1_000_000)}`, 'beam height: 120 mm'), found: ['2 line-too-long'] },
  'ten thousand open brackets': { text: setup(`let gap = ${'('.repeat(10_000)}`), found: ['2 line-too-long'] },
  'a thousand open brackets': { text: setup(`let gap = ${'('.repeat(1000)}`), found: ['2 nesting-too-deep'] },
  'a thousand minus signs': { text: setup(`let gap = ${'-'.repeat(1000)}5 mm`), found: ['2 nesting-too-deep'] },
  'ten thousand nested blocks': { text: `${many(10_000, i => `${i === 0 ? 'setup "x"' : i === 1 ? 'variant "y"' : i === 2 ? 'room' : 'note: "deep"'} {\n`).join('')}${'}\n'.repeat(10_000)}`, found: ['9 nested-too-deep'] },
  'ten thousand closing braces': { text: `${WHELK}${'}\n'.repeat(10_000)}`, found: ['28 brace-not-opened'] },
  'a number beyond all numbers': { text: leg('1e999 mm'), found: ['21 number-too-large'] },
  'a number beyond all lengths': { text: leg('1e300 mm'), found: ['21 impossible-value'] },
  'a give beyond all lengths': { text: leg('721 mm ± 1e300 mm'), found: ['21 impossible-value'] },
  'a product beyond all numbers': { text: setup('let a = 1e30 mm', 'let b = a * 1e30 * 1e30'), found: ['3 impossible-value'] },
  'a ratio of very long numbers': { text: setup(`beam ratio: ${'9'.repeat(400)}:1`), found: ['2 number-too-large'] },
  'a length of zero': { text: leg('0 mm'), found: ['21 impossible-value'] },
  'a negative length': { text: leg('-721 mm'), found: ['21 impossible-value'] },
  'a negative length by formula': { text: leg('100 mm - 200 mm'), found: ['21 impossible-value'] },
  'a negative give': { text: leg('721 mm ± -2 mm'), found: ['21 impossible-value'] },
  'a division by zero': { text: leg('721 mm / 0'), found: ['21 impossible-value'] },
  'a division by a difference that is zero': { text: leg('721 mm / (3 - 3)'), found: ['21 impossible-value'] },
  'zero by zero': { text: leg('0 mm / 0'), found: ['21 impossible-value'] },
  'the root of a negative number': { text: setup('let a = sqrt(-4)'), found: ['2 impossible-value'] },
  'an angle without a cosine': { text: setup('let a = acos(2)'), found: ['2 impossible-value'] },
  'a ratio to nothing': { text: setup('beam ratio: 4:0'), found: ['2 impossible-value'] },
  'below absolute zero': { text: setup('temperature: -300 °C'), found: ['2 impossible-value'] },
  'a unit inside and behind a bracket': { text: setup('let gap = (3 mm) cm'), found: ['2 wrong-unit'] },
  'a place without a unit': { text: setup('mirror M1 at (100, 200)'), found: ['2 missing-unit'] },
  'a direction without a unit': { text: setup('laser red heading 30'), found: ['2 missing-unit'] },
  'a distance on a leg in watts': { text: setup('mirror M1 at (0, 0) mm', 'plate P1 at (100, 0) mm', 'spreader R1 on M1 -> P1 by 60 mW'), found: ['4 wrong-unit'] },
  'a fact without its colon': { text: setup('beam height'), found: ['2 value-missing'] },
  'a misspelt fact that begins like a statement': { text: setup('beam hight: 120 mm'), found: ['2 unknown-word'] },
  'a misspelt kind of two words': { text: setup('half-wav plate HW1 at (100, 100) mm'), found: ['2 unknown-word'] },
  'light that leaves a splitter any way': { text: setup('laser red', 'splitter S1', 'beam stop B1', 'beam raw from red', '  -> S1: 100 mm', '  -> B1: 100 mm'), found: ['6 port-missing'] },
  'a name used twice that nothing has': { text: setup('let a = gap + 1 mm', 'let b = gap * 2'), found: ['2 unknown-name'] },
  'a date that is none': { text: setup('date: 12 mm'), found: ['2 wrong-value'] },
  'use of a missing file': { text: `use "lab.plate"\n${setup('laser red = lab.red-12')}`, found: ['1 import-unreadable'] },
  'use of a file that is no setup': { text: `use "lab.png"\n${setup('hologram: reflection')}`, files: { 'lab.png': PNG }, found: [] },
  'use of a file outside': { text: `use "../lab.plate"\n${setup('laser red = lab.red-12')}`, found: ['1 import-outside'] },
  'use of a file by an absolute path': { text: 'use "/etc/lab.plate"\n', found: ['1 import-outside'] },
  'use of nothing': { text: 'use ""\n', found: ['1 import-unreadable'] },
  'use without quotes': { text: 'use lab.plate\n', found: ['1 value-missing'] },
  'a file that uses itself': { text: 'use "setup.plate"\n', found: ['1 import-ring'] },
  'a ring of files': { text: 'use "a.plate"\n', files: { 'a.plate': 'use "b.plate"\n', 'b.plate': 'use "a.plate"\n' }, found: ['1 import-ring'] },
  'a ring that comes back here': { text: 'use "a.plate"\n', files: { 'a.plate': 'use "setup.plate"\n' }, found: ['1 import-ring'] },
  'a row of a hundred files': { text: 'use "1.plate"\n', files: Object.fromEntries(many(100, i => `${i + 1}`).map(i => [`${i}.plate`, `use "${Number(i) + 1}.plate"\n`])), found: ['1 too-many-files'] },
  'five thousand and one things': { text: setup(...many(5001, i => `shutter s${i}`)), found: ['5002 too-many-things'] },
  'five thousand things': { text: setup(...many(5000, i => `shutter s${i}`)), found: [] },
  'a value that uses itself': { text: setup('let a = a'), found: ['2 value-ring'] },
  'a ring of values': { text: setup('let a = b', 'let b = c', 'let c = a', 'let d = a * 2'), found: ['2 value-ring'] },
  'ten thousand values, each of the next': { text: setup(...many(10_000, i => `let v${i} = v${i + 1} + 1 mm`), 'let v10000 = 1 mm'), found: ['202 value-ring'] },
  'ten thousand values, each of the one before': { text: setup('let v0 = 1 mm', ...many(9999, i => `let v${i + 1} = v${i} + 1 mm`)), found: [] },
  'an unclosed text': { text: setup('note: "wet sand'), found: ['2 unclosed-text'] },
  'null characters': { text: setup('beam height: 120\0 mm'), found: ['2 unreadable-character'] },
  'half a letter': { text: setup('beam height: 120 mm \ud83d'), found: ['2 unreadable-character'] },
  'text that runs from right to left': { text: setup('note: "\u202eretsiug"', 'mirror \u202eM1'), found: ['3 unreadable-character'] },
  'names of the inner workings of the program': { text: setup('laser constructor', 'mirror valueOf', 'beam stop toString', 'beam hasOwnProperty from constructor', '-> valueOf: 100 mm', '-> toString: 100 mm', 'prototype: 5 mm'), found: ['8 unknown-word'] },
};

describe('bad input', () => {
  it.each(Object.entries(CASES))('%s', (_, { text, files, found }) => {
    const snapshot = look(text, files);
    expect(findings(snapshot.findings.filter(serious))).toEqual(found);
    expectNumbers(snapshot);
  });
});

function expectNumbers(snapshot: Snapshot): void {
  expect(numbersOf(snapshot).filter(n => !Number.isFinite(n.value))).toEqual([]);
  for (const f of snapshot.findings) expect(`${f.message} ${JSON.stringify(f.data)}`).not.toMatch(/NaN|Infinity|undefined/);
}
