/** The light of a setup as the report shows it; figures worked out by hand stand in tests/results/light.test.ts. */
import { expect, it } from 'vitest';
import { chainOf } from '../../server/features/chain.ts';
import { lightPages, lightText } from '../../server/features/report/light.ts';
import { reportMarkdown } from '../../server/features/report/markdown.ts';
import { reportOf } from '../../server/features/report/report.ts';
import { metered, METER, NEEDLE } from '../results/light-library.ts';
import type { Read } from '../results/read.ts';

const text = (r: Read): string => lightPages(r.results).flatMap(p => [...lightText(p), '']).join('\n');

it('shows each light, the ratio, the corners and the exposure with the digits that they deserve', () => {
  const r = metered([
    'measured reference at P1 facing beam: 2 µW/cm² ± 5% by m', 'measured object at P1: 0.4 µW/cm² ± 10% by m', 'measured object at P1 through polarizer: 0.3 µW/cm² ± 10% by m', 'measured reference at P1 upper left facing beam: 1.5 µW/cm² ± 5% by m', 'measured drift at P1: 0.5 fringes/min',
  ], { plate: ['reference angle: 30°', 'sensitivity: 50 µJ/cm² ×÷ 2'], things: METER });
  // 2 cos 30° = 1.732, u = 0.05 · 1.732 / √3 = 0.05; ratio 1.732/0.4 = 4.33, u/K = √(0.05² + 0.1²)/√3 = 6.5 %: 3.77 to 4.89.
  // To the polarized share 1.732/0.3 = 5.77: the reading without the polarizer falls out, so that u is the same 6.5 %: 5.03 to 6.52.
  // Together 2.13 µW/cm²; 50/2.132 = 23.5 s, a factor of 2 either way, of which 95 % lie from 12.1 to 45.3 s. Half a fringe a minute makes
  // 0.378 fringes of the longer, which leave (sin 1.186 / 1.186)² = 0.611, and 0.101 of the shorter, which leave 0.967.
  const drawn = /^ +(?:exposure|brightness that it leaves) .*\n/gm;
  expect(text(r).replace(drawn, '')).toMatchInlineSnapshot(`
    "Light at P1

      reference                      1.73 ± 0.10 µW/cm²   facing the beam
      object light                   0.40 ± 0.05 µW/cm²   in the plate’s plane
      together                       2.13 ± 0.11 µW/cm²
      beam ratio                     3.8:1 to 4.9:1
      polarized like the reference   75% ± 12 points      share of object
      ratio to that share            5:1 to 6.5:1
      weakest corner                 75% ± 6 points       of the centre
      drift                          0.5 fringes/min
      longest exposure               12 s                 a tenth of a fringe
    "
  `);
  // What is drawn moves a little with the number of cells.
  expect(text(r).match(drawn)!.map(l => l.replace(/ +/g, ' ').trim())).toEqual([expect.stringMatching(/^exposure 1[123] to 4[3-7] s$/), expect.stringMatching(/^brightness that it leaves (?:5[89]|6[0-4]) to 9[67] % in 1[123] to 4[3-7] s$/)]);
});

it('says why a figure is missing', () => {
  const r = metered(['measured reference at P1: 62 by needle'], { things: NEEDLE });
  expect(text(r).replace(/\s+/g, ' ')).toBe('Light at P1 beam ratio unknown the light of object at P1 has not been metered, and no “beam ratio” is written ');
});

it('shows a wheel, and a power beside its plan', () => {
  const r = metered(['measured raw at S1: 9 mW by m', 'measured S1 wheel: 4.5'], { laser: ['power: 10 mW'], splitter: ['loss: 0%', 'mark 4: 84%', 'mark 5: 92%'] });
  // 88 % of 9 mW, and the rest.
  expect(text(r).replace(/ +/g, ' ')).toBe('Light at P1\n\n power of reference 1.08 mW on P1\n power of object 7.92 mW on whelk\n\nWheels, images and powers that were read\n\n power of raw at S1 9 mW 90 % of the plan\n S1 reflects by its wheel 88%\n');
});

it('says nothing where nothing is known', () => { expect(lightPages(metered([]).results)).toEqual([]); });

it('stands in the page as Markdown', () => {
  const r = metered(['measured reference at P1: 60 by needle', 'measured object at P1: 15 by needle'], { things: NEEDLE });
  expect(reportMarkdown([reportOf(r.snapshot, r.results)], 'setup.plate')).toContain('## Light at P1\n\n|  |  |  |\n| --- | --- | --- |\n| beam ratio | 4:1 |  |');
});

it('explains what a reading makes of the plan in units that are read off a meter', () => {
  const shown = (reading: string, name: string): string[] => {
    const r = metered(['measured raw at S1: 9 mW by m', reading], { laser: ['power: 10 mW'], splitter: ['reflects: 80%', 'loss: 0%'] });
    return chainOf(r.results.graph, r.cell(name)).links.filter(l => l.name.endsWith('factor')).map(l => l.text);
  };
  // 9 mW of 10 mW; 20 % of them are 1.8 mW, of which 0.9 µW/cm² arrive: 0.5 µW/cm² of each.
  expect(shown('measured reference at P1: 0.9 µW/cm² by m', 'P1.reference.light')).toEqual(['0.9', '0.5 µW/cm² for each mW']);
  // In divisions of a meter: 18 for 1.8 mW. What has a unit that nothing else has is written with raised powers.
  expect(shown('measured reference at P1: 18 by needle', 'P1.reference.meter')).toEqual(['0.9', '10 divisions for each mW']);
});
