/** The table of mistakes, and the page that is written from it. */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { findCheck } from '../../server/checks/registry.ts';
import { CLUES } from '../../server/features/why/clues.ts';
import { MISTAKES } from '../../server/features/why/mistakes.ts';
import { mistakesPage } from '../../server/features/why/mistakes-page.ts';
import { OUTCOME_NAMES } from '../../server/features/why/outcomes.ts';

const PAGE = new URL('../../server/checks/MISTAKES.md', import.meta.url);

it('names findings that there are', () => {
  expect(MISTAKES.flatMap(m => m.codes ?? []).filter(c => !findCheck(c))).toEqual([]);
});
it('says of each mistake what catches it, or why text cannot', () => {
  expect(MISTAKES.filter(m => (m.codes ?? []).length === 0 && m.untold === undefined).map(m => m.name)).toEqual([]);
});
it('has each name once, and each outcome somewhere', () => {
  expect(new Set(MISTAKES.map(m => m.name)).size).toBe(MISTAKES.length);
  expect(OUTCOME_NAMES.filter(o => !MISTAKES.some(m => m.outcomes.includes(o)))).toEqual([]);
  expect(MISTAKES.length).toBeGreaterThanOrEqual(45);
});
it('asks for each clue somewhere', () => {
  expect(Object.keys(CLUES).filter(c => !MISTAKES.some(m => (m.clues as readonly string[] | undefined)?.includes(c)))).toEqual([]);
});
it('is the page as committed; UPDATE=1 writes it anew', () => {
  if (process.env['UPDATE'] === '1') writeFileSync(PAGE, mistakesPage());
  expect(readFileSync(PAGE, 'utf8')).toBe(mistakesPage());
});
