import { expect, it } from 'vitest';
import { goingOn, reaching, stopAt, type Step } from '../../server/features/ways.ts';
import { marked, whelk } from './source.ts';

/** Names of the steps, each with the lines that say so, from 1. */
const rows = (steps: readonly Step[] | undefined): string[] | undefined => steps?.map(s => `${s.stop.kind} ${s.stop.name} ${s.by.map(b => b.line + 1).join(',')}`);
const check = (name: string, from: string[], to: string[]): void => {
  const at = whelk.indexOf(name) + name.length;
  const { snapshot, line, character } = marked(`${whelk.slice(0, at)}|${whelk.slice(at)}`);
  const stop = stopAt(snapshot, line, character)!;
  expect([rows(reaching(snapshot, stop.at)), rows(goingOn(snapshot, stop.at))]).toEqual([from, to]);
};

/** raw: red → S1 (line 18). reference: S1 → M1 → P1 (20, 21). object: S1 → M2 → M3 → whelk → P1 (23 to 26). */
it('light reaches a thing by the legs that lead there, and goes on by those that start there', () => {
  check('laser red', [], ['thing S1 18']);
  check('splitter S1', ['thing red 18'], ['thing M1 20', 'thing M2 23']);
  check('plate P1', ['thing M1 21', 'thing whelk 26'], []);
  check('-> M3', ['thing M2 24'], ['thing whelk 25']);
});
it('a beam starts at a thing and meets others', () => check('beam object', ['thing S1 22'], ['thing M2 23', 'thing M3 24', 'thing whelk 25', 'thing P1 26']));
it('other words have no way', () => {
  const { snapshot } = marked(`${whelk}|`);
  expect(stopAt(snapshot, 1, 8)).toBeUndefined();
  expect(reaching(snapshot, { line: 1, start: 0 })).toBeUndefined();
  expect(goingOn(snapshot, { line: 999, start: 0 })).toBeUndefined();
});
