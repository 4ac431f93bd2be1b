/** Shadows on the far corners of what is lit, by similar triangles: light from a point F to a spot of the plate passes a thing between at (distance of the thing from F)/(distance of the plate from F) of the spot's height. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import type { Finding } from '../../server/checks/check.ts';
import { expectNear, setup } from './read.ts';

const blocked = (text: string): Finding[] => analyse('file:///saltmarsh/setup.plate', text).findings.filter(f => f.code === 'leg-blocked');
const shadow = (text: string): Finding => { const found = blocked(text); expect(found.map(f => f.data['shaded'] !== undefined)).toEqual([true]); return found[0]!; };
const block = (line: string, ...facts: string[]): string => [`${line} {`, ...facts.map(f => `  ${f}`), '}'].join('\n  ');
const LASER = ['  wavelength: 632.8 nm', '  coherence length: 20 m', '  beam diameter: 0.8 mm', '}'];

type Place = readonly [x: number, y: number, z?: number];
/** The table turned and mirrored. */
interface Turn { readonly by: number; readonly mirrored: boolean }
const STRAIGHT: Turn = { by: 0, mirrored: false };
const at = ([x, y, z = 120]: Place, { by, mirrored }: Turn, give = ''): string => {
  const [a, s] = [(by * Math.PI) / 180, mirrored ? -1 : 1];
  const [u, v] = [x * Math.cos(a) - s * y * Math.sin(a), x * Math.sin(a) + s * y * Math.cos(a)];
  return give === '' ? `at (${u.toFixed(9)}, ${v.toFixed(9)}, ${z}) mm` : `at (${u} mm, ${v} mm ± ${give}, ${z} mm)`;
};
const heading = (degrees: number, { by, mirrored }: Turn): string => `heading ${(mirrored ? -degrees : degrees) + by}°`;

interface Page { readonly plate?: string; readonly card?: string; readonly place: Place; readonly turn?: Turn; readonly give?: string; readonly facing?: string }
/**
 * Light spreads from F, 2 mm behind R1, and falls squarely on a plate 1000 mm from R1: w is 0.4 · 998/2 = 200 mm there, wider than all plates here. The card stands 500 mm from R1: what it hides is
 * 998/498 = 2.004 times as large on the plate.
 */
const page = ({ plate = '300 x 100', card = '13 x 300', place, turn = STRAIGHT, give, facing }: Page): string => setup(
  'beam height: 120 mm', `laser red ${at([-300, 0], turn)} ${heading(0, turn)} {`, ...LASER, block(`spreader R1 ${at([0, 0], turn)}`, 'focal length: 2 mm'), block(`plate P1 ${at([1000, 0], turn)} ${facing ?? heading(180, turn)}`, `size: ${plate} mm`),
  block(`black card BC1 ${at(place, turn, give)} ${heading(180, turn)}`, `size: ${card} mm`), 'beam reference from red', '  -> R1', '  -> P1',
);
/** Half of one field of the 21 across. */
const COLUMN = 1 / 42;

describe('an oblong plate', () => {
  test('a narrow card far from the axis shades one end', () => {
    // 58.5 to 71.5 mm beside the axis, where the circle of half the narrower side is 25 mm wide: 117.2 to 143.3 mm on the plate, over all of its height: 26 of 300 mm. It is clear of the plate’s edge at 150 mm where its own is 150 · 498/998 = 74.9 mm off the axis, 16.4 mm farther; 0.2 mm more for its depth.
    const found = shadow(page({ place: [500, 65] }));
    expect(found).toMatchObject({ severity: 'warning', subject: 'reference.2 BC1', data: { axis: false, sure: true, undecided: false, part: 'the left end' } });
    expectNear(Number(found.data['shaded']), 26 / 300, COLUMN);
    expectNear(Number(found.data['along']), 0.5, 1e-6);
    // Two of its 21 columns are 10 %.
    expect(found.message).toMatch(/^Black card BC1 stands in a part of “reference” from R1 → P1, 500 mm behind R1, and shades the left end of P1, seen from where the light comes: about 10 % of its lit face lies in shadow\. Put BC1 17 mm farther from the light, or lead the beam past it\.$/);
  });
  test('as much farther as the finding says it casts none', () => {
    const by = Number(shadow(page({ place: [500, 65] })).data['clear']) * 1000;
    expect(by).toBeGreaterThan(5);
    expectNear(by, 81.35 + 0.2 - 65, 0.05);
    expect(blocked(page({ place: [500, 65 + by] }))).toEqual([]);
  });
  test('the mirrored table gives the mirrored words', () => {
    expect(shadow(page({ place: [500, -65] })).data['part']).toBe('the right end');
    expect(shadow(page({ place: [500, 65], turn: { by: 0, mirrored: true } })).data['part']).toBe('the right end');
  });
  test('a plate that stands on its end has an upper end', () => {
    // A card that hangs down to 58.5 mm above the axis, and one that stands up to 58.5 mm below it.
    expect(shadow(page({ plate: '100 x 300', card: '300 x 300', place: [500, 0, 328.5] })).data['part']).toBe('the upper end');
    expect(shadow(page({ plate: '100 x 300', card: '300 x 13', place: [500, 0, 55] })).data['part']).toBe('the lower end');
  });
  // 85.5 mm is 171 mm on the plate, which ends at 150 mm.
  test('a card beside the light for it casts no shadow', () => { expect(blocked(page({ place: [500, 92] }))).toEqual([]); });
  test('nothing is told of a plate that nobody knows to face anything', () => { expect(blocked(page({ place: [500, 65], facing: '' }))).toEqual([]); });
  test('its back has the light from the other side, and left is left of who comes from there', () => { expect(shadow(page({ place: [500, 65], facing: 'heading 0°' })).data['part']).toBe('the left end'); });
});

describe('corners', () => {
  // 50 to 90 mm beside the axis and 10 to 50 mm above it: 100.2 to 180 mm and 20.0 to 100 mm on the plate, of which 49.8 · 30.0 mm are there.
  test.each([['upper left', 70, 30], ['upper right', -70, 30], ['lower left', 70, -30], ['lower right', -70, -30]])('%s', (corner, y, z) => {
    const found = shadow(page({ card: '40 x 40', place: [500, y, 120 + z] }));
    expect(found).toMatchObject({ severity: 'note', data: { part: `the ${corner} corner`, sure: true } });
    expectNear(Number(found.data['shaded']), (49.8 * 30) / (300 * 100), 0.01);
  });
  test('of a plate of 127 × 102 mm, which the circle of its narrower side leaves out', () => {
    // 17 to 57 mm beside the axis and 14 to 54 mm above it: 22 mm off the axis, where the circle is 25.4 mm wide there, which is less than a tenth of that; from 34.1 to 63.5 and 28.1 to 51 mm on the plate.
    const found = shadow(page({ plate: '127 x 102', card: '40 x 40', place: [500, 38, 155] }));
    expect(found.data['part']).toBe('the upper left corner');
    expectNear(Number(found.data['shaded']), ((63.5 - 36.1) * (51 - 30.1)) / (127 * 102), 0.015);
  });
  test('however the table lies', () => {
    fc.assert(fc.property(fc.integer({ min: -180, max: 180 }), fc.boolean(), (by, mirrored) => {
      const { part, shaded } = shadow(page({ card: '40 x 40', place: [500, 70, 150], turn: { by, mirrored } })).data;
      expect([part, Number(shaded).toFixed(6)]).toEqual([`the upper ${mirrored ? 'right' : 'left'} corner`, Number(shadow(page({ card: '40 x 40', place: [500, 70, 150] })).data['shaded']).toFixed(6)]);
    }), { numRuns: 30 });
  });
});

test('what the give of its place leaves open is undecided', () => {
  // The plate ends at 150 mm, and the light for that passes 150 · 498/998 = 74.85 mm off the axis at the card, whose edge is 6.5 mm from its middle: it is free from 81.35 mm on.
  // ± 4 mm is anywhere within: a standard uncertainty of 4/√3 mm (GUM 4.3.7), and twice that is half of the 95 % band, 4.6 mm.
  const one = (y: number): Finding | undefined => blocked(page({ place: [500, y], give: '4 mm' }))[0];
  expect(one(65)).toMatchObject({ severity: 'warning', data: { undecided: false } });
  expect(one(78)).toMatchObject({ severity: 'note', data: { undecided: true, part: 'the left end' } });
  expectNear(Number(one(78)!.data['gap']) * 1000, 78 - 81.35, 0.02);
  // The card is 3 mm deep (common practice): behind its face the light is 1.5 · 150/998 = 0.2 mm farther off. 3.35 + 0.2 + 4.6 mm.
  expect(one(78)!.message).toContain('is undecided, as it reaches 3 ± 5 mm into the light. Measure where they stand, or put BC1 8.2 mm farther from the light.');
  expectNear(Number(one(81.5)!.data['gap']) * 1000, 81.5 - 81.35, 0.02);
  expect(one(81.5)!.message).toContain('passes the light by 0 ± 5 mm');
  expect(one(86.1)).toBeUndefined();
});

describe('where the light comes from', () => {
  const card = (place: Place, width: number, way = 180): string => block(`black card BC1 ${at(place, STRAIGHT)} heading ${way}°`, `size: ${width} x 300 mm`);
  const plate = (x: number): string => block(`plate P1 ${at([x, 0], STRAIGHT)} heading 180°`, 'size: 300 x 100 mm');
  test('the middle of the object, of its own light', () => {
    // Half-way to the plate, 53.5 to 66.5 mm beside the axis: 107 to 133 mm on it. The object is 40 mm wide, and the cone to half of the narrower side of the plate 35 mm.
    const found = shadow(setup('beam height: 120 mm', `laser red ${at([0, -500], STRAIGHT)} heading 90° {`, ...LASER, block(`object whelk ${at([0, 0], STRAIGHT)}`, 'size: 40 x 60 x 40 mm'), plate(600), card([300, 60], 13), 'beam object from red', '  -> whelk', '  -> P1'));
    expect(found).toMatchObject({ subject: 'object.2 BC1', data: { part: 'the left end' } });
    expectNear(Number(found.data['shaded']), 26 / 300, COLUMN);
  });
  test('side by side behind a collimator: what it hides is as large as the card', () => {
    // From F at 2 mm it is 498 mm to the collimator. 121.5 to 148.5 mm beside the axis; were it a cone from F it would be 152 to 186 mm on the plate, and none of it.
    const found = shadow(setup('beam height: 120 mm', `laser red ${at([-300, 0], STRAIGHT)} heading 0° {`, '  wavelength: 632.8 nm', '  coherence length: 20 m', '  beam diameter: 1.6 mm', '}', block(`spreader R1 ${at([0, 0], STRAIGHT)}`, 'focal length: 2 mm'),
      block(`collimator C1 ${at([500, 0], STRAIGHT)}`, 'focal length: 498 mm', 'diameter: 400 mm'), plate(1000), card([800, 135], 27), 'beam reference from red', '  -> R1', '  -> C1', '  -> P1'));
    expectNear(Number(found.data['shaded']), 27 / 300, COLUMN);
  });
  test('the focus that a mirror shows behind itself', () => {
    // F lies 498 mm before M1, the plate 500 mm behind it, the card half-way: 748/998 of the way. 84 to 106 mm are 112.1 to 141.4 mm on the plate; from M1 itself it would be 163 mm and more.
    const found = shadow(setup('beam height: 120 mm', `laser red ${at([0, -800], STRAIGHT)} heading 90° {`, ...LASER, block(`spreader R1 ${at([0, -500], STRAIGHT)}`, 'focal length: 2 mm'), block(`mirror M1 ${at([0, 0], STRAIGHT)}`, 'diameter: 400 mm'), plate(500), card([250, 95], 22), 'beam reference from red', '  -> R1', '  -> M1', '  -> P1'));
    expect(found).toMatchObject({ subject: 'reference.3 BC1', data: { part: 'the left end' } });
    expectNear(Number(found.data['shaded']), 29.3 / 300, COLUMN);
  });
  test('onto an object: its outline as the light sees it', () => {
    // Light along x on a box that shows its depth, 200 mm, and 60 mm of height: 38.5 to 51.5 mm beside the axis are 77.2 mm to the end at 100 mm.
    const lit = (...shape: string[]): Finding => shadow(setup('beam height: 120 mm', `laser red ${at([-300, 0], STRAIGHT)} heading 0° {`, ...LASER, block(`spreader R1 ${at([0, 0], STRAIGHT)}`, 'focal length: 2 mm'), block(`object whelk ${at([1000, 0], STRAIGHT)}`, 'size: 60 x 60 x 200 mm', ...shape),
      block(`plate P1 ${at([1000, 500], STRAIGHT)} facing whelk`, 'size: 63 x 63 mm'), card([500, 45], 13), 'beam object from red', '  -> R1', '  -> whelk', '  -> P1'));
    const box = lit('shape: box');
    expect(box).toMatchObject({ subject: 'object.2 BC1', data: { part: 'the left end', lit: 'whelk' } });
    expectNear(Number(box.data['shaded']), 22.8 / 200, COLUMN);
    // Of an ellipse the part beyond 0.772 of its half width is (acos q − q √(1 − q²))/π with q = 0.772: 6.3 %.
    const rounded = lit();
    expect(rounded.data['part']).toBe('the left side');
    expectNear(Number(rounded.data['shaded']), (Math.acos(0.772) - 0.772 * Math.sqrt(1 - 0.772 ** 2)) / Math.PI, 0.03);
  });
});

test('a rounded object has no corners to cast a shadow with, a box has', () => {
  // A jar of 80 × 80 × 80 mm, turned to a plate far off its side, with its edge at (30, 30) mm off the axis and its box from there outward: a ball has its nearest part to the axis at √2 · 70 − 40 = 59 mm, 118 mm on the plate.
  const text = (shape: string): string => setup('beam height: 120 mm', `laser red ${at([-300, 0], STRAIGHT)} heading 0° {`, ...LASER, block(`spreader R1 ${at([0, 0], STRAIGHT)}`, 'focal length: 2 mm'), block(`plate P1 ${at([1000, 0], STRAIGHT)} heading 180°`, 'size: 150 x 150 mm'),
    block(`object jar ${at([500, 80, 200], STRAIGHT)}`, 'size: 80 x 80 x 80 mm', shape), block(`plate P2 ${at([500, 600, 200], STRAIGHT)} facing jar`, 'size: 63 x 63 mm'), `mirror M9 ${at([-300, 600, 200], STRAIGHT)}`, 'splitter S1 on red -> R1 by 100 mm', 'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> R1', '  -> P1', 'beam object from S1 reflected', '  -> M9', '  -> jar', '  -> P2');
  const shaded = (shape: string): unknown => blocked(text(shape)).filter(f => f.subject === 'reference.2 jar' && f.data['sure'] === true).map(f => f.data['part']);
  // The box begins 40 mm to the left of the axis and 40 mm above it: 80 mm on the plate, which ends at 75 mm; 12 mm nearer both are 56 mm.
  expect(shaded('shape: box')).toEqual([]);
  const nearer = (shape: string): unknown => blocked(text(shape).replace('500.000000000, 80.000000000, 200', '500.000000000, 68.000000000, 188')).filter(f => f.subject === 'reference.2 jar' && f.data['sure'] === true).map(f => f.data['part']);
  expect(nearer('shape: box')).toEqual(['the upper left corner']);
  expect(nearer('shape: sphere')).toEqual([]);
});

test('an object that shades its own plate stands in the reference, which is told once', () => {
  const text = (y: number, z: number): string => setup('beam height: 120 mm', `laser red ${at([-300, 0], STRAIGHT)} heading 0° {`, ...LASER, block(`spreader R1 ${at([0, 0], STRAIGHT)}`, 'focal length: 2 mm'), block(`plate P1 ${at([1000, 0], STRAIGHT)} heading 180°`, 'size: 300 x 100 mm'),
    block(`object jar ${at([500, y, z], STRAIGHT)}`, 'size: 80 x 80 x 80 mm', 'shape: box'), `mirror M9 ${at([-200, 400, z], STRAIGHT)}`, 'splitter S1 on red -> R1 by 100 mm', 'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> R1', '  -> P1', 'beam object from S1 reflected', '  -> M9', '  -> jar', '  -> P1');
  const told = (y: number, z: number): string[] => analyse('file:///saltmarsh/setup.plate', text(y, z)).findings.filter(f => ['leg-blocked', 'reference-on-object'].includes(f.code)).map(f => `${f.code} ${f.subject}`);
  // Turned to the plate by 11°, the box reaches from about 53 mm off the axis: 106 of 150 mm on the plate. 60 mm farther it is 226 mm, in light that only spills.
  expect(told(100, 120)).toEqual(['leg-blocked reference.2 jar']);
  expect(told(160, 120)).toEqual(['reference-on-object jar']);
});

test('the card that keeps spilled light off an object stands half way to it, on its side of what the plate needs', () => {
  // The light spreads from F, 2 mm behind R1 and 998 mm before the plate. A thing of 2 mm stands 96 mm beside the axis and 40 mm above it: √(96² + 40²) = 104 mm. Towards that side the plate reaches (150 · 96 + 50 · 40)/104 = 157.7 mm.
  const text = setup('beam height: 120 mm', `laser red ${at([-300, 0], STRAIGHT)} heading 0° {`, ...LASER, block(`spreader R1 ${at([0, 0], STRAIGHT)}`, 'focal length: 2 mm'), block(`plate P1 ${at([1000, 0], STRAIGHT)} heading 180°`, 'size: 300 x 100 mm'),
    block(`object jar ${at([500, 96, 160], STRAIGHT)}`, 'size: 2 x 2 x 2 mm'), `mirror M9 ${at([-200, 400, 160], STRAIGHT)}`, 'splitter S1 on red -> R1 by 100 mm', 'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> R1', '  -> P1', 'beam object from S1 reflected', '  -> M9', '  -> jar', '  -> P1');
  const { data } = analyse('file:///saltmarsh/setup.plate', text).findings.find(f => f.code === 'reference-on-object')!;
  // At 250 mm from R1: the plate needs 157.7 · 248/998 = 39.2 mm, the line to it is at 52 mm: between them 45.6 mm, towards it. It is not a point: a millimetre and a half.
  const [off, side] = [(157.7 * 248) / 998 / 2 + 104 / 4, 104];
  expectNear(Number(data['x']) * 1000, 250, 1);
  expectNear(Number(data['y']) * 1000, (off * 96) / side, 0.8);
  expectNear(Number(data['z']) * 1000 - 120, (off * 40) / side, 0.8);
});
