/** The light of a setup as the report shows it; figures worked out by hand stand in tests/results/light.test.ts. */
import { erf as erfOf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { chainOf } from '../../server/features/chain.ts';
import { lightPages, lightText } from '../../server/features/report/light.ts';
import { reportMarkdown } from '../../server/features/report/markdown.ts';
import { reportOf } from '../../server/features/report/report.ts';
import { readingsPage } from '../../server/features/report/readings.ts';
import { metered, METER, NEEDLE } from '../results/light-library.ts';
import { expectNear, read, setup, type Read } from '../results/read.ts';

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

      reference                      1.73 ± 0.10 µW/cm²     facing the beam
      object light                   0.40 ± 0.05 µW/cm²     in the plate’s plane
      together                       2.13 ± 0.11 µW/cm²
      beam ratio                     3.8:1 to 4.9:1
      polarized like the reference   75% ± 12 points        share of object
      ratio to that share            5:1 to 6.5:1
      weakest corner                 75% ± 6 points         of the centre
      test strip                     12, 17, 24, 34, 46 s   in half stops
      drift                          0.5 fringes/min
      longest exposure               12 s                   a tenth of a fringe
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
  expect(text(r).replace(/ +/g, ' ')).toBe('Light at P1\n\n power of reference 1.08 mW all of its beam at P1\n power of object 7.92 mW all of its beam at whelk\n\nWheels, images and powers that were read\n\n power of raw at S1 9 mW 90 % of the plan\n S1 reflects by its wheel 88%\n');
});

it('shows beside the power of a beam what of it falls on the plate and on the object', () => {
  const r = read(setup(
    'laser red {', 'wavelength: 632.8 nm', 'power: 10 mW', 'beam diameter: 1 mm', 'beam quality: 1', 'coherence length: 5 m', '}', 'splitter S1 {', 'reflects: 80%', 'loss: 0%', '}',
    'spreader R1 {', 'focal length: 5 mm', 'loss: 0%', '}', 'spreader R2 {', 'focal length: 10 mm', 'loss: 0%', '}',
    'object whelk {', 'size: 40 x 60 x 30 mm', 'shape: rounded', 'lit at: 60°', '}', 'plate P1 {', 'size: 63 x 63 mm', 'reference angle: 0°', '}', ...METER,
    'beam raw from red', '-> S1: 350 mm', 'beam reference from S1 through', '-> R1: 650 mm', '-> P1: 1000 mm', 'beam object from S1 reflected', '-> R2: 650 mm', '-> whelk: 800 mm', '-> P1: 300 mm',
  ));
  // Kogelnik & Li, Appl. Opt. 5, 1550 (1966): a beam from its waist of 0.5 mm has after 1 m w = 0.642 mm and R = 2.541 m, and at D behind a lens
  // w′² = w² (1 + D/R − D/f)² + (λD/πw)².
  const rayleigh = (Math.PI * 0.5 ** 2) / 632.8e-6;
  const [w1, bend] = [0.5 * Math.sqrt(1 + (1000 / rayleigh) ** 2), 1000 / (1000 ** 2 + rayleigh ** 2)];
  const behind = (d: number, f: number): number => Math.hypot(w1 * (1 + d * bend - d / f), (632.8e-6 * d) / (Math.PI * w1));
  // A square of half-side a squarely in the middle catches erf(√2 a/w)²: 14.3 %.
  const page = text(r);
  const onPlate = erfOf((Math.SQRT2 * 31.5) / behind(1000, 5)) ** 2;
  expectNear(r.value('P1.reference.caught'), onPlate, 1e-6, 'the plate');
  // The outline at 60° is √((40 cos 60°)² + (30 sin 60°)²) = 32.79 mm wide and 60 mm high. Share of an ellipse: ∫ (1 − exp(−2ρ²/w²)) dφ/2π, by a sum over φ: 31 %.
  const [a, b, w] = [Math.hypot(20, 30 * Math.sqrt(3) / 2) / 2, 30, behind(800, 10)];
  const part = Array.from({ length: 720 }, (_, i) => (i * Math.PI) / 360).map(t => 1 - Math.exp((-2 / w ** 2) / ((Math.cos(t) / a) ** 2 + (Math.sin(t) / b) ** 2)));
  const onObject = part.reduce((x, y) => x + y) / part.length;
  expectNear(r.value('P1.object.caught'), onObject, 1e-6, 'the object');
  expect(page).toMatch(/power of reference +2 mW/);
  expect(page.replace(/\s+/g, ' ')).toMatch(/all of its beam at P1; by the plan 0\.28\d+ mW of it falls on P1/);
  expectNear(r.value('P1.object.caught power'), 8e-3 * onObject, 1e-8);
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

describe('what was measured', () => {
  const rows = (...given: Parameters<typeof metered>): (readonly string[])[] => (readingsPage(metered(...given).results)?.rows ?? []).map(r => [r.label, r.text, r.remark]);

  it('has each reading of light: how and by what it was taken, what it says, and what comes of it', () => {
    const meter = ['meter m {', '  head: 11.283791670955126 mm', '  calibration: 1.1', '}', ...NEEDLE];
    expect(rows([
      'measured dark: 20 nW by m', 'measured reference at P1 facing beam: 2.02 µW ± 5% by m on 2026-02-18', 'measured reference at P1 facing beam: 3 µW by m on 2026-02-11', 'measured reference at P1 upper left facing beam: 1.02 µW by m',
      'measured object at P1: 0.42 µW/cm² by m', 'measured object at P1 through polarizer: 0.32 µW/cm² by m', 'measured reference at P1: 1.8 µW/cm² by m on 2026-02-01',
    ], { plate: ['reference angle: 30°'], things: meter })).toEqual([
      ['dark', '20 nW', 'by m: is taken off what m shows'],
      // (2.02 − 0.02) · 1.1 · cos 30° = 1.905; 5 % / √3 of 2.02 · 1.1 · 0.866, twice: 0.111
      ['reference at P1 facing beam', '2.02 ± 0.101 µW', 'by m on 2026-02-18: facing the beam; with area of the head, dark reading, calibration and angle of arrival 1.91 ± 0.11 µW/cm²; gives light of reference at P1'],
      ['reference at P1 facing beam', '3 µW', 'by m on 2026-02-11: counts no more: there is a newer one of 2026-02-18'],
      // 1.1; the angle falls out against the centre
      ['reference at P1 upper left facing beam', '1.02 µW', 'by m: facing the beam; with area of the head, dark reading and calibration 1.1 µW/cm²; goes into weakest corner of P1 in the light of reference'],
      ['object at P1', '0.42 µW/cm²', 'by m: in the plate’s plane; with dark reading and calibration 0.44 µW/cm²; gives light of object at P1'],
      ['object at P1 through polarizer', '0.32 µW/cm²', 'by m: in the plate’s plane; with dark reading and calibration 0.33 µW/cm²; goes into polarized share of object at P1'],
      ['reference at P1', '1.8 µW/cm²', 'by m on 2026-02-01: in the plate’s plane; with dark reading and calibration 1.958 µW/cm²; goes into angle of reference at P1 by two readings'],
    ]);
  });

  it('has powers and wheels beside their plan, and drifts', () => {
    expect(rows(['measured raw at S1: 9 mW by m', 'measured S1 wheel: 4.5 on 2026-02-11', 'measured drift at P1: 0.5 fringes/min'], { laser: ['power: 10 mW'], splitter: ['wheel: 4', 'mark 4: 84%', 'mark 5: 92%'] })).toEqual([
      ['raw at S1', '9 mW', 'by m: 10 % less than planned (10 mW); corrects power of raw at S1'],
      ['S1 wheel', '4.5', 'on 2026-02-11: which reflects 88%, 4 points more than planned (84%); corrects share that S1 reflects by its wheel'],
      ['drift at P1', '0.5 fringes/min', 'gives drift of the fringes at P1'],
    ]);
  });

  it('marks what is stale, and says why a reading is of no use', () => {
    expect(rows(['measured reference at P1: 2 µW/cm² by m on 2026-02-11', 'moved P1 on 2026-02-14: "the cat"', 'measured raw at S1: 3 µW/cm²', 'measured object at P1 upper left: 3 by needle', 'measured object at P1 through polarizer: 3 by needle', 'measured S1 wheel: 3', 'measured dark: 3 by m', 'measured reference at whelk: 3 mW'])).toEqual([
      ['reference at P1', '2 µW/cm²', 'by m on 2026-02-11: no longer counts: P1 was moved on 2026-02-14'],
      ['raw at S1', '3 µW/cm²', 'counts for nothing: on the way to a plate only a power tells something, read with the whole beam on the head'],
      ['object at P1 upper left', '3', 'by needle: counts for nothing: the light of object was not read at the centre'],
      ['object at P1 through polarizer', '3', 'by needle: counts for nothing: the light of object was not read without the polarizer'],
      ['S1 wheel', '3', 'counts for nothing: what S1 reflects at the marks of its wheel is not written'],
      ['dark', '3', 'by m: counts for nothing: no reading of m rests on it'],
      ['reference at whelk', '3 mW', 'counts for nothing: no beam reference comes to whelk'],
    ]);
  });

  it('says which of two ways does not count', () => {
    const r = metered(['splitter S2', 'beam fill from S2 reflected', '-> whelk: 1100 mm', '-> P1: 300 mm', 'beam feed from S1 reflected', '-> S2: 100 mm', 'measured reference at P1: 2 µW/cm² by m', 'measured key at P1: 0.3 µW/cm² ± 2% by m', 'measured fill at P1: 0.1 µW/cm² ± 2% by m', 'measured object at P1: 0.41 µW/cm² ± 10% by m'], { things: METER }, 'key');
    expect(readingsPage(r.results)!.rows.map(x => x.remark).slice(1)).toEqual([
      'by m: in the plate’s plane; gives light of key at P1', 'by m: in the plate’s plane; gives light of fill at P1', 'by m: in the plate’s plane; does not count: the readings of the single beams are surer',
    ]);
    expect(text(r)).toMatch(/object light +0\.400 ± 0\.007 µW\/cm² +in the plate’s plane\n {4}key +0\.300 ± 0\.007 µW\/cm²\n {4}fill +0\.1000 ± 0\.0023 µW\/cm²\n {4}all together +0\.41 ± 0\.05 µW\/cm² +less sure: does not count\n/);
  });
});

it('takes off the newest dark reading of the same kind', () => {
  // (62 − 2) / (14 − 2) = 5; a dark reading in nW says nothing of divisions.
  expect(metered(['measured dark: 2 by needle on 2026-02-11', 'measured dark: 5 nW by needle on 2026-02-18', 'measured reference at P1: 62 by needle', 'measured object at P1: 14 by needle']).value('beam ratio')).toBe(5);
});
