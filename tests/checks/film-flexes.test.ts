/** Film flexes where nothing holds it flat: the second of the mistakes in `server/checks/MISTAKES.md`. */
import { expect, it } from 'vitest';
import { look } from './library.ts';

const page = (...facts: string[]): string => `setup "Cockle" {
  laser red {
    coherence length: 200 mm
  }
  plate P1 {
${facts.map(f => `    ${f}\n`).join('')}  }
  object cockle
  beam all from red
    -> P1 through: 900 mm
    -> cockle: 12 mm
    -> P1: 12 mm
}
`;
const found = (text: string): string[] => look(text).findings.filter(f => f.code === 'film-flexes').map(f => `${f.severity} ${f.subject} line ${f.at.line + 1}: ${f.message}`);

it.each([['base: film', 'film with nothing behind it'], ['base: film between glass', 'film between clipped glass']])('%s has a note with the cure, at its line', (fact, words) => {
  const all = found(page('size: 63 x 63 mm', fact));
  expect(all).toHaveLength(1);
  expect(all[0]).toMatch(/^note P1 line 7: /);
  expect(all[0]).toContain(words);
  expect(all[0]).toContain('“base: film on glass”');
});
it.each([['base: film on glass'], ['base: glass'], ['size: 63 x 63 mm'], ['base: fil']])('%s has none', fact => { expect(found(page(fact))).toEqual([]); });
it('is accepted by its name', () => {
  const f = look(page('base: film').replace('  beam all', '  accept film-flexes "held by vacuum"\n  beam all')).findings.filter(x => x.code === 'film-flexes');
  expect(f).toMatchObject([{ accepted: 'held by vacuum' }]);
});
