/** One slip is one finding: each slip of a kind, in each line of a page where it can be made. */
import { describe, expect, it } from 'vitest';
import { findings, look, serious, TRIED, WHELK } from './library.ts';

const lines = WHELK.split('\n');

/** What a hand does to a line; undefined where it cannot. */
const SLIPS: Readonly<Record<string, (line: string) => string | undefined>> = {
  'a letter left out': l => swap(l, /[A-Za-z]{4,}/, w => w.slice(0, 2) + w.slice(3)),
  'the name of something else': l => swap(l, /[A-Z]\d/, () => 'Q7'),
  'a unit of something else': l => swap(l, / [mn]m$/, () => ' mW'),
  'a unit left out': l => swap(l, / [mn]m$/, () => ''),
  'a unit in capitals': l => swap(l, / [mn]m$/, u => u.toUpperCase()),
  'a minus sign': l => swap(l, /: (?=\d)/, s => `${s}-`),
  'a decimal comma': l => swap(l, /: \d/, s => `${s},2`),
  'a value left out': l => swap(l, /: .*$/, () => ':'),
  'a name left out': l => swap(l, /^( {2}(?:splitter|mirror|object|plate|laser)) \w+/, s => s.replace(/ \w+$/, '')),
  'a bracket too many': l => swap(l, /: (?=\d)/, s => `${s}(`),
  'a semicolon': l => `${l};`,
  'a sign of another language': l => `${l} §`,
  'a brace left out': l => swap(l, /\s*[{}]$/, () => ''),
  'a brace too many': l => swap(l, /^ *\}$/, b => `${b}\n${b}`),
  'the first line of a block lost': l => (/^ {2}.*\{$/.test(l) ? '' : undefined),
  'a brace behind a beam or a leg': l => swap(l, /^ +(?:beam|->).*$/, s => `${s} {`),
  'a quote left out': l => swap(l, /"(?= )/, () => ''),
  'the line twice': l => (/^ {2,4}\S/.test(l) && !/^ *(?:\}|beam)/.test(l) ? `${l}\n${l}` : undefined),
  'the line of a beam lost': l => swap(l, /^ {2}beam raw.*$/, () => ''),
  'the beam’s word misspelt': l => swap(l, /^ {2}beam/, () => '  baem'),
  'a way out misspelt': l => swap(l, /through|reflected/, w => w.slice(1)),
  'a word too many': l => swap(l, /^ {4}-> \w+/, s => `${s} soon`),
};

const swap = (line: string, what: RegExp, by: (found: string) => string): string | undefined => (what.test(line) ? line.replace(what, by) : undefined);

describe.each(Object.entries(SLIPS))('%s', (_, slip) => {
  const made = lines.flatMap((line, i) => {
    if (line.trim() === '' || line.startsWith('///')) return [];
    const wrong = slip(line);
    return wrong === undefined ? [] : [{ wrong: wrong.trimEnd(), text: [...lines.slice(0, i), wrong, ...lines.slice(i + 1)].join('\n') }];
  });
  it('can be made', () => expect(made).not.toEqual([]));
  it.each(made)('$wrong', ({ text }) => {
    expect(findings(look(text).findings.filter(serious))).toHaveLength(1);
  });
});

describe('in a variant and in what it is given', () => {
  const page = TRIED.split('\n');
  const first = page.findIndex(l => l.startsWith('  let'));
  const errors = (text: string): string[] => findings(look(text).findings.filter(f => f.severity === 'error'));
  // Behind each word or sign of a line but a brace, which opens a block that would otherwise be lost.
  const ends = page.slice(first, -2).flatMap((line, i) => [...line.matchAll(/"[^"]*"|[\w.]+|->|[^\w\s.{}]/g)].map(m => ({ line: first + i, end: m.index + m[0].length })));
  const slip = (line: number, by: (text: string) => string): string => page.map((text, i) => (i === line ? by(text) : text)).join('\n');
  it('is none to begin with', () => expect(errors(TRIED)).toEqual([]));
  it.each(ends)('a sign of another language behind place $end of line $line', ({ line, end }) => {
    expect(errors(slip(line, t => `${t.slice(0, end)} §${t.slice(end)}`))).toEqual([expect.stringMatching(`^${line + 1} `)]);
  });
  // Of a value whose unit alone is cut off nobody can tell that it should have one, but where it is used.
  it.each(ends.filter(({ line, end }) => page[line]!.includes('let ') && end < page[line]!.length && !/\d$/.test(page[line]!.slice(0, end))))('a value cut off behind place $end of line $line', ({ line, end }) => {
    expect(errors(slip(line, t => t.slice(0, end)))).toEqual([expect.stringMatching(`^${line + 1} `)]);
  });
});
