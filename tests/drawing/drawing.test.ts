/** The drawing of the table: to scale, in the order of the light, the same text each time, and nothing in it but what was written. Expected places are the coordinates of the setups, in mm, y upwards. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import { drawingOf, type Drawing } from '../../server/drawing/drawing.ts';
import { placed } from '../../server/drawing/plan/labels.ts';
import { inkedSvg, svgOf as textOf } from '../../server/drawing/svg.ts';
import { PALETTES } from '../../server/drawing/style.ts';
import { planOf } from '../../server/drawing/plan/plan.ts';
import { disk, EXAMPLES } from '../examples/library.ts';

const drawn = (text: string): Drawing => drawingOf(analyse('file:///saltmarsh/setup.plate', text).results[0]!)!;
const svgOf = (d: Drawing): string => textOf(planOf(d));
const setup = (...lines: string[]): string => `setup "Whelk shell" {\n${lines.map(l => `  ${l}\n`).join('')}}\n`;
const LASER = 'laser red at (0, 0) mm heading 0°';
const CORNER = ['table: 1200 x 900 mm', 'hole spacing: 25 mm', LASER, 'mirror M1 at (1000, 0) mm', 'beam stop B1 at (1000, 700) mm', 'beam raw from red', '  -> M1', '  -> B1'];

/** Tags of an SVG with their attributes, in order; fails where one is not closed (the rules of XML 1.0, section 2.1: tags nest properly). */
function tags(svg: string): { name: string; attributes: Record<string, string> }[] {
  const found: { name: string; attributes: Record<string, string> }[] = [];
  const open: string[] = [];
  for (const [, close, name, rest, alone] of svg.matchAll(/<(\/?)([A-Za-z]+)((?:\s+[\w:-]+="[^"<]*")*)\s*(\/?)>/g)) {
    if (close) { expect(open.pop()).toBe(name); continue; }
    found.push({ name: name!, attributes: Object.fromEntries([...rest!.matchAll(/([\w:-]+)="([^"]*)"/g)].map(m => [m[1]!, m[2]!])) });
    if (!alone) open.push(name!);
  }
  expect(open).toEqual([]);
  // Nothing that looks like a tag is left over, and no mark stands bare.
  expect(svg.replace(/<\?xml[^?]*\?>/, '').replace(/<\/?[A-Za-z]+(?:\s+[\w:-]+="[^"<]*")*\s*\/?>/g, '')).not.toMatch(/[<>]/);
  expect(svg).not.toMatch(/&(?!#\d+;)/);
  return found;
}
const lines = (svg: string): number[][] => tags(svg).filter(t => t.name === 'line' && t.attributes['class']?.startsWith('light') && t.attributes['x2'] !== undefined).map(t => ['x1', 'y1', 'x2', 'y2'].map(k => Number(t.attributes[k])));

describe('to scale', () => {
  test('legs run from place to place, one unit a millimetre, y upwards', () => {
    // Behind the two legs stands the sample of the legend.
    expect(lines(svgOf(drawn(setup(...CORNER)))).slice(0, 2)).toEqual([[0, 0, 1000, 0], [1000, 0, 1000, -700]]);
  });
  test('the table is as large as it is written, and its holes as far apart', () => {
    const all = tags(svgOf(drawn(setup(...CORNER))));
    expect(all.find(t => t.attributes['class'] === 'table')!.attributes).toMatchObject({ x: '0', y: '-900', width: '1200', height: '900' });
    expect(all.find(t => t.name === 'pattern')!.attributes).toMatchObject({ width: '25', height: '25' });
  });
  test('the scale bar is as long as it says', () => {
    const svg = svgOf(drawn(setup(...CORNER)));
    const [, length, words] = /class="scale" d="[^"]*h(\d+)M[^"]*"\/>\n<text[^>]*>(\d+) mm</.exec(svg)!;
    expect(length).toBe(words);
  });
  test('a face is as wide as it is written: a mirror of 40 mm that turns light by a right angle stands at 45°', () => {
    const m = drawn(setup(...CORNER.map(l => (l.startsWith('mirror') ? 'mirror M1 at (1000, 0) mm {\n    diameter: 40 mm\n  }' : l)))).things.find(t => t.name === 'M1')!;
    expect(m.face[0]).toBeCloseTo(0.04, 12);
    // Light along +x goes on along +y: the normal halves the angle between what comes and what goes, along (−1, 1).
    expect(m.normal![0]).toBeCloseTo(-Math.SQRT1_2, 9);
    expect(m.normal![1]).toBeCloseTo(Math.SQRT1_2, 9);
    // and in the picture the face of 40 mm is turned so
    const turned = tags(svgOf(drawn(setup(...CORNER.map(l => (l.startsWith('mirror') ? 'mirror M1 at (1000, 0) mm {\n    diameter: 40 mm\n  }' : l)))))).find(t => t.attributes['transform']?.startsWith('translate(1000 0)'))!;
    expect(turned.attributes['transform']).toBe('translate(1000 0) rotate(-135)');
  });
  test('a card of 60 mm that is 3 mm deep has the outline of that', () => {
    const c = drawn(setup(LASER, 'black card BC1 at (500, 300) mm heading 90° {', '  size: 60 x 150 mm', '}')).things.find(t => t.name === 'BC1')!;
    const [xs, ys] = [c.outline.map(p => p[0]), c.outline.map(p => p[1])];
    expect([Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)].map(v => Math.round(v * 1e5) / 100)).toEqual([470, 530, 298.5, 301.5]);
  });
});

describe('light', () => {
  test('arrowheads point the way the light goes', () => {
    const [first] = tags(svgOf(drawn(setup(...CORNER)))).filter(t => t.attributes['class']?.startsWith('arrow')).map(t => [...t.attributes['d']!.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(m => [Number(m[1]), Number(m[2])]));
    const [tip, left, right] = first as [number[], number[], number[]];
    expect(tip[0]).toBeGreaterThan(left[0]!);
    expect(left[1]! + right[1]!).toBeCloseTo(0, 9);
  });
  test('a spread beam is drawn as wide as it is: w = r z / f', () => {
    const legs = drawn(setup('laser red at (0, 0) mm heading 0° {', '  wavelength: 632.8 nm', '  wavelength: 632.8 nm', '  beam diameter: 0.8 mm', '}', 'spreader R1 at (200, 0) mm {', '  focal length: 4.5 mm', '}', 'object whelk at (1220, 0) mm', 'plate P1 at (1200, 0) mm heading 180° {', '  size: 63 x 63 mm', '}', 'beam all from red', '  -> R1', '  -> P1 through', '  -> whelk', '  -> P1')).legs;
    // 0.4 mm · √(1 + (200/794.33)²) = 0.4125 mm on the lens; × (1000 − 4.5)/4.5 = 91.2 mm; the plate takes 31.5 of it. z_R: Siegman (1986), as in published-values.json.
    const l = legs.find(x => x.words === 'R1 → P1')!;
    expect(l.whole[1] * 1000).toBeGreaterThan(90);
    expect(l.whole[1] * 1000).toBeLessThan(92.5);
    expect(l.useful[1]).toBeCloseTo(0.0315, 9);
  });
  test('what the light is for: before the arms part, reference, for the object, from the object', () => {
    const page = EXAMPLES.find(e => e.name.endsWith('whelk-on-the-table.plate'))!;
    const roles = new Map(drawingOf(analyse(page.uri, page.text, disk).results[0]!)!.legs.map(l => [l.words, l.role]));
    expect(Object.fromEntries(roles)).toEqual({
      'red → gate': 'common', 'gate → S1': 'common', 'S1 → M1': 'reference', 'M1 → R1': 'reference', 'R1 → P1': 'reference', 'S1 → M2': 'object', 'M2 → M3': 'object', 'M3 → R2': 'object', 'R2 → whelk': 'object', 'whelk → P1': 'scattered',
    });
  });
  const legend = (name: string): string => { const page = EXAMPLES.find(e => e.name.endsWith(name))!; return svgOf(drawingOf(analyse(page.uri, page.text, disk).results[0]!)!); };
  test('what ground glass sends to an object is light for it; only behind the object it is light from it', () => {
    const page = EXAMPLES.find(e => e.name.endsWith('back-lit-leaf.plate'))!;
    const roles = new Map(drawingOf(analyse(page.uri, page.text, disk).results[0]!)!.legs.map(l => [l.words, l.role]));
    expect([roles.get('R1 → GG1'), roles.get('GG1 → leaf'), roles.get('leaf → P1')]).toEqual(['object', 'object', 'scattered']);
  });
  test('the legend names what is lit: an object, in a transfer the first hologram', () => {
    expect(legend('back-lit-leaf.plate')).toContain('>light from the object<');
    expect(legend('rainbow-transfer.plate')).toMatch(/>light for the first hologram<[^]*>light from the first hologram</);
    expect(legend('rainbow-transfer.plate')).not.toContain('the object<');
  });
  test('shades are in the legend where there are any', () => {
    for (const words of ['width of the light', 'of it, the part that is used']) {
      expect(legend('back-lit-leaf.plate')).toContain(`>${words}<`);
      expect(svgOf(drawn(setup(...CORNER)))).not.toContain(`>${words}<`); // no width of a beam is known there
    }
  });
  test('no hole is cut by the edge of the table', () => {
    const holes = tags(svgOf(drawn(setup(...CORNER)))).find(t => t.attributes['class'] === 'holes')!.attributes;
    // 1200 x 900 mm, holes of 25 mm spacing at its multiples: the outermost stand 25 mm inside, and half a spacing around them is clear of the edge.
    expect(holes).toMatchObject({ x: '12.5', y: '-887.5', width: '1175', height: '875' });
  });
  test('what stands in it is marked, and said', () => {
    const svg = svgOf(drawn(setup(...CORNER, 'black card BC1 at (500, 0) mm heading 180° {', '  size: 60 x 150 mm', '}')));
    expect(tags(svg).filter(t => t.attributes['class'] === 'blocked')).toHaveLength(1);
    expect(svg).toContain('BC1 stands in red → M1<');
  });
  // Light spreads from a point 2 mm behind R1; its edge at a plate 100 mm high, 1000 mm away, is 50 mm off the axis: 25 mm where the card stands, half way. What the light has of the plate's 300 mm there ends 75 mm off.
  const WIDE = ['beam height: 120 mm', 'laser red at (-300, 0) mm heading 0° {', '  wavelength: 632.8 nm', '  beam diameter: 0.8 mm', '}', 'spreader R1 at (0, 0) mm {', '  focal length: 2 mm', '}', 'plate P1 at (1000, 0) mm heading 180° {', '  size: 300 x 100 mm', '}', 'beam reference from red', '  -> R1', '  -> P1'];
  test.each([
    ['on the axis', '(500 mm, 0 mm)', 'BC1 stands in R1 → P1'],
    ['17.5 mm off the axis, with 7.5 of the light’s 50 mm in its way', '(500 mm, 24 mm)', 'BC1 reaches into the light of R1 → P1'],
    ['58 to 72 mm off the axis', '(500 mm, 65 mm)', 'BC1 shades a part of P1 (R1 → P1)'],
    // 82 mm less half of 13 mm is where the light ends, give or take the tape.
    ['at the edge of the shadow, by a tape of 20 mm', '(500 mm, 82 mm ± 20 mm)', 'BC1 may shade a part of P1 (R1 → P1)'],
  ])('of what stands %s no more is said than is so', (_, place, words) => {
    expect(drawn(setup(...WIDE, `black card BC1 at ${place} heading 180° {`, '  size: 13 x 300 mm', '}')).blocked.map(b => b.words)).toEqual([words]);
  });
});

describe('inks', () => {
  // WCAG 2.2: relative luminance and contrast ratio; 4.5 for text and 3 for what is drawn (success criteria 1.4.3 and 1.4.11).
  const luminance = (hex: string): number => [1, 3, 5].map(i => parseInt(hex.slice(i, i + 2), 16) / 255).map(c => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)).reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i]!, 0);
  const contrast = (a: string, b: string): number => { const [x, y] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number]; return (x + 0.05) / (y + 0.05); };
  test.each(Object.entries(PALETTES))('stand out from what they are drawn on: %s', (_, p) => {
    for (const on of [p.paper, p.table]) {
      for (const ink of [p.ink, p.quiet, p.amiss]) expect(contrast(ink, on)).toBeGreaterThan(4.5);
      for (const ink of [p.edge, p.reference, p.object]) expect(contrast(ink, on)).toBeGreaterThan(3);
    }
  });
  test.each(['contrast', 'contrastLight'] as const)('where high contrast is wanted, stand out by 7, which is what WCAG calls enhanced (1.4.6): %s', name => {
    const p = PALETTES[name];
    for (const on of [p.paper, p.table, p.body]) for (const ink of [p.ink, p.quiet, p.amiss, p.edge, p.reference, p.object]) expect(contrast(ink, on)).toBeGreaterThanOrEqual(7);
  });
  test('stand in the marks themselves where a program reads no style sheet', () => {
    const svg = inkedSvg(planOf(drawn(setup(...CORNER))), PALETTES.light);
    expect(tags(svg).filter(t => t.attributes['class'] !== undefined)).toEqual([]);
    expect(tags(svg).find(t => t.attributes['width'] === '1200' && t.name === 'rect')!.attributes).toMatchObject({ fill: '#fbfaf6', stroke: '#333333' });
  });
});

describe('text', () => {
  test.each(EXAMPLES.map(e => [e.name, e] as const))('is the same each time: %s', (_, page) => {
    const once = (): string[] => analyse(page.uri, page.text, disk).results.flatMap(r => { const d = drawingOf(r); return d ? [svgOf(d)] : []; });
    const [a, b] = [once(), once()];
    expect(a).toEqual(b);
    for (const svg of a) { tags(svg); expect(svg).not.toMatch(/NaN|Infinity|undefined|null|[\d)]e-\d/); }
  });
  test('holds no mark of its own in a name or a title, and no letter that acts', () => {
    const svg = svgOf(drawn(setup(...CORNER).replace('Whelk shell', '<script>alert(1)</script> & \'x\' \u202e\u0007')));
    tags(svg);
    expect(svg).not.toMatch(/<script|[\u202e\u0007]/);
    expect(svg).toContain('&#60;script&#62;');
  });
  test('a setup without places has no drawing', () => { expect(drawingOf(analyse('file:///x.plate', setup('laser red', 'mirror M1', 'beam stop B1', 'beam raw from red', '  -> M1: 100 mm', '  -> B1: 100 mm')).results[0]!)).toBeUndefined(); });
  test.each([
    ['all at one place', ['mirror M1 at (0, 0) mm', 'beam stop B1 at (0, 0) mm', LASER, 'beam raw from red', '  -> M1', '  -> B1']],
    ['straight up', [LASER, 'mirror M1 at (300, 0, 120) mm', 'beam stop B1 at (300, 0, 900) mm', 'beam raw from red', '  -> M1', '  -> B1']],
    ['a table of nothing', ['table: 0 x 0 mm', LASER, 'beam stop B1 at (100, 0) mm', 'beam raw from red', '  -> B1']],
    ['a mirror of nothing', [LASER, 'mirror M1 at (300, 0) mm {', '  diameter: 0 mm', '}', 'beam stop B1 at (300, 300) mm', 'beam raw from red', '  -> M1', '  -> B1']],
    ['holes of nothing', ['table: 1000 x 1000 mm', 'hole spacing: 0 mm', LASER, 'beam stop B1 at (100, 0) mm', 'beam raw from red', '  -> B1']],
    ['as far as a number goes', [LASER, 'beam stop B1 at (1e9, 0) mm', 'beam raw from red', '  -> B1']],
    ['a thing of 500 m', [LASER, 'object whelk at (300, 300) mm {', '  size: 500 x 500 x 500 m', '}', 'beam stop B1 at (300, 0) mm', 'beam raw from red', '  -> B1']],
  ] as const)('of what makes no sense is text all the same: %s', (_, page) => {
    const d = drawingOf(analyse('file:///x.plate', setup(...page)).results[0]!);
    if (d) { const svg = svgOf(d); tags(svg); expect(svg).not.toMatch(/NaN|Infinity|undefined/); }
  });
});

describe('names', () => {
  const frame = { x: 0, y: 0, w: 1000, h: 1000 };
  test('stand beside their thing, off the light', () => {
    const own = { x: 480, y: 480, w: 40, h: 40 };
    // A leg straight up from the thing: the name does not stand above.
    const [box] = placed([{ own, w: 60, h: 18 }], { boxes: [own], lines: [[[500, 500], [500, 0]]], frame });
    expect(box!.x > 500 || box!.x + 60 < 500 || box!.y > 500).toBe(true);
    expect(box!.x + 60 <= own.x || box!.x >= own.x + 40 || box!.y + 18 <= own.y || box!.y >= own.y + 40).toBe(true);
  });
  test('keep clear of a line that they would only just miss', () => {
    const own = { x: 480, y: 480, w: 40, h: 40 };
    // Right of the thing letters would stand from 491 to 509; a line runs 2 below that, another closes the way above.
    const [box] = placed([{ own, w: 60, h: 18 }], { boxes: [own], lines: [[[0, 511], [1000, 511]], [[500, 470], [500, 0]]], frame });
    expect(box!.y > 511 || box!.y + 18 < 489).toBe(true);
  });
  test('stand off each other, though their things stand close', () => {
    const things = Array.from({ length: 6 }, (_, i) => ({ own: { x: 480 + 5 * i, y: 480, w: 10, h: 10 }, w: 50, h: 18 }));
    const boxes = placed(things, { boxes: things.map(t => t.own), lines: [], frame });
    for (const [i, a] of boxes.entries()) for (const b of boxes.slice(i + 1)) expect(a.x + a.w <= b.x || b.x + b.w <= a.x || a.y + a.h <= b.y || b.y + b.h <= a.y).toBe(true);
  });
});
