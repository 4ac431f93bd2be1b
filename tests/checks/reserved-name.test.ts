/** A word of the language that was meant as a name is named, with what it means; and a line that is only half typed there says nothing wrong. */
import { describe, expect, it } from 'vitest';
import { RESERVED } from '../../grammar/tokens.ts';
import { look, serious } from './library.ts';

const inSetup = (...lines: string[]): string => `setup "Whelk shell" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`;
const found = (text: string): { code: string; at: string; message: string }[] => {
  const lines = text.split('\n');
  return look(text).findings.filter(serious).map(f => ({ code: f.code, at: lines[f.at.line]!.slice(f.at.start, f.at.end), message: f.message }));
};

describe('where something is given its name', () => {
  it.each([...RESERVED].flatMap(word => [[word, `mirror ${word}`], [word, `beam stop ${word} {`], [word, `let ${word} = 300 mm`]] as const))('%s in “%s”', (word, line) => {
    const all = found(inSetup(line, ...(line.endsWith('{') ? ['}'] : [])));
    expect(all).toMatchObject([{ code: 'reserved-name', at: word }]);
    expect(all[0]!.message).toMatch(new RegExp(`^“${word}” cannot be a name: it has a meaning of its own here, as in “.*\\b${word}\\b.*”. Choose another name`));
  });
  it('of a beam that goes on behind it', () => expect(found(inSetup('laser red', 'beam on from red'))).toMatchObject([{ code: 'reserved-name', at: 'on' }]));
  it('of a mirror with its place behind it', () => expect(found(inSetup('mirror to at (100, 100) mm'))).toMatchObject([{ code: 'reserved-name', at: 'to' }]));
  it('of an inventory', () => expect(found('inventory on {\n}\n')).toMatchObject([{ code: 'reserved-name', at: 'on' }]));
});

describe('where something is called by its name', () => {
  it('in a leg', () => expect(found(inSetup('laser red', 'beam raw from red', '  -> by: 300 mm'))).toMatchObject([{ code: 'reserved-name', at: 'by', message: expect.stringContaining('“-> M1: 300 mm”') as string }]));
  it('in a leg, and nothing else is said of that beam', () => expect(found(inSetup('laser red', 'mirror M1', 'beam stop B1', 'beam raw from red', '  -> M1: 300 mm', '  -> at: 20 mm', '  -> B1: 40 mm')).map(f => f.code)).toEqual(['reserved-name']));
  it('in a leg without a length', () => expect(found(inSetup('laser red', 'beam raw from red', '  -> by'))).toMatchObject([{ code: 'reserved-name', at: 'by', message: expect.not.stringContaining('before it') as string }]));
  it('at the start of a beam', () => expect(found(inSetup('beam raw from on'))).toMatchObject([{ code: 'reserved-name', at: 'on' }]));
});

describe('elsewhere the line is unfinished, and says so', () => {
  it.each(['object whelk {\n    lit at\n  }', 'expect from', 'mirror M1 at', 'beam raw from'])('%s', line => expect(found(inSetup(line)).map(f => f.code)).toEqual(['value-expected']));
  it('a mirror that has a place and no name', () => expect(found(inSetup('mirror at (100, 100) mm'))).toMatchObject([{ code: 'name-missing' }]));
  it('names that only hold such a word', () => expect(found(inSetup('mirror on-axis', 'let x1 = 3 mm', 'mirror at2 at (100, 100) mm'))).toEqual([]));
});
