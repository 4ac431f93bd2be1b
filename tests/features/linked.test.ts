import { expect, it } from 'vitest';
import { linkedAt } from '../../server/features/linked.ts';
import { marked } from './source.ts';

const check = (source: string, ...wanted: string[]): void => {
  const { snapshot, line, character } = marked(source);
  expect(linkedAt(snapshot, line, character).map(p => `${p.line + 1}:${p.start}–${p.end}`)).toEqual(wanted);
};
const setup = (lines: string): string => `setup "a" {\n  laser red\n  mirror M1\n  room {\n  }\n${lines}}\n`;

it('a name of a setup changes with its uses', () => {
  check(setup('  beam b from red\n    -> M1|: 1 m\n'), '3:9–11', '7:7–9');
  check(setup('  beam b from r|ed\n'), '2:8–11', '6:14–17');
  check(setup('  let gap| = 1 m\n  let half = gap / 2\n'), '6:6–9', '7:13–16');
});
it('a name that stands once is linked to nothing', () => check(setup('  plate P|1\n')));
it('words that are no names are not', () => {
  check(setup('  mir|ror M2\n'));
  check(setup('  beam b from M|9\n'));
  check('setup "a" {\n  ro|om {\n  }\n}');
});
it('nor is what other pages may name', () => check('inventory la|b {\n  mirror flat\n}\nsetup "a" {\n  mirror M1 = lab.flat\n}\n'));
