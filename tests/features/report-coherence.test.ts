/** What the report says where a laser's coherence is not known: that nothing is written, or that what is written could not be read. */
import { expect, test } from 'vitest';
import { reportOf } from '../../server/features/report/report.ts';
import { read, setup } from '../results/read.ts';

const sentence = (laser: readonly string[], head = 'laser red {'): string => {
  const r = read(setup(head, ...laser.map(l => `  ${l}`), '}', 'splitter S1', 'object whelk', 'plate P1', 'beam raw from red', '-> S1: 350 mm', 'beam reference from S1 through', '-> P1: 1500 mm', 'beam object from S1 reflected', '-> whelk: 1200 mm', '-> P1: 300 mm'));
  return reportOf(r.snapshot, r.results).coherence.join(' ');
};
const UNREAD = 'How brightly red records cannot be told: what is written about the coherence of red could not be read';

test('nothing is written', () => { expect(sentence(['power: 3 mW'])).toBe('How brightly red records cannot be told: nothing is written about the coherence of red.'); });

// By what it is called there: a line that is kept moves with the text around it, and its number would not.
test.each<[string, string, string]>([
  ['a misspelt name', 'coherence lenght: 5 m', 'coherence lenght'], ['a unit of another kind', 'coherence length: 5 kg', 'coherence length'], ['no value', 'linewidth:', 'linewidth'], ['an equals sign', 'linewidth = 5 MHz', 'linewidth'],
  ['a formula of an unknown name', 'tube length: 2 * half', 'tube length'],
])('what is written could not be read: %s', (_, line, named) => { expect(sentence(['power: 3 mW', line])).toBe(`${UNREAD} (“${named}”).`); });

test('several are named', () => { expect(sentence(['tube lenght: 350 mm', 'linewidth: 3 mm'])).toBe(`${UNREAD} (“tube lenght” and “linewidth”).`); });
test('of two only the one that could not be read is named', () => { expect(sentence(['coherence length: 5 m', 'coherence contrast: 2 * half'])).toBe(`${UNREAD} (“coherence contrast”).`); });
test('the program is to find it', () => { expect(sentence(['tube length: ?'])).toBe('How brightly red records cannot be told: tube length of red is written ?.'); });
test('the item is not in the inventory', () => { expect(sentence([], 'laser red = lab.red-12 {')).toBe('How brightly red records cannot be told: the item that red is was not found, and nothing else is written about its coherence.'); });
