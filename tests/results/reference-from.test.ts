/** Setups that name distances only, whose reference comes from above or below: the same as one from the side on a table that is turned about the plate's normal. */
import { describe, expect, test } from 'vitest';
import { expectNear, read, setup, type Read } from './read.ts';

interface Strings { readonly from?: string; readonly angle?: string; readonly object?: string; readonly size?: string; readonly laser?: readonly string[]; readonly plate?: readonly string[]; readonly way?: string }
const strings = ({ from, angle = '45°', object = '0°', size = '100 x 20 mm', laser = [], plate = [], way = 'transmission' }: Strings = {}): Read => read(setup(
  `hologram: ${way}`, 'laser red {', '  wavelength: 632.8 nm', '  coherence length: 5 m', ...laser.map(l => `  ${l}`), '}', 'splitter S1', 'mirror M1', 'object whelk {', '  depolarization: 0%', '}',
  'plate P1 {', `  size: ${size}`, `  reference angle: ${angle}`, `  object angle: ${object}`, ...(from === undefined ? [] : [`  reference from: ${from}`]), ...plate.map(l => `  ${l}`), '}',
  'beam raw from red', '-> S1: 350 mm', 'beam reference from S1 through', '-> M1: 800 mm', '-> P1: 700 mm', 'beam object from S1 reflected', '-> whelk: 1200 mm', '-> P1: 300 mm',
));
const perMm = (r: Read): number => r.value('fringes') / 1000;

describe('fringes', () => {
  // Object 300 mm before the middle: from a corner (x, y) its light slants by x/r and y/r; the reference adds sin 45° to one of them. |k₁ − k₂| along the plate, over 632.8 nm.
  const corner = (along: number, across: number): number => Math.hypot(Math.SQRT1_2 + along / Math.hypot(along, across, 300), across / Math.hypot(along, across, 300)) / 632.8e-6;
  test('finest at a corner: the long side counts with a reference from the side, the short one with one from above or below', () => {
    expectNear(perMm(strings()), corner(50, 10), 0.05);
    expectNear(perMm(strings({ from: 'the side' })), corner(50, 10), 0.05);
    expectNear(perMm(strings({ from: 'above' })), corner(10, 50), 0.05);
    expectNear(perMm(strings({ from: 'below' })), corner(10, 50), 0.05);
  });
  test.each(['transmission', 'reflection'])('of a square plate are the same from everywhere: %s', way => {
    for (const object of ['0°', '15°', '-10°']) expectNear(perMm(strings({ way, object, size: '80 x 80 mm', from: 'above' })), perMm(strings({ way, object, size: '80 x 80 mm' })), 0.02);
  });
});

describe('polarization', () => {
  const share = (polarization: string, from?: string): number => strings({ laser: [`polarization: ${polarization}`], ...(from === undefined ? {} : { from }), plate: ['index: 1.62'] }).value('P1.object.polarization');
  // Upright light that comes from above at 45° lies 45° − in the layer asin(sin 45° / 1.62) − off the object's: cos² of that is 1 − 0.5 / 1.62².
  test('upright light of both beams is alike where all run level, and crosses where the reference comes from above', () => {
    expectNear(share('vertical'), 1, 1e-9);
    for (const from of ['above', 'below']) expectNear(share('vertical', from), 1 - 0.5 / 1.62 ** 2, 1e-9, from);
  });
  test('is on the page where the text says that the reference does not run level', () => {
    expect(strings().results.published.some(c => c.name.endsWith('.polarization'))).toBe(false);
    expect(strings({ from: 'above' }).results.published.some(c => c.name.endsWith('.polarization'))).toBe(true);
  });
  // tan 56.66° = 1.52, the index assumed of glass: there p has no ghost; upright light is p from above and s from the side, level light the reverse.
  test('ghosts of Brewster’s angle are those of the polarization in the plane of the light', () => {
    const ghosts = (polarization: string, from: string): number => strings({ angle: '56.659°', from, laser: [`polarization: ${polarization}`] }).value('ghost fringes');
    for (const [polarization, from, none] of [['vertical', 'above', true], ['vertical', 'the side', false], ['horizontal', 'above', false], ['horizontal', 'the side', true]] as const) {
      if (none) expectNear(ghosts(polarization, from), 0, 1e-5, `${polarization} ${from}`);
      else expect(ghosts(polarization, from), `${polarization} ${from}`).toBeGreaterThan(0.2);
    }
  });
});

test('the weakest corner is that of the plate turned by a quarter', () => {
  const corners = (size: string, from: string): number => {
    const r = read(setup('hologram: transmission', 'laser red {', '  wavelength: 632.8 nm', '  coherence length: 5 m', '  power: 5 mW', '}', 'splitter S1', 'spreader R1 {', '  focal length: 4.5 mm', '}', 'object whelk', 'plate P1 {', `  size: ${size}`, '  reference angle: 50°', `  reference from: ${from}`, '}',
      'beam raw from red', '-> S1: 350 mm', 'beam reference from S1 through', '-> R1: 300 mm', '-> P1: 1200 mm', 'beam object from S1 reflected', '-> whelk: 1200 mm', '-> P1: 300 mm'));
    return r.value('corner light');
  };
  expectNear(corners('120 x 40 mm', 'above'), corners('40 x 120 mm', 'the side'), 1e-9);
  expect(corners('120 x 40 mm', 'above')).not.toBeCloseTo(corners('120 x 40 mm', 'the side'), 3);
});

test('another word is an error at its place', () => expect(strings({ from: 'the cellar' }).snapshot.findings.filter(f => f.severity === 'error').map(f => [f.code, f.at.line])).toEqual([['wrong-value', 15]]));
