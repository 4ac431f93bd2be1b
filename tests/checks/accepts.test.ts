/** `accept`: what it silences, what it cannot, and when it says nothing any more. */
import { expect, test } from 'vitest';
import { look, WHELK } from './library.ts';

const page = (...lines: string[]): string => `setup "Whelk" {\n  laser red\n  mirror M1\n  mirror M2\n  beam stop B1\n  beam raw from red\n    -> B1: 400 mm\n${lines.map(l => `  ${l}\n`).join('')}}\n`;
const found = (...lines: string[]): string[] => look(page(...lines)).findings.filter(f => f.code !== 'not-computed-yet').map(f => `${f.code} ${f.subject}${f.accepted === undefined ? '' : `: ${f.accepted}`}`);

test('silences what it names, and keeps the reason', () => {
  expect(found()).toEqual(['unused-thing M1', 'unused-thing M2']);
  expect(found('accept unused-thing "next plate"')).toEqual(['unused-thing M1: next plate', 'unused-thing M2: next plate']);
  expect(found('accept unused-thing "next plate" for M2')).toEqual(['unused-thing M1', 'unused-thing M2: next plate']);
});

test('a part of the name of a result is enough', () => {
  const long = WHELK.replace('384 mm', '500 mm').replace(/\}\n$/, '  accept arms-mismatched "as ever" for object\n}\n');
  expect(look(long).findings.find(f => f.code === 'arms-mismatched')!.accepted).toBe('as ever');
});

test('a code that does not exist is an error, with the nearest that does', () => {
  const [f] = look(page('accept unused-thign "next plate"')).findings.filter(x => x.severity === 'error');
  expect([f!.code, f!.data['suggestion']]).toEqual(['unknown-code', 'unused-thing']);
});

test('a name that nothing has is an error at the name', () => {
  const text = page('accept unused-thing "next plate" for M3');
  const [f] = look(text).findings.filter(x => x.severity === 'error');
  expect([f!.code, text.split('\n')[f!.at.line]!.slice(f!.at.start, f!.at.end), f!.data['suggestion']]).toEqual(['unknown-name', 'M3', 'M1']);
});

test('what does not occur, or not about that thing, is a hint; not as long as something else is an error', () => {
  expect(found('accept object-too-deep "as ever"')).toContain('nothing-to-accept object-too-deep');
  expect(found('accept unused-thing "as ever" for B1')).toContain('nothing-to-accept unused-thing B1');
  expect(found('accept object-too-deep "as ever"', 'mirror M1')).not.toContain('nothing-to-accept object-too-deep');
});

test('errors stay, and that they cannot be accepted is said', () => {
  expect(found('mirror M1', 'accept name-taken "as ever"')).toEqual(['unused-thing M1', 'unused-thing M2', 'name-taken M1', 'error-accepted name-taken']);
});

test('of two setups with one name each keeps its own', () => {
  const both = look(page('accept unused-thing "next plate"') + page());
  expect(both.findings.filter(f => f.code === 'unused-thing').map(f => f.accepted)).toEqual(['next plate', 'next plate', undefined, undefined]);
});
