/** The object as the plate sees it: where its outline lies by similar triangles, which side is lit, what is hidden, and how bright its parts are. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import type { Mark } from '../../server/drawing/marks.ts';
import { fillOf } from '../../server/drawing/seen/object.ts';
import { eyeAt, shapesOf, stageOf } from '../../server/drawing/seen/project.ts';
import { svgOf } from '../../server/drawing/svg.ts';
import type { Drawn, Look } from '../../server/drawing/view.ts';
import { viewNamed } from '../../server/drawing/views.ts';
import { seenFrom } from '../../server/results/maps/seen.ts';
import type { Results } from '../../server/results/plan.ts';
import { disk, EXAMPLES } from '../examples/library.ts';

const results = (text: string): Results => analyse('file:///saltmarsh/setup.plate', text).results[0]!;
const example = (name: string): Results => { const page = EXAMPLES.find(e => e.name.endsWith(name))!; return analyse(page.uri, page.text, disk).results[0]!; };

/** A thing 300 mm before the plate, which somebody at the plate sees along −y, with −x to his right. Light runs along −x: it comes from his left, side by side, since nothing spreads it. */
const page = (object: readonly string[], plate = '100 x 80 mm', laser: readonly string[] = ['coherence length: 5 m', 'coherence contrast: 50%']): string => `setup "Ball of clay" {
  laser red at (1000, 600) mm heading 180° {
    wavelength: 632.8 nm
${laser.map(l => `    ${l}\n`).join('')}  }
  splitter S1 at (700, 600) mm
  mirror M1 at (300, 600) mm
  mirror M2 at (700, 0) mm
  object ball at (0, 0) mm {
${object.map(l => `    ${l}\n`).join('')}  }
  plate P1 at (0, 300) mm facing ball {
    size: ${plate}
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> ball
    -> P1
}
`;
const BALL = ['shape: sphere', 'diameter: 40 mm'];
const drawn = (r: Results, view = 'object', look: Look = {}): Drawn => { const of = viewNamed(view)!.of(r, look); if (typeof of === 'string') throw new Error(of); return of(); };
const stageFor = (text: string): ReturnType<typeof stageOf> => { const r = results(text); return stageOf(seenFrom(r, r.setup.things.get('P1')!)!); };
const texts = (marks: readonly Mark[]): string[] => marks.flatMap(m => [...(m.text === undefined ? [] : [m.text]), ...texts(m.children)]);
const said = (d: Drawn): string => texts(d.sheet.marks).join(' ');

describe('a ball', () => {
  const stage = stageFor(page(BALL));
  test('is round, as large as similar triangles have it', () => {
    // Rays that graze a ball of 20 mm at 300 mm meet the plane through its middle 20 · 300 / √(300² − 20²) = 20.045 mm from there. Corners between straight pieces lie a little inside.
    const [shape] = shapesOf(stage, eyeAt(stage, [0, 0]));
    for (const [x, y] of shape!.outline) {
      expect(Math.hypot(x, y)).toBeGreaterThan(20.045e-3 * 0.995);
      expect(Math.hypot(x, y)).toBeLessThan(20.045e-3 * 1.0001);
    }
    expect(shape!.outline.length).toBeGreaterThan(30);
  });
  test('shows no part that looks away, but what peeks over its rim', () => {
    const eye = eyeAt(stage, [0, 0]);
    const [shape] = shapesOf(stage, eye);
    // The rim is where (n, eye) = R/D = 1/15 of the way round; a part behind it by more than a quarter and half its own width is nowhere.
    for (const { patch } of shape!.parts) expect(-shape!.of.patches[patch]!.normal[1]).toBeLessThan(0.3);
    expect(shape!.parts.length).toBeLessThan(0.7 * shape!.of.patches.length);
  });
  test('that is lit from the side is dark behind a line at 90° from the light', () => {
    const [shape] = shapesOf(stage, eyeAt(stage, [0, 0]));
    const sides = shape!.parts.filter(p => !p.rim).map(p => ({ x: p.corners.reduce((s, c) => s + c[0], 0) / p.corners.length, dark: fillOf(shape!.of, p.patch) === 'url(#unlit)' }));
    // Half of what is seen, to the left. Parts are up to 3 mm wide, and those on the line may be either.
    for (const { x, dark } of sides.filter(s => Math.abs(s.x) > 1.5e-3)) expect(dark).toBe(x > 0);
    expect(sides.filter(s => s.dark).length / sides.length).toBeGreaterThan(0.45);
    expect(sides.filter(s => s.dark).length / sides.length).toBeLessThan(0.55);
  });
  test('shows more of its lit side to an eye further on that side', () => {
    const dark = (x: number): number => { const [s] = shapesOf(stage, eyeAt(stage, [x, 0])); const seen = s!.parts.filter(p => !p.rim); return seen.filter(p => s!.of.light[p.patch] === 0).length / seen.length; };
    // From an edge, 50 mm beside 300 mm, it is turned by 9.46°: 9.46° of 180° more or less is dark, the wider in the middle.
    expect(dark(-1)).toBeLessThan(dark(0) - 0.03);
    expect(dark(1)).toBeGreaterThan(dark(0) + 0.03);
  });
  test('stands still in its middle for every eye', () => {
    for (const from of [[0, 0], [1, -1], [-0.3, 0.8]] as const) {
      const [s] = shapesOf(stage, eyeAt(stage, from));
      const [x, y] = s!.place([0, 0, 0])!;
      expect(Math.hypot(x, y)).toBeLessThan(1e-12);
      // 10 mm nearer to the plate: at the point of the way between eye and part where that crosses the middle, (eye) · −10/290 to the other side.
      const [px, py] = s!.place([0, 0.01, 0])!;
      expect(px * 1000).toBeCloseTo((-from[0] * 50 * 10) / 290, 6);
      expect(py * 1000).toBeCloseTo((from[1] * 40 * 10) / 290, 6);
    }
  });
  test('is lit by the cosine, and brightest where it faces the light', () => {
    const { of } = shapesOf(stage, eyeAt(stage, [0, 0]))[0]!;
    of.patches.forEach(({ normal }, i) => { expect(of.light[i]!).toBeCloseTo(Math.max(0, normal[0]) / Math.max(...of.patches.map(p => p.normal[0])), 6); });
  });
});

describe('brightness', () => {
  test('of a part is its light by what the map has recorded of it', () => {
    const r = example('single-beam-oyster.plate');
    const { objects: [o] } = seenFrom(r, r.setup.things.get('P1')!)!;
    const { at, cell } = o!.darkest!;
    const off = o!.patches.map(({ point: p }, i) => (o!.light[i]! > 0 ? Math.hypot(p[0] - at[0], p[1] - at[1], p[2] - at[2]) : Infinity));
    const i = off.indexOf(Math.min(...off));
    // The nearest of 1200 parts lies within about 2 mm, of which the figure goes by some parts in a hundred.
    expect(Math.abs(o!.bright![i]! / o!.light[i]! - r.graph.value(cell)!)).toBeLessThan(0.03);
    for (let k = 0; k < o!.light.length; k++) expect(o!.bright![k]).toBeLessThanOrEqual(o!.light[k]!);
  });
  test('of arms that do not match is none, which is said', () => {
    // The object arm is 776 mm longer; the light holds together over 20 mm.
    const far = results(page(BALL, undefined, ['coherence length: 20 mm']));
    expect(seenFrom(far, far.setup.things.get('P1')!)!.objects[0]!.bright!.every(b => b < 0.001)).toBe(true);
    expect(said(drawn(far))).toContain('All of ball records dark.');
    expect(said(drawn(results(page(BALL))))).not.toContain('records dark');
  });
  test('is named where it is least', () => { expect(said(drawn(example('single-beam-oyster.plate')))).toMatch(/records worst of oyster: \d+ % of what/); });
  test('that nothing tells is no grey alone: a pattern says so', () => {
    const told = drawn(results(page(BALL)));
    const untold = drawn(results(page(BALL, undefined, [])));
    expect(svgOf(told.sheet).split('fill="url(#untold)"')).toHaveLength(1);
    // once on the ball, once in the legend
    expect(svgOf(untold.sheet).split('fill="url(#untold)"')).toHaveLength(3);
    expect(said(untold)).toContain('how well its light records is not known');
  });
});

describe('shapes', () => {
  test('a box from straight on is its face', () => {
    const stage = stageFor(page(['shape: box', 'size: 40 x 60 x 20 mm']));
    const [shape] = shapesOf(stage, eyeAt(stage, [0, 0]));
    // The face 10 mm before the middle: 20 and 30 mm, by 300/290.
    expect(Math.max(...shape!.outline.map(p => p[0])) * 1000).toBeCloseTo((20 * 300) / 290, 6);
    expect(Math.max(...shape!.outline.map(p => p[1])) * 1000).toBeCloseTo((30 * 300) / 290, 6);
  });
  test.each([['cylinder', ['shape: cylinder', 'size: 40 x 60 x 40 mm']], ['rounded', ['size: 40 x 60 x 40 mm']]])('a %s 60 mm high and 40 mm wide is about as high and as wide', (_, object) => {
    const stage = stageFor(page(object));
    const [shape] = shapesOf(stage, eyeAt(stage, [0, 0]));
    const [w, h] = [0, 1].map(i => (Math.max(...shape!.outline.map(p => p[i]!)) - Math.min(...shape!.outline.map(p => p[i]!))) * 1000);
    // Nearer parts look up to 300/280 as large, and the foremost rim of the cylinder just so.
    expect(w! / 40).toBeGreaterThan(0.99);
    expect(w! / 40).toBeLessThan(300 / 280 + 1e-9);
    expect(h! / 60).toBeGreaterThan(0.99);
    expect(h! / 60).toBeLessThan(300 / 280 + 1e-9);
  });
  test('single points are dots where they stand, the nearest last', () => {
    const d = drawn(results(page(['points: (-15, 0, 0) mm, (0, 10, 5) mm, (15, -10, -5) mm'])));
    const dots = [...svgOf(d.sheet).matchAll(/<circle fill="[^"]+" cx="([\d.]+)" cy="([\d.]+)" r="4"\/>/g)].map(m => [Number(m[1]), Number(m[2])] as const);
    expect(dots).toHaveLength(3);
    // right, up, toward the plate: the far one first, then that in the middle
    expect(dots[0]![0]).toBeGreaterThan(dots[1]![0]);
    expect(dots[2]![1]).toBeLessThan(dots[1]![1]);
  });
});

describe('two eyes', () => {
  test('are 63 mm apart where the plate is as wide', () => {
    const d = drawn(results(page(BALL)), 'pair');
    expect(said(d)).toContain('eyes 63 mm apart');
    expect(said(d)).not.toContain('as far as');
    expect(said(d)).toMatch(/left eye.*right eye/);
  });
  test('on a narrow plate stand at its edges, which is said', () => { expect(said(drawn(results(page(BALL, '40 x 80 mm')), 'pair'))).toContain('eyes 40 mm apart, as far as P1 is wide'); });
  test('the left one sees more of what lies to the left', () => {
    const svg = svgOf(drawn(results(page(BALL)), 'pair').sheet);
    // Light comes from the left: the left eye sees more of what is lit, the right eye more of the hatch.
    const hatched = svg.split('clip-path="url(#eye-').slice(1).map(part => /<path fill="url\(#unlit\)" d="([^"]+)"/g.exec(part)![1]!.length);
    expect(hatched).toHaveLength(2);
    expect(hatched[1]!).toBeGreaterThan(hatched[0]!);
  });
});

describe('words', () => {
  test('say from where it is seen, and from further back what is too near', () => {
    expect(said(drawn(results(page(BALL))))).toContain('seen from the middle of P1');
    expect(said(drawn(results(page(BALL)), 'object', { from: [-0.5, 1] }))).toContain('50 % of the way to the left edge and 100 % of the way to the upper edge');
    expect(said(drawn(results(page(BALL)), 'object', { from: [7, Number.NaN] }))).toContain('100 % of the way to the right edge');
    expect(said(drawn(example('single-beam-oyster.plate')))).toMatch(/seen from the middle of P1, \d+ mm behind it/);
  });
  test('name the shape that nobody wrote, and what is not drawn', () => {
    expect(said(drawn(results(page(['size: 40 x 60 x 35 mm']))))).toContain('The shape of ball is not written');
    expect(said(drawn(results(page(BALL))))).not.toContain('is not written');
    expect(said(drawn(results(page(BALL))))).toContain('throw no shadow');
  });
  test.each([
    ['without a size', page(['tone: 40%']), 'How large ball is, is not written: give it a “size”.'],
    ['of a plate without a size', page(BALL).replace('    size: 100 x 80 mm\n', ''), 'How large P1 is, is not written: give it a “size”.'],
    ['of things without places', page(BALL).replace('object ball at (0, 0) mm', 'object ball').replace(' facing ball', ' heading 270°'), 'both stand somewhere'],
    ['of a page without a plate', 'setup "Bare" {\n  laser red at (0, 0) mm heading 0°\n}\n', 'No light reaches a plate.'],
  ])('say why there is none: %s', (_, text, words) => {
    for (const view of ['object', 'pair']) expect(viewNamed(view)!.of(results(text), {})).toEqual(expect.stringContaining(words));
  });
});

test.each(EXAMPLES.map(e => [e.name, e] as const))('is the same text each time, with no number that is none: %s', (_, e) => {
  const once = (): string[] => analyse(e.uri, e.text, disk).results.flatMap(r => ['object', 'pair'].flatMap(v => { const of = viewNamed(v)!.of(r, { from: [0.3, -0.4] }); return typeof of === 'string' ? [of] : [svgOf(of().sheet)]; }));
  const [a, b] = [once(), once()];
  expect(a).toEqual(b);
  for (const text of a) expect(text).not.toMatch(/NaN|Infinity|undefined/);
});
