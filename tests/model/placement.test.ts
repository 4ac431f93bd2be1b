/** What clauses of a placement mean, in any order; and each slip in them, which is one finding at its place. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { replaced } from '../../server/model/bind/placement.ts';
import type { Placement } from '../../server/model/model.ts';
import { dataOf, found } from './check.ts';

const BASE = ['laser red at (0, 0) mm heading 0°', 'let gap = 30 mm', 'let corner = 30°', 'mirror M1 at (300, 0) mm', 'mirror M2 at (300, 400) mm'];
/** All that is found but that the things of these short pages stand in one another. */
const foundIn = (text: string): string[] => found(...BASE, text).filter(f => !f.startsWith('things-overlap'));
const slips = (clauses: string): string[] => foundIn(`mirror M9 ${clauses}`);

/** A placement in short: what it says, names and values as written. */
function short(text: string): string {
  const uri = 'file:///saltmarsh/whelk.plate';
  const lines = `setup "Whelk shell" {\n${BASE.join('\n')}\n${text}\n}\n`;
  const { model } = analyse(uri, lines);
  const p = model.setups[0]!.things.get('M9')!.placement;
  const words = (w: { readonly at: { readonly line: number; readonly start: number; readonly end: number } }): string => lines.split('\n')[w.at.line]!.slice(w.at.start, w.at.end);
  if (!p) return '';
  const turning = p.beyond?.turning;
  return [
    p.at && `at ${words(p.at)}`, p.on && `on ${p.on.from.name} to ${p.on.to.name} by ${words(p.on.by)}`, p.beyond && `beyond ${p.beyond.from.name} by ${words(p.beyond.by)}`,
    turning && `turning ${typeof turning === 'string' ? turning : words(turning)}`, p.heading && `heading ${words(p.heading)}`, p.facing && `facing ${p.facing === 'beam' ? 'beam' : p.facing.name}`, p.tilted && `tilted ${words(p.tilted)}`, p.broken && 'broken',
  ].filter(Boolean).join(', ');
}

describe('clauses', () => {
  test.each([
    ['mirror M9 at (100, 200) mm', 'at (100, 200) mm'],
    ['mirror M9 at (100, 200, 30) mm ± 2 mm', 'at (100, 200, 30) mm ± 2 mm'],
    ['mirror M9 on M1 -> M2 by gap', 'on M1 to M2 by gap'],
    ['mirror M9 by 2 * gap ± 1 mm on M1 -> M2', 'on M1 to M2 by 2 * gap ± 1 mm'],
    ['mirror M9 turning left by 5 mm facing M2 tilted 5° beyond red', 'beyond red by 5 mm, turning left, facing M2, tilted 5°'],
    ['mirror M9 beyond red by 5 mm turning corner heading 30° ± 1°', 'beyond red by 5 mm, turning corner, heading 30° ± 1°'],
    ['mirror M9 facing beam at (5, 5) mm', 'at (5, 5) mm, facing beam'],
    ['mirror M9 beyond red by ? from 20 mm to 80 mm', 'beyond red by ?'],
  ])('%s', (text, meaning) => {
    expect(short(text)).toBe(meaning);
    expect(foundIn(text)).toEqual([]);
  });
  test('an inventory item is named before or behind them', () => {
    expect(found('mirror M9 = lab.flat at (3, 3) mm', 'room {', '}')).toEqual(['unknown-name lab.flat']);
    expect(short('mirror M9 at (3, 3) mm = lab.flat')).toBe('at (3, 3) mm');
  });
  test('the limits of a ? are kept', () => {
    const { model } = analyse('file:///a.plate', 'setup "a" {\nmirror M1 at (0, 0) mm\nmirror M9 beyond M1 by ? from 20 mm to 80 mm turning left\n}\n');
    const { by, turning } = model.setups[0]!.things.get('M9')!.placement!.beyond!;
    expect([by.from, by.to]).toMatchObject([{ kind: 'number', value: 20 }, { kind: 'number', value: 80 }]);
    expect(turning).toBe('left');
  });
});

describe('slips', () => {
  test.each([
    // twice, or one against the other
    ['at (1, 1) mm at (2, 2) mm', ['placed-twice at']],
    ['at (1, 1) mm on M1 -> M2 by 5 mm', ['placed-twice on']],
    ['on M1 -> M2 by 5 mm beyond M1 by 5 mm', ['placed-twice beyond', 'placed-twice by']],
    ['at (1, 1) mm heading 5° facing M1', ['placed-twice facing']],
    ['at (1, 1) mm facing M1 facing M2', ['placed-twice facing']],
    ['on M1 -> M2 by 5 mm by 6 mm', ['placed-twice by']],
    ['beyond red by 5 mm turning left turning right', ['placed-twice turning']],
    ['at (1, 1) mm heading 0° tilted 5° tilted 6°', ['placed-twice tilted']],
    // something is missing
    ['beyond M1', ['placement-incomplete beyond']],
    ['on M1 -> M2', ['placement-incomplete on']],
    ['on M1 by 5 mm', ['wrong-value M1']],
    ['on M1 -> M2 -> M1 by 5 mm', ['wrong-value M1 -> M2 -> M1']],
    ['by 5 mm', ['placement-incomplete by']],
    ['at (1, 1) mm by 5 mm', ['placement-incomplete by']],
    ['at (1, 1) mm turning left', ['placement-incomplete turning']],
    ['on M1 -> M2 by 5 mm turning left', ['placement-incomplete turning']],
    ['at (1, 1) mm tilted 5°', ['placement-incomplete 5°']],
    // names
    ['beyond Q7 by 5 mm', ['unknown-name Q7']],
    ['on M1 -> Q7 by 5 mm', ['unknown-name Q7']],
    ['at (1, 1) mm facing Q7', ['unknown-name Q7']],
    ['beyond M1 -> M2 by 5 mm', ['wrong-value M1 -> M2']],
    ['beyond 5 mm by 5 mm', ['wrong-value 5 mm']],
    ['at (1, 1) mm facing 30°', ['wrong-value 30°']],
    ['at (1, 1) mm facing the lamp', ['wrong-value the lamp']],
    ['at (1, 1) mm facing M9', ['impossible-value M9']],
    ['beyond red by 5 mm turning lft', ['wrong-value lft']],
    ['beyond red by 5 mm turning M1', ['wrong-value M1']],
    ['beyond red by gup', ['unknown-name gup']],
    // values
    ['beyond red by 5 mW', ['wrong-unit 5 mW']],
    ['beyond red by 5', ['missing-unit 5']],
    ['beyond red by -5 mm', ['impossible-value -5 mm']],
    ['beyond red by 0 mm', ['impossible-value 0 mm']],
    ['beyond red by gap - gap', ['impossible-value gap - gap']],
    ['beyond red by (5, 5) mm', ['wrong-value (5, 5) mm']],
    ['beyond red by 5 mm turning 30', ['missing-unit 30']],
    ['beyond red by 5 mm turning 30 mm', ['wrong-unit 30 mm']],
    ['beyond red by 5 mm turning gap', ['wrong-unit gap']],
    ['on M1 -> M2 by 500 mm', ['impossible-value 500 mm']],
    ['on M1 -> M2 by -1 mm', ['impossible-value -1 mm']],
    ['at (1, 1) mm heading 30', ['missing-unit 30']],
    ['at (1, 1) mm heading 30 mm', ['wrong-unit 30 mm']],
    ['at (1, 1) mm heading east', ['unknown-name east']],
    ['at (1, 1) mm heading 0° tilted 5 mm', ['wrong-unit 5 mm']],
    ['at 5 mm', ['wrong-value 5 mm']],
    ['at (5) mm', ['wrong-value (5) mm']],
    ['at (1, 2, 3, 4) mm', ['wrong-value (1, 2, 3, 4) mm']],
    ['at (1, 2)', ['missing-unit (1, 2)']],
    ['at (1, 2) mW', ['wrong-unit mW']],
    ['at (1, 2) mmm', ['unknown-unit mmm']],
    ['at (1 mm, 2 mW)', ['wrong-unit 2 mW']],
    ['at (1, gap) mm', []],
    ['at (1, corner) mm', ['wrong-unit corner']],
    ['at (gap, 2 * gap)', []],
    ['at (gap, 2)', ['missing-unit 2']],
    ['at (gap, 2 * gap) mm ± 2 mm', []],
    ['at (1, 2) mm ± 5%', ['wrong-unit 5%']],
    ['at (1, 2) mm ± 5', ['missing-unit 5']],
    ['at M1', ['wrong-value M1']],
    // words of other statements
    ['at (1, 1) mm from M1', ['unexpected-text from M1']],
    ['at (1, 1) mm to M1', ['unexpected-text to M1']],
    ['for M1 at (1, 1) mm', ['unexpected-text for M1']],
  ] as const)('%s', (clauses, findings) => { expect(slips(clauses)).toEqual(findings); });
  test('a word that turns nothing is offered the one that was meant', () => { expect(dataOf('wrong-value', ...BASE, 'mirror M9 beyond red by 5 mm turning lft')).toMatchObject({ suggestion: 'left' }); });
  test('an item of an inventory stands nowhere', () => {
    const text = 'inventory lab {\n  mirror flat {\n    diameter: 50 mm\n  }\n}\nsetup "a" {\n  mirror M9 at (0, 0) mm facing lab.flat\n}\n';
    expect(analyse('file:///a.plate', text).findings.filter(f => f.severity !== 'hint').map(f => f.code)).toEqual(['wrong-value']);
  });
  test('half a line is one slip', () => {
    for (const clauses of ['beyond', 'beyond M1 by', 'on M1 ->', 'at (1,', 'at (1, 1) mm facing', 'at (1, 1) mm heading', 'beyond red by 5 mm turning']) expect(slips(clauses), clauses).toHaveLength(1);
  });
  test('what stands nowhere because of a slip is not missed again', () => {
    expect(found(...BASE, 'mirror M9 beyond M1', 'beam stop B1 beyond M9 by 30 mm turning left', 'beam raw from red', '  -> M1', '  -> M9', '  -> B1')).toEqual(['placement-incomplete beyond']);
    expect(found(...BASE, 'mirror M9 beyond Q7 by 5 mm', 'beam stop B1 on M9 -> M1 by 30 mm', 'beam raw from red', '  -> M1', '  -> M9', '  -> B1')).toEqual(['unknown-name Q7']);
  });
});

test('a change of place keeps which way a thing faces, and the other way round', () => {
  const of = (clauses: string): Placement => analyse('file:///a.plate', `setup "a" {\nmirror M1 at (0, 0) mm\nmirror M9 ${clauses}\n}\n`).model.setups[0]!.things.get('M9')!.placement!;
  const says = (p: Placement): string[] => Object.keys(p).sort();
  const before = of('at (1, 1) mm facing M1 tilted 5°');
  expect(says(replaced(before, of('beyond M1 by 5 mm')))).toEqual(['beyond', 'facing', 'tilted']);
  expect(says(replaced(before, of('heading 5°')))).toEqual(['at', 'heading', 'tilted']);
  expect(says(replaced(undefined, of('heading 5°')))).toEqual(['heading']);
  expect(replaced(before, of('at (2, 2) mm')).at).not.toBe(before.at);
});
