/** The limits of the language, as the reference states them: just below there is nothing, just above one finding, and the rest of the file is still read. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { look } from './library.ts';

const n = (k: number): number[] => Array.from({ length: k }, (_, i) => i + 1);
const setup = (lines: readonly string[], more = ''): string => `setup "Big" {\n${lines.map(l => `  ${l}\n`).join('')}}\n${more}`;
/** The findings of a limit, and how many setups were read. */
const told = (code: string, text: string, files?: Readonly<Record<string, string>>): [number, number] => {
  const s = look(text, files);
  return [s.findings.filter(f => f.code === code).length, s.model.setups.length];
};
const LAST = 'setup "Last" {\n}\n';
const chain = (files: number): Record<string, string> => Object.fromEntries(n(files).map(i => [`n${i}.plate`, i < files ? `use "n${i + 1}.plate"\n` : 'inventory lab {\n}\n']));
const leaves = (files: number): string => n(files).map(i => `use "n${i}.plate"\n`).join('');
const nested = (depth: number): string => setup([...n(depth - 1).map(() => 'room {'), ...n(depth - 1).map(() => '}')]);
const plates = (times: number): string => setup(['laser red', 'screen W1', 'plate P1', 'beam raw from red', ...n(times).flatMap(() => ['  -> P1 through: 10 mm', '  -> W1 through: 10 mm']), '  -> W1: 1 mm']);
const far = (legs: number): string => setup(['laser red', 'mirror M1', 'mirror M2', 'splitter S1', 'beam stop B1', 'beam raw from red', ...n(legs).map(i => (i === legs ? '  -> S1: 1 mm' : `  -> M${1 + (i % 2)}: 1 mm`)), 'beam more from S1 through', '  -> B1: 1 mm']);
const lets = (depth: number): string => setup(n(depth).map(i => (i === depth ? `let a${i} = 1 mm` : `let a${i} = a${i + 1} + 1 mm`)));

test.each<[string, string, (k: number) => [number, number], number]>([
  ['characters of a file', 'file-too-large', k => told('file-too-large', `// ${'x'.repeat(996)}\n`.repeat(1999) + `// ${'x'.repeat(k - 1_999_000 - 4)}\n`), 2_000_000],
  ['lines of a file', 'file-too-large', k => told('file-too-large', '//\n'.repeat(k)), 20_000],
  ['characters of a line', 'line-too-long', k => told('line-too-long', setup([`note: "${'x'.repeat(k - 10)}"`], LAST)), 2000],
  ['blocks inside each other', 'nested-too-deep', k => told('nested-too-deep', nested(k) + LAST), 8],
  ['brackets inside each other', 'nesting-too-deep', k => told('nesting-too-deep', setup([`let a = ${'('.repeat(k)}1 mm${')'.repeat(k)}`], LAST)), 32],
  ['signs in a row', 'nesting-too-deep', k => told('nesting-too-deep', setup([`let a = ${'- '.repeat(k)}1 mm`], LAST)), 32],
  ['things of a setup', 'too-many-things', k => told('too-many-things', setup(n(k).map(i => `screen W${i}`), LAST)), 5000],
  ['things of an inventory', 'too-many-things', k => told('too-many-things', `inventory lab {\n${n(k).map(i => `screen W${i}\n`).join('')}}\n${LAST}`), 5000],
  ['files in a chain', 'too-many-files', k => told('too-many-files', `use "n1.plate"\n${LAST}`, chain(k)), 64],
  ['files beside each other', 'too-many-files', k => told('too-many-files', leaves(k) + LAST, Object.fromEntries(n(k).map(i => [`n${i}.plate`, '']))), 64],
  ['variants of a setup', 'too-many-variants', k => told('too-many-variants', setup(n(k).flatMap(i => [`variant "v${i}" {`, '}']), LAST)), 32],
  ['times that light reaches plates', 'too-many-arms', k => told('too-many-arms', plates(k) + LAST), 200],
  ['legs over which a beam is followed back', 'path-too-long', k => told('path-too-long', far(k) + LAST), 5000],
  ['values in a chain', 'value-ring', k => told('value-ring', lets(k) + LAST), 200],
  ['findings of a file', 'more-findings', k => told('more-findings', n(k).map(i => `setup "S${i}" {\n  table: 5 mW\n}\n`).join('')), 1000],
])('%s', (_, code, at, limit) => {
  const [below, read] = at(limit);
  const [above, stillRead] = at(limit + 1);
  expect([below, above], code).toEqual([0, 1]);
  // What stands behind is still read, and nothing else is lost.
  if (code !== 'file-too-large') expect(stillRead).toBeGreaterThanOrEqual(read);
  const page = readFileSync(new URL('../../grammar/language.md', import.meta.url), 'utf8').split('## Limits\n')[1]!.split('\n##')[0]!;
  expect(page, String(limit)).toMatch(new RegExp(limit === 2_000_000 ? '2 MB' : `\\b${String(limit).replace(/\B(?=(?:\d{3})+$)/g, ',')}\\b`));
});

test('things beyond the limit are not read, and what names them is no finding of its own', () => {
  const s = look(setup([...n(5001).map(i => `screen W${i}`), 'laser red', 'beam raw from red', '  -> W5001: 10 mm']));
  expect(s.model.setups[0]!.things.size).toBe(5000);
  const [f, ...more] = s.findings.filter(x => x.severity === 'error');
  expect([f!.code, f!.at.line, f!.data['count'], more.length]).toEqual(['too-many-things', 5001, 5002, 0]);
});

test('of too many findings the gravest are kept, in the order of the text, and the last says how many there are more', () => {
  const s = look(n(600).map(i => `setup "S${i}" {\n  table: 5 mW\n  laser red\n  beam stop B1\n  mirror M1\n  beam raw from red\n    -> B1: 4 mm\n}\n`).join(''));
  const codes = s.findings.map(f => f.code);
  expect(s.findings).toHaveLength(1001);
  expect(codes.at(-1)).toBe('more-findings');
  expect(codes.filter(c => c === 'wrong-unit' || c === 'wrong-value')).toHaveLength(600);
  const lines = s.findings.slice(0, -1).map(f => f.at.line);
  expect(lines).toEqual([...lines].sort((a, b) => a - b));
  // 600 errors and 600 notes: 1,200 − 1,000 are left out, all of them notes.
  expect([s.findings.at(-1)!.severity, s.findings.at(-1)!.data['count']]).toEqual(['note', 200]);
});
