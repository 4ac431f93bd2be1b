/** A safelight that the plate sees, and exposures and readings that are off by a unit. */
import { describe, expect, it } from 'vitest';
import { whyOf } from '../../server/features/why.ts';
import { show } from '../../server/model/show.ts';
import { parseUnit, dimName, TIME } from '../../server/model/units.ts';
import { look } from './library.ts';

interface Facts { readonly plate?: string; readonly room?: string; readonly laser?: string; readonly more?: string }
const page = ({ plate = '', room = '', laser = 'wavelength: 632.8 nm', more = '' }: Facts): string => `setup "Whelk" {
  laser red {
    coherence length: 5 m
    ${laser}
  }
  room {
    ${room}
  }
  splitter S1
  object whelk
  plate P1 {
    ${plate}
  }
  meter needle {
    head: 8 mm
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  ${more}
}
`;
const found = (facts: Facts, code: string): string[] => look(page(facts)).findings.filter(f => f.code === code).map(f => `${f.at.line + 1} ${f.severity} ${f.subject}: ${f.message}`);

describe('a safelight that the plate sees', () => {
  it.each<[string, string, string]>([['red', 'red', ''], ['green', 'red and green', ''], ['red', 'all', ''], ['amber', 'red', ''], ['blue', 'red', 'material: fine-grain silver halide']])('%s, plate sensitive to %s', (colour, to, material) => {
    expect(found({ room: `safelight: ${colour}`, plate: `sensitive to: ${to}\n    ${material}` }, 'safelight-fogs')).toEqual([`7 warning P1: The safelight is ${colour}, and P1 is sensitive to ${to}: it will be fogged while it lies open. Take a safelight of a colour that the plate does not see, or work in the dark.`]);
  });
  it('is told by the laser that the plate is there to record', () => {
    expect(found({ room: 'safelight: red' }, 'safelight-fogs')[0]).toContain('P1 is there to record red light');
  });
  // Blue, green and red as they are named on any spectrum (common practice): between green and red lie yellow and orange, beyond 400 and 700 nm nothing is seen.
  it.each([[399, []], [401, ['blue']], [499, ['blue']], [501, ['green']], [569, ['green']], [571, []], [609, []], [611, ['red']], [699, ['red']], [701, []]] as const)('a laser of %s nm is %s', (nm, is) => {
    const fogged = (['blue', 'green', 'red'] as const).filter(colour => found({ room: `safelight: ${colour}`, laser: `wavelength: ${nm} nm` }, 'safelight-fogs').length > 0);
    expect(fogged).toEqual(is);
  });
  it.each<[string, string]>([['green', 'sensitive to: red'], ['red', 'sensitive to: green and blue'], ['none', 'sensitive to: all'], ['amber', 'sensitive to: green'], ['green', '']])('%s beside “%s” is none', (colour, plate) => {
    expect(found({ room: `safelight: ${colour}`, plate }, 'safelight-fogs')).toEqual([]);
  });
  it('speaks for fog, and is computed', () => {
    const s = look(page({ room: 'safelight: red', plate: 'sensitive to: red' }));
    expect(whyOf(s, s.results[0]!, 'fogged').suspects[0]).toMatchObject({ name: 'fogged by the room', codes: ['safelight-fogs'] });
    expect(s.findings.filter(f => f.code === 'not-computed-yet').map(f => f.message).join()).not.toMatch(/safelight|sensitive to/);
  });
});

// Ranges of the classes by the handbooks (shared values for materials, f.1): 1.5 to 100 µJ/cm², 0.3 to 5 mJ/cm², and 1 µJ/cm² to 500 mJ/cm² over all.
describe('an exposure far from that of any such plate', () => {
  it.each<[string, string, string]>([
    ['40 mJ/cm²', 'material: fine-grain silver halide', '400 times more than fine-grain silver halide does (1.5 µJ/cm² to 100 µJ/cm²)'],
    ['1.5 µJ/cm²', 'material: ultra-fine silver halide', '200 times less than ultra-fine silver halide does (300 µJ/cm² to 5 mJ/cm²)'],
    ['8 J/cm²', '', '16 times more than any plate does'],
  ])('%s, %s', (value, material, words) => {
    const all = found({ plate: `sensitivity: ${value}\n    ${material}` }, 'sensitivity-unlikely');
    expect(all).toHaveLength(1);
    expect(all[0]).toMatch(/^12 note P1: /);
    expect(all[0]).toContain(words);
  });
  it.each<[string, string]>([['40 µJ/cm²', 'material: fine-grain silver halide'], ['900 µJ/cm²', 'material: fine-grain silver halide'], ['0.6 mJ/cm²', 'material: photopolymer'], ['40 mJ/cm²', ''], ['?', '']])('%s, %s is none', (value, material) => {
    expect(found({ plate: `sensitivity: ${value}\n    ${material}` }, 'sensitivity-unlikely')).toEqual([]);
  });
});

describe('a reading of light far from what the laser gives', () => {
  const twelve = 'wavelength: 632.8 nm\n    power: 12 mW';
  it('more than the whole laser on each cm²', () => {
    const all = found({ laser: twelve, more: 'measured reference at P1: 16 mW/cm² by needle' }, 'light-unlikely');
    expect(all).toHaveLength(1);
    expect(all[0]).toContain('each cm² of P1 gets 16 mW/cm² of “reference”, more than the 12 mW that red has in all');
  });
  it.each<[string, Facts]>([['less than it', { laser: twelve, more: 'measured reference at P1: 1.6 mW/cm² by needle' }], ['a laser without a power', { more: 'measured reference at P1: 16 mW/cm² by needle' }], ['bare numbers', { laser: twelve, more: 'measured reference at P1: 5000 by needle' }]])('%s is none', (_, facts) => {
    expect(found(facts, 'light-unlikely')).toEqual([]);
  });
  // The plan: 12 mW · 1/2, w = 1500 mm · 0.4 mm / 4.5 mm or so; a thousand times off is told, a factor of three is not.
  const spread = { laser: `${twelve}\n    beam diameter: 0.8 mm` };
  const lens = (reading: string): string[] => look(page({ ...spread, more: `measured reference at P1: ${reading} by needle` }).replace('  splitter S1\n', '  splitter S1 {\n    reflects: 50%\n  }\n  spreader R1 {\n    focal length: 4.5 mm\n  }\n').replace('    -> P1: 1500 mm\n', '    -> R1: 500 mm\n    -> P1: 1000 mm\n')).findings.filter(f => f.code === 'light-unlikely').map(f => f.message);
  // E = 2P/(πw²) cos 45° with w ≈ 1 m · 0.5 mm / 4.5 mm = 0.11 m and P ≈ 5 mW: some 18 µW/cm².
  it('a thousandfold of the plan', () => { expect(lens('18 nW/cm²')[0]).toMatch(/times less than the plan/); expect(lens('5 mW/cm²')[0]).toMatch(/times more than the plan/); });
  it('near the plan is none', () => { expect(lens('18 µW/cm²')).toEqual([]); expect(lens('50 µW/cm²')).toEqual([]); });
});

it('a lamp’s laser, height and distance are no hint: a caution looks at them, and what is to be recorded and what is seen follow from them', () => {
  const hints = look(page({ more: 'lamp replay {\n    laser: red\n    height: 2.2 m\n    distance: 1.5 m\n    size: 3 mm\n  }\n  room hall {\n    humidity: 50%\n  }' })).findings.filter(f => f.code === 'not-computed-yet').map(f => f.message);
  expect(hints.join()).not.toMatch(/“(?:height|laser|distance|size)”/);
  expect(hints.join()).toContain('humidity');
});

describe('words', () => {
  it.each([[80 * 60, '80 min'], [95 * 60, '1.5833 h'], [47 * 3600, '47 h'], [72 * 3600, '3 d']])('%s s is %s', (s, words) => { expect(show(s, TIME)).toBe(words); });
  it('a mass is called one', () => { expect(dimName(parseUnit('kg')!.dim)).toBe('a mass'); });
});
