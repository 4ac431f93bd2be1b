import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { foldsOf } from '../../server/features/folding.ts';
import { FILE } from './source.ts';

/** Folds as `from–to`, with their kind, lines counted from 1. */
const check = (source: string, ...wanted: string[]): void => {
  expect(foldsOf(analyse(FILE, source)).map(f => `${f.from + 1}–${f.to + 1}${f.kind ? ` ${f.kind}` : ''}`)).toEqual(wanted);
};

describe('what can be folded', () => {
  it('blocks, down to the brace, which stays', () => check('setup "a" {\n  laser red {\n    power: 1 mW\n  }\n  plate P1\n}', '1–5', '2–3'));
  it('beams with their legs', () => check('setup "a" {\n  beam b from red\n    -> M1: 1 m\n    -> P1: 1 m\n\n  beam c from red\n}', '1–6', '2–4'));
  it('runs of comments and of notes, each by itself', () => check('// a\n// b\n/// c\n/// d\nsetup "a" {\n}\n// e', '1–2 comment', '3–4 comment'));
  it('three readings in a row, but not two', () => {
    check('setup "a" {\n  measured dark: 1 nW\n  measured dark: 1 nW\n  measured dark: 1 nW\n  // more\n  measured dark: 1 nW\n  measured dark: 1 nW\n}', '1–7', '2–4');
  });
  it('used files', () => check('use "a.plate"\nuse "b.plate"\n\nuse "c.plate"', '1–2 imports'));
  it('nothing that is on one line', () => check('setup "a" {\n}\n// one\nsetup "b" {'));
  it('what is not closed, to its end', () => check('setup "a" {\n  laser red {\n    power: 1 mW\n  plate P1\n  mirror M1\n', '1–6', '2–3'));
});
