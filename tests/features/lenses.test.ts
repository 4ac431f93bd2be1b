import { expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { lensesOf, type LensKinds } from '../../server/features/lenses.ts';
import { but, FILE, whelk } from './source.ts';

const all: LensKinds = { setups: true, arms: true, lengths: true, mismatch: true };
const check = (text: string, kinds: LensKinds, ...wanted: string[]): void => expect(lensesOf(analyse(FILE, text), kinds).map(l => `${l.line + 1} ${l.text}`)).toEqual(wanted);
/** 60 and 20 µW/cm² make 3:1, and 80 together; 800 µJ/cm² take 10 s of that. */
const metered = but('  plate P1\n', '  plate P1 {\n    sensitivity: 800 µJ/cm²\n  }\n  measured reference at P1: 60 µW/cm²\n  measured object at P1: 20 µW/cm²\n');

it('the paths of strings have their lengths and their difference', () => {
  // 1471 mm and 1555 mm by string.
  check(whelk, all, '2 mismatch 84 ± 7 mm', '19 reference 1471 ± 3 mm', '22 object 1555 ± 6 mm');
});
it('what was metered stands there as ratio, exposure and light at the plate', () => {
  check(metered, { ...all, lengths: false, mismatch: false }, '2 beam ratio 3:1, exposure 10 s', '23 light at P1 60 µW/cm²', '26 light at P1 20 µW/cm²');
});
it('what is not wanted, and what hints say, is left out', () => {
  check(whelk, { ...all, lengths: false, mismatch: false });
  check(whelk, { ...all, setups: false, lengths: false });
  check(whelk, { ...all, arms: false }, '2 mismatch 84 ± 7 mm');
});
it('where nothing is known nothing is said', () => check('setup "a" {\n  plate P1\n  beam raw from\n    -> P1\n}\n', all));
