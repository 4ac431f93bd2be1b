/** Slips of a first page: each is one finding that says what to write instead. */
import { describe, expect, it } from 'vitest';
import { look, serious } from './library.ts';

const messages = (text: string): string[] => look(text).findings.filter(serious).map(f => `${f.at.line + 1} ${f.code}: ${f.message}`);
const page = (...lines: string[]): string => `setup "Whelk" {\n  laser red\n  beam stop B1\n${lines.map(l => `  ${l}\n`).join('')}}\n`;
const lit = (length = ': 400 mm'): string[] => ['beam raw from red', `-> B1${length}`];

describe('one slip is one finding', () => {
  it.each<[string, string[], string[]]>([
    ['a beam splitter', ['beam splitter BS', 'beam raw from red', '-> BS: 350 mm', 'beam spare from BS through', '-> B1: 400 mm'], ['4 unknown-word: “beam splitter” opens no statement, so this line has no effect. Did you mean “splitter”?']],
    ['a colon that is missing on a leg', lit(' 400 mm'), ['5 value-expected: A colon is missing before the length. Write “B1: 400 mm”.']],
    ['half an inch', lit(': 1/2 in'), ['5 wrong-unit: This is a number divided by a length, which makes it a number per length. Write “0.5 in”.']],
    ['inches with their sign', lit(': 12"'), ['5 unknown-unit: “"” is no unit that is known, so the value cannot be used. Did you mean “in”?']],
    ['sizes in inches with their sign', [...lit(), 'table: 48" x 36"'], ['6 unknown-unit: “"” is no unit that is known, so the value cannot be used. Did you mean “in”?']],
    ['inches by their name', lit(': 12 inches'), ['5 unknown-unit: “inches” is no unit that is known, so the value cannot be used. Did you mean “in”?']],
    ['feet', lit(': 2 feet'), ['5 unknown-unit: “feet” is no unit that is known, so the value cannot be used. Did you mean “ft”?']],
    ['microns', [...lit(), 'spreader R1 {', '  pinhole: 10 microns', '}'], ['7 unknown-unit: “microns” is no unit that is known, so the value cannot be used. Did you mean “µm”?']],
    ['degrees Fahrenheit, for which no unit only can be changed', [...lit(), 'temperature: 68 °F'], ['6 unknown-unit: “°F” is no unit that is known, so the value cannot be used. Write °C: take 32 off, then five ninths of the rest.']],
    ['lux', [...lit(), 'measured raw at B1: 30 lux'], ['6 unknown-unit: “lux” is no unit that is known, so the value cannot be used. It weighs light as the eye sees it, which a plate does not: set the meter to µW/cm², or read bare numbers for a ratio.']],
    ['a reading that is misspelt', [...lit(), 'measure red -> B1: 400 mm'], ['6 unknown-word: “measure” opens no statement, so this line has no effect. Did you mean “measured”?']],
    ['an expectation in words', [...lit(), 'expect raw.1.length less than 1 m'], ['6 wrong-value: This should be a sign, as in “expect raw.1.length < 1 m”, and it is “less than”.']],
  ])('%s', (_, lines, expected) => { expect(messages(page(...lines))).toEqual(expected); });
});

it('a text may stand behind a number in a name, and behind a blank', () => {
  expect(messages('setup "Whelk 7" {\n  laser red\n  beam stop B1\n  beam raw from red\n    -> B1: 400 mm\n  note: "7"\n}\n')).toEqual([]);
});

describe('in an inventory', () => {
  const inventory = (...lines: string[]): string[] => messages(`inventory lab {\n  mirror flat\n${lines.map(l => `  ${l}\n`).join('')}}\n`);
  it.each<[string, string[], string[]]>([
    ['a place', ['mirror small at (100, 100) mm facing flat'], ['3 placed-in-inventory: Things in an inventory stand nowhere, so that “at (100, 100) mm facing flat” changes nothing. Write it in the setup, where small is used.']],
    ['a fact of a setup', ['hologram: transmission'], ['3 not-in-inventory: An inventory holds things only, and “hologram” is none. Move the line out of lab, into the setup that it is about.']],
    ['a beam', ['beam raw from red', '-> flat: 3 mm'], ['3 not-in-inventory: An inventory holds things only, and “beam” is none. Move the line out of lab, into the setup that it is about.']],
    ['a beam stop is a thing', ['beam stop B1 {', '  size: 50 x 50 mm', '}'], []],
    ['a reading', ['measured flat: 3 mm'], ['3 not-in-inventory: An inventory holds things only, and “measured” is none. Move the line out of lab, into the setup that it is about.']],
    ['an item that stands below', ['mirror odd = lab.later', 'mirror later'], ['3 unknown-name: “lab.later” stands further down: an item derives from one that is written above it. Move its lines above this one.']],
  ])('%s', (_, lines, expected) => { expect(inventory(...lines)).toEqual(expected); });
  it('an item without the name of its inventory is suggested with it', () => {
    expect(messages('inventory lab {\n  laser flat\n}\nsetup "Whelk" {\n  laser red = flat\n  beam stop B1\n  beam raw from red\n    -> B1: 400 mm\n}\n')).toEqual(['5 unknown-name: Nothing here is called “flat”; an item of an inventory belongs here. Did you mean “lab.flat”? Correct the name, or declare what it stands for.']);
  });
});
