/** Cautions for eyes: when they are told, and what they never say. Limits from memory of IEC 60825-1:2014: 0.98 mW through a pupil of 7 mm in a quarter of a second. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { CHECKS } from '../../server/checks/registry.ts';
import { EYE_CHECKS } from '../../server/checks/eyes/index.ts';
import type { Finding } from '../../server/checks/check.ts';

const found = (text: string, code: string): Finding[] => analyse('file:///saltmarsh/setup.plate', text).findings.filter(f => f.code === code);
const setup = (laser: readonly string[], more = '', name = 'Cockle'): string => `setup "${name}" {\n  laser red {\n${laser.map(l => `    ${l}\n`).join('')}  }\n${more}}\n`;
const caution = (...laser: string[]): Finding[] => found(setup(laser), 'laser-caution');

describe('the bare beam of a laser', () => {
  it.each([['12 mW', 12.2], ['1 mW', 1.02], ['35 mW', 35.7]])('of %s is %s times the limit', (power, times) => {
    // 25.456 W/m² · π/4 · (7 mm)² = 0.97966 mW
    expect(caution('wavelength: 632.8 nm', `power: ${power}`)[0]!.data['times']).toBeCloseTo(times, 1);
  });
  it('below the limit is passed over in silence', () => { expect(caution('wavelength: 632.8 nm', 'power: 0.9 mW')).toEqual([]); });
  it.each(['3R', '3B', '4'])('of class %s is told by its label alone', label => { expect(caution(`class: ${label}`)[0]!.message).toContain(`By its label red is of class ${label}`); });
  it.each(['1', '1M', '2', '2M'])('of class %s is not', label => { expect(caution(`class: ${label}`)).toEqual([]); });
  it('that nobody sees has no limit here, which is said', () => { expect(caution('wavelength: 785 nm', 'power: 0.5 mW')[0]!.message).toContain('785 nm, of which the limits that are kept here do not tell'); });
  // IEC 60825-1:2014 from memory: C W/m² from 100 s on, C = 1 to 450 nm and 10^(0.02 (λ − 450 nm)) above, over π/4 · (7 mm)² = 38.4845 mm²: 38.48 µW at 405 nm, 55.37 µW at 457.9 nm, 221.5 µW at 488 nm.
  it.each([['405 nm', 38.4845e-6, '0.038 mW'], ['457.9 nm', 55.3715e-6, '0.055 mW'], ['488 nm', 221.455e-6, '0.22 mW']])('of %s has a limit for a long look as well', (wavelength, limit, words) => {
    const [f] = caution(`wavelength: ${wavelength}`, 'power: 20 mW');
    expect(f!.data['stareLimit']! as number / limit).toBeCloseTo(1, 4);
    expect(f!.data['stare']! as number * limit / 20e-3).toBeCloseTo(1, 4);
    expect(f!.message).toMatch(new RegExp(`long look into blue light \\((?:${words}|${Math.round(limit * 1e6)} µW)`));
    expect(f!.data['times']).toBeCloseTo(20.4, 1);
  });
  it('of blue light below the limit for a glance is told by that for a long look', () => {
    const [f] = caution('wavelength: 441.6 nm', 'power: 0.5 mW');
    expect(f!.data['times']).toBeUndefined();
    expect(f!.message).toMatch(/^At 0\.5 mW, the bare beam of red is 13 times the published limit for a long look/);
    expect(caution('wavelength: 441.6 nm', 'power: 0.03 mW')).toEqual([]);
  });
  it.each(['500 nm', '532.1 nm', '632.8 nm'])('of %s has none for a long look', wavelength => { expect(caution(`wavelength: ${wavelength}`, 'power: 20 mW')[0]!.message).not.toContain('long look'); });
  it('without a power or class is not guessed', () => { expect(caution('wavelength: 632.8 nm')).toEqual([]); });
  it('is told once a file', () => {
    const two = setup(['wavelength: 632.8 nm', 'power: 12 mW'], '', 'Cockle') + setup(['wavelength: 532.1 nm', 'power: 100 mW'], '', 'Whelk');
    expect(found(two, 'laser-caution').map(f => f.setup)).toEqual(['Cockle']);
  });
  it('may be accepted, and is not told for the next setup then', () => {
    const [first, ...more] = found(setup(['class: 4'], '  accept laser-caution "room rules on the door"\n', 'Cockle') + setup(['class: 4'], '', 'Whelk'), 'laser-caution');
    expect(first!.accepted).toBe('room rules on the door');
    expect(more).toEqual([]);
  });
});

describe('a beam that leaves the plane of the table', () => {
  const rising = (z: string, ...laser: string[]): Finding[] => found(`setup "Cockle" {\n  laser red at (0, 0, 150) mm {\n${laser.map(l => `    ${l}\n`).join('')}  }\n  beam stop B1 at (1000, 0, ${z}) mm\n  beam raw from red\n    -> B1\n}\n`, 'beam-rises');
  it('is told with its slant', () => {
    // arctan(100/1000)
    expect(rising('250')[0]!.data).toMatchObject({ beam: 'raw', up: true });
    expect(rising('250')[0]!.data['angle']).toBeCloseTo(Math.atan(0.1), 9);
    expect(rising('50')[0]!.data['up']).toBe(false);
  });
  it('by less than 2° stands unevenly only', () => { expect(rising('180')).toEqual([]); });
  it('of a laser below the limit is passed over', () => { expect(rising('250', 'wavelength: 632.8 nm', 'power: 0.5 mW')).toEqual([]); });
  it('is no beam behind the object', () => {
    expect(found('setup "Cockle" {\n  laser red at (0, 0, 150) mm\n  object cockle at (500, 0, 150) mm\n  plate P1 at (500, 100, 300) mm\n  beam raw from red\n    -> cockle\n    -> P1\n}\n', 'beam-rises')).toEqual([]);
  });
});

it('a replay laser at the height of a viewer’s eyes is told', () => {
  const at = (lamp: string, viewer = ''): Finding[] => found(setup([], `  lamp replay {\n    laser: red\n    height: ${lamp}\n  }\n${viewer}`), 'light-at-eye-height');
  expect(at('1.2 m')).toHaveLength(1);
  expect(at('2.2 m')).toEqual([]);
  expect(at('1.55 m', '  viewer visitor {\n    height: 1.6 m\n  }\n')[0]!.data).toMatchObject({ viewer: 'visitor' });
});

it('no caution says that anything is safe, and each says who decides', () => {
  for (const c of CHECKS) expect(c.page + c.title).not.toMatch(/\b(?:is|are|be|eye-?)\s*safe\b/);
  for (const c of EYE_CHECKS) {
    expect(c.page).toMatch(/responsible for laser safety/);
    expect(c.page).toContain('estimate, not a hazard assessment');
    expect(found(c.example, c.code)[0]!.message).toContain('the person responsible for laser safety decide');
  }
});
