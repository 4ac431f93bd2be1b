/** Light that the glass of a plate throws off the table: part of the caution for eyes. Where it goes by the law of reflection, worked out by hand. */
import { expect, it } from 'vitest';
import { look } from './library.ts';

// A reference from M1 (900, 100) to P1 (600, 400) goes along (−1, 1). A plate that heads 270°, towards −y, turns it to (−1, −1): it crosses the near edge at (200, 0). One that heads 0° turns it to (1, 1): the right edge at (1200, 1000), beyond the far one, y 900, at (1100, 900).
const page = (heading: number, ...more: string[]): string => `setup "Oyster" {
  table: 1200 x 900 mm
  beam height: 120 mm
  laser red at (60, 100) mm heading 0° {
    wavelength: 632.8 nm
    power: 12 mW
    coherence length: 5 m
  }
  splitter S1 at (150, 100) mm
  mirror M1 at (900, 100) mm
  mirror M2 at (150, 500) mm
  object oyster at (560, 300) mm {
    size: 20 x 20 x 20 mm
  }
  plate P1 at (600, 400) mm heading ${heading}° {
    size: 63 x 63 mm
  }
${more.map(l => `  ${l}\n`).join('')}  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> oyster
    -> P1
}
`;
const caution = (text: string): { message: string; data: Readonly<Record<string, unknown>> }[] => look(text).findings.filter(f => f.code === 'laser-caution');

it.each([[270, 'near', '(200, 0) mm'], [0, 'far', '(1100, 900) mm']])('of a plate that heads %s° by the %s edge', (heading, edge, where) => {
  const [one, ...more] = caution(page(heading));
  expect(more).toEqual([]);
  expect(one!.data).toMatchObject({ flash: 'P1', reference: 'reference', edge, where });
  expect(one!.message).toContain(`leaves the table by its ${edge} edge, at about ${where}, at the height of the beams. A black card there ends it`);
  expect(one!.message).not.toMatch(/\bsafe\b/);
});
it.each([
  ['a card stands there', page(270, 'black card BC1 at (300, 100) mm heading 45°')],
  ['the plate is tipped, so that it goes up', page(270).replace('heading 270° {', 'heading 270° tilted 20° {')],
  ['no table is written', page(270).replace('  table: 1200 x 900 mm\n', '')],
])('not where %s', (_, text) => { expect(caution(text)[0]!.data['flash']).toBeUndefined(); });
it('is no caution of its own for a weak laser', () => { expect(caution(page(270).replace('12 mW', '0.5 mW'))).toEqual([]); });
