/** Where the second spot of a splitter goes: followed by hand along simple arms. At 45° 3 mm of crown put it 2.24 mm off; half a degree of wedge turns it by 1.9°. */
import { describe, expect, test } from 'vitest';
import { pageParts } from '../../server/checks/pages.ts';
import { secondSpot } from '../../server/checks/table/second-spot.ts';
import { look } from './library.ts';

interface Arm { readonly splitter?: readonly string[]; readonly before?: readonly string[]; readonly things?: readonly string[]; readonly legs?: readonly string[]; readonly laser?: readonly string[]; readonly whelk?: string }
/** The laser along +x, the whelk 640 mm along +y from the splitter; the reference goes through. */
function page({ splitter = ['thickness: 3 mm'], before = [], things = [], legs = [], laser = [], whelk = 'size: 40 x 60 x 35 mm' }: Arm): string {
  const lines = ['laser red at (0, 0) mm heading 0° {', '  wavelength: 632.8 nm', '  coherence length: 20 m', '  beam diameter: 0.8 mm', '  polarization: vertical', ...laser.map(l => `  ${l}`), '}', ...before.filter(l => !l.startsWith('->')),
    'splitter S1 at (300, 0) mm {', '  reflects: 50%', ...splitter.map(l => `  ${l}`), '}', ...things, 'mirror M1 at (900, 0) mm {', '  diameter: 150 mm', '}', 'object whelk at (300, 640) mm {', `  ${whelk}`, '}', 'plate P1 at (600, 500) mm facing whelk',
    'beam raw from red', ...before.filter(l => l.startsWith('->')).map(l => `  ${l}`), '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> P1', 'beam object from S1 reflected', ...legs.map(l => `  -> ${l}`), '  -> whelk', '  -> P1'];
  return `setup "Whelk shell" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`;
}
const told = (arm: Arm): string[] => look(page(arm)).findings.filter(f => f.code === 'second-spot').map(f => f.message);
const passes = (arm: Arm): boolean => told(arm).length === 1;

describe('a spot that runs parallel to its beam', () => {
  test('goes on to what is lit, and says how it stands apart', () => {
    const [message, ...more] = told({});
    expect(more).toEqual([]);
    // Rayleigh range π · 0.4² mm² / 632.8 nm = 794 mm: after 300 mm 0.8 · √(1 + (300/794)²) = 0.855 mm. 2 · 3 · 0.5 / √(1.515² − 0.5) = 2.24 mm; light: 0.25 R / (0.5 + 0.25 R), R 9.6 % for s: 4.6 %
    expect(message).toContain('2.2 mm off and parallel to it, with 5 % of the light that is reflected, if that face is bare');
    expect(message).toContain('goes on to whelk');
    expect(message).toContain('Stop it with a card or an iris behind S1, where the beam is 0.9 mm wide');
  });
  test('overlaps a beam that is spread before the splitter', () => {
    const [message] = told({ before: ['spreader R1 at (200, 0) mm {', '  focal length: -10 mm', '}', '-> R1'] });
    // 0.8 mm · (100 + 10) / 10 = 8.8 mm and a little
    expect(message).toMatch(/the beam is 9(\.\d)? mm wide, and the spots overlap/);
    expect(message).toContain('fringes across the beam');
  });
  test('is not told of where the text does not tell it', () => {
    expect(told({ splitter: [] })).toEqual([]);
    expect(told({ splitter: ['glass: crown', 'wedge: 0.5°'] })).toEqual([]);
    expect(look(page({}).replaceAll(/ at \(.*?\) mm( heading 0°| facing whelk)?/g, '')).findings.filter(f => f.code === 'second-spot')).toEqual([]);
  });
  test('is stopped by an opening that lets less than its distance through beside the middle', () => {
    const iris = (diameter: string): Arm => ({ things: ['aperture iris at (300, 100) mm {', `  diameter: ${diameter}`, '}'], legs: ['iris'] });
    expect([passes(iris('4 mm')), passes(iris('5 mm'))]).toEqual([false, true]);
    const slit = (...facts: string[]): Arm => ({ things: ['slit gap at (300, 100) mm {', ...facts.map(f => `  ${f}`), '}'], legs: ['gap'] });
    expect([passes(slit('width: 4 mm', 'direction: vertical')), passes(slit('width: 5 mm', 'direction: vertical'))]).toEqual([false, true]);
    // Level, it runs the way in which the spot lies: only its length counts.
    expect([passes(slit('width: 4 mm', 'direction: horizontal')), passes(slit('width: 4 mm', 'length: 4 mm', 'direction: horizontal'))]).toEqual([true, false]);
  });
  test('misses a face that is smaller than its distance', () => {
    // 2.24 mm off, with 0.4 mm of beam: it reaches to 1.8 mm
    expect([passes({ whelk: 'size: 3 x 60 x 5 mm' }), passes({ whelk: 'size: 4 x 60 x 5 mm' })]).toEqual([false, true]);
  });
  test('passes a pinhole, and behind its lens goes past what is lit', () => {
    const filter = (focal: string, at: number): Arm => ({ things: [`spreader R1 at (300, ${at}) mm {`, `  focal length: ${focal}`, '  pinhole: 20 µm', '}'], legs: ['R1'] });
    // f 4.5 mm, 540 mm behind it: 2.24 · (540/4.5 − 1) = 266 mm beside the whelk, which the light, 0.4 · 119 = 48 mm about its middle, does not bridge
    expect(passes(filter('4.5 mm', 100))).toBe(false);
    // f 16.5 mm, 40 mm behind it: 2.24 · (40/16.5 − 1) = 3.2 mm
    const [message] = told(filter('16.5 mm', 600));
    expect(message).toContain('through the pinhole of R1 as well');
    expect(told({ things: ['spreader R1 at (300, 600) mm {', '  focal length: -10 mm', '  diameter: 4 mm', '}'], legs: ['R1'] })).toEqual([]);
  });
  test('is not told of a lens without a focal length', () => {
    expect(told({ things: ['lens L1 at (300, 100) mm'], legs: ['L1'] })).toEqual([]);
  });
});

describe('a wedge', () => {
  test('turns it off what is lit, or not far enough', () => {
    // 0.5°: 1.9° over 640 mm is 21 mm, and 2 mm either way: the whelk reaches to 20 mm and the light 0.7 mm farther. 0.1°: 4 mm.
    expect([passes({ splitter: ['thickness: 3 mm', 'wedge: 0.5°'], whelk: 'size: 30 x 60 x 35 mm' }), passes({ splitter: ['thickness: 3 mm', 'wedge: 0.1°'] })]).toEqual([false, true]);
    const [message] = told({ splitter: ['thickness: 3 mm', 'wedge: 0.1°'] });
    // 0.2° · 1.34 / 0.7071 = 0.379°
    expect(message).toContain('0.379° off it');
    expect(message).toContain('a steeper wedge (0.5° turns the spot off by 1.9°)');
    expect(told({ splitter: ['thickness: 3 mm', 'wedge: 0°'] })[0]).toContain('parallel to it');
  });
  test('puts it beside a pinhole from a small angle on', () => {
    // At the focus: angle · f. 0.05°: 0.19° · 16.5 mm = 55 µm beside a pinhole of 20 µm; 0.005°: 5.5 µm, within it.
    const filter = (wedge: string): Arm => ({ splitter: ['thickness: 3 mm', `wedge: ${wedge}`], things: ['spreader R1 at (300, 600) mm {', '  focal length: 16.5 mm', '  pinhole: 20 µm', '}'], legs: ['R1'] });
    expect([passes(filter('0.05°')), passes(filter('0.005°'))]).toEqual([false, true]);
  });
});

test('too little light to be seen is not told', () => {
  // 98 %: 0.0004 · 0.096 / 0.98 = 0.004 %, a contrast of 2 √0.00004 = 1.3 %; 90 %: 0.107 %, 6.5 %
  const reflecting = (share: string): number => look(page({}).replace('reflects: 50%', `reflects: ${share}`)).findings.filter(f => f.code === 'second-spot').length;
  expect([reflecting('98%'), reflecting('90%')]).toEqual([0, 1]);
});
test('one splitter is one finding, however many arms it feeds', () => {
  const two = page({}).replace('  beam reference', '  beam fill from S1 reflected\n    -> whelk\n    -> P1\n  beam reference');
  expect(look(two).findings.filter(f => f.code === 'second-spot')).toHaveLength(1);
});
test('its page shows a cure', () => {
  const codes = pageParts(secondSpot.page).flatMap(p => (p.kind === 'setup' ? [look(p.text).findings.map(f => f.code)] : []));
  expect(codes).toHaveLength(1);
  expect(codes[0]).not.toContain('second-spot');
});
