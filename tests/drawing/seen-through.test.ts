/** What a plate sees by way of ground glass and of a first hologram: which parts get light, how much, and how brightly they record, in sums that a hand can do. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import type { Mark } from '../../server/drawing/marks.ts';
import { eyeAt, shapesOf, stageOf } from '../../server/drawing/seen/project.ts';
import type { Drawn } from '../../server/drawing/view.ts';
import { viewNamed } from '../../server/drawing/views.ts';
import { seenFrom, type PlateView } from '../../server/results/maps/seen.ts';
import type { Results } from '../../server/results/plan.ts';
import { glow, pastObject } from '../../server/results/rules/soft.ts';
import { disk, EXAMPLES } from '../examples/library.ts';

const results = (text: string): Results => analyse('file:///saltmarsh/setup.plate', text).results[0]!;
const example = (name: string): Results => { const page = EXAMPLES.find(e => e.name.endsWith(name))!; return analyse(page.uri, page.text, disk).results[0]!; };
const viewOf = (r: Results, plate = 'P1'): PlateView => seenFrom(r, r.setup.things.get(plate)!)!;
const drawn = (r: Results, view = 'object'): Drawn => { const of = viewNamed(view)!.of(r, {}); if (typeof of === 'string') throw new Error(of); return of(); };
const texts = (marks: readonly Mark[]): string[] => marks.flatMap(m => [...(m.text === undefined ? [] : [m.text]), ...texts(m.children)]);
const said = (d: Drawn): string => texts(d.sheet.marks).join(' ');
/** Half width and half height of the outline of one thing for an eye in the middle of the plate, mm. */
function half(view: PlateView, id: string): [number, number] {
  const stage = stageOf(view);
  const { outline } = shapesOf(stage, eyeAt(stage, [0, 0])).find(s => s.of.object.id === id)!;
  return [0, 1].map(i => Math.max(...outline.map(p => p[i]!)) * 1000) as [number, number];
}
/** Light whose fringes have half of their contrast at a mismatch of so much, m: a Gaussian line leaves 2^−(δ/L)² of it, whose square is recorded. */
const recorded = (mismatch: number, length: number): number => 4 ** -((mismatch / length) ** 2);

interface Soft { readonly object?: readonly string[]; readonly spread?: boolean; readonly glass?: readonly string[]; readonly length?: number; readonly m1?: string }
/** A ball at (0, 0), lit by ground glass 150 mm beside it, at −x; the plate 300 mm before it is so small that it is one point. Splitter → M2 → glass → ball → plate is 600 + 550 + 150 + 300 = 1600 mm. */
const soft = ({ object = ['shape: sphere', 'diameter: 40 mm'], spread = false, glass = ['size: 200 x 200 mm', 'scatter angle: 30°'], length = 200, m1 = '(300, 600)' }: Soft = {}): string => `setup "Ball of clay" {
  laser red at (-1000, 600) mm heading 0° {
    wavelength: 632.8 nm
    beam diameter: 1 mm
    beam quality: 1
    coherence length: ${length} mm
    coherence contrast: 50%
  }
  splitter S1 at (-700, 600) mm
  mirror M1 at ${m1} mm
  mirror M2 at (-700, 0) mm
${spread ? '  spreader R1 on M2 -> GG1 by 200 mm {\n    focal length: 4 mm\n  }\n' : ''}  ground glass GG1 at (-150, 0) mm${glass.length > 0 ? ` {\n${glass.map(l => `    ${l}\n`).join('')}  }` : ''}
  object ball at (0, 0) mm {
${object.map(l => `    ${l}\n`).join('')}  }
  plate P1 at (0, 300) mm facing ball {
    size: 1 x 1 mm
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
${spread ? '    -> R1\n' : ''}    -> GG1
    -> ball
    -> P1
}
`;

describe('an object before ground glass', () => {
  const { objects: [ball] } = viewOf(results(soft()));
  const glass = [-0.15, 0, 0] as const;
  /** from a point of the ball to the spot of light on the glass, whose radius is 1 mm */
  const way = (p: readonly number[]): number => Math.hypot(p[0]! - glass[0], p[1]!, p[2]!);
  test('has light where it faces the spot on the glass', () => {
    // A ball of 20 mm is lit from a point 150 mm away up to where (n, way to it) is above 20/150 = 0.133.
    const sure = ball!.patches.map(({ normal: n }, i) => ({ off: -n[0] - 20 / 150, lit: ball!.light[i]! > 0 })).filter(s => Math.abs(s.off) > 0.02);
    expect(sure.length).toBeGreaterThan(1000);
    for (const { off, lit } of sure) expect(lit).toBe(off > 0);
  });
  test('has it by the square of the distance, by the cosine, and by the lobe of the glass', () => {
    // Half of the light at 30° from straight on: cosⁿ 30° = ½.
    const power = Math.log(0.5) / Math.log(Math.cos(Math.PI / 6));
    const by = ball!.patches.map(({ point: p, normal: n }) => { const r = way(p); const cosine = (n[0] * (glass[0] - p[0]) - n[1] * p[1] - n[2] * p[2]) / r; return (Math.max(0, cosine) * ((p[0] - glass[0]) / r) ** power) / r ** 2; });
    const most = Math.max(...by);
    ball!.light.forEach((v, i) => { expect(Math.abs(v - by[i]! / most)).toBeLessThan(0.01); });
  });
  test('records by its own way over glass and part', () => {
    // The reference is 1000 + 300 √2 = 1424.264 mm, so that the middle is 175.736 mm longer.
    ball!.patches.forEach(({ point: p }, i) => {
      if (ball!.light[i]! < 0.05) return;
      const mismatch = 0.175736 + way(p) + Math.hypot(p[0], p[1] - 0.3, p[2]) - 0.45;
      expect(Math.abs(ball!.bright![i]! / ball!.light[i]! - recorded(mismatch, 0.2))).toBeLessThan(0.005);
    });
  });
  test('records in the mean over the glass', () => {
    // M1 at (400, 600): 1100 + 500 = 1600 mm, matched in the middle.
    const r = results(soft({ object: ['points: (0, 0, 0) mm'], spread: true, length: 10, m1: '(400, 600)' }));
    const [point] = viewOf(r).objects;
    // A waist of 0.5 mm in the laser has a Rayleigh range of 1241 mm. At R1, 1100 mm on, the light is 0.668 mm wide, with a wave front of 1100 (1 + (1241/1100)²) = 2500 mm: it comes to a focus
    // 1/(1/4 − 1/2500) = 4.0064 mm behind R1, and on the glass, 346 mm on, it is 0.668 · 346/4.0064 = 57.7 mm wide.
    const [w, bend, on, power] = [57.7, 346, 150, Math.log(0.5) / Math.log(Math.cos(Math.PI / 6))];
    let [sum, all] = [0, 0];
    for (let r0 = 0.05; r0 < 100; r0 += 0.1) {
      const share = (r0 * Math.exp((-2 * r0 ** 2) / w ** 2) * Math.cos(Math.atan(r0 / bend) + Math.atan(r0 / on)) ** power) / (on ** 2 + r0 ** 2);
      all += share;
      sum += share * recorded(Math.hypot(bend, r0) - bend + Math.hypot(on, r0) - on, 10);
    }
    expect(sum / all).toBeLessThan(0.7);
    expect(Math.abs(point!.bright![0]! / point!.light[0]! - sum / all)).toBeLessThan(0.003);
  });
  test('is seen alone where the glass stands beside it', () => { expect(drawn(results(soft())).sheet.title).toBe('Ball of clay: ball as P1 sees it'); });
});

describe('ground glass behind an object', () => {
  const r = example('back-lit-leaf.plate');
  test('is seen round it, as large as it looks from there', () => {
    const view = viewOf(r);
    expect(view.objects.map(o => o.object.id)).toEqual(['leaf', 'GG1']);
    // A glass of 150 mm, 360 mm from the plate, behind a leaf at 180 mm: drawn where the middle of both is, 270 mm away, or from so much further back.
    const eye = 270 * stageOf(view).back;
    for (const h of half(view, 'GG1')) expect(h).toBeCloseTo((75 * eye) / (eye + 90), 6);
  });
  test('has the light, and what is not drawn is said', () => {
    const d = drawn(r);
    expect(d.items!.map(i => i.words)).toEqual(['object leaf, as P1 sees it', 'ground glass GG1, as P1 sees it']);
    for (const words of ['leaf and GG1 as P1 sees them', 'What leaf lets through of the light of GG1 is not drawn.', 'no light falls there']) expect(said(d)).toContain(words);
    // Two eyes at the edges see a little of its lit side, which is dim beside the glass, but records.
    for (const view of ['object', 'pair']) expect(said(drawn(r, view))).not.toContain('records dark');
    const [leaf, glass] = viewOf(r).objects;
    expect(leaf!.light.every((v, i) => v === 0 || leaf!.patches[i]!.normal[0] < 0.05)).toBe(true);
    expect(Math.max(...glass!.light)).toBe(1);
  });
  test('glows as its lobe and its slant have it', () => {
    // Light side by side, 632.8 nm, 40 mm to 1/e²: its Rayleigh range is π · 0.04²/632.8e-9 m = 7943 m.
    const screen = { at: [0, 0, 0], normal: [1, 0, 0], sides: [0.1, 0.1], along: [1, 0, 0], beam: [0, 7943, 0, 7943, 632.8e-9, 1], halfWidth: Math.PI / 6 } as const;
    const at = (angle: number): number => glow(screen, [{ point: [0, 0, 0], normal: [1, 0, 0], area: 1e-4 }], [Math.cos(angle), Math.sin(angle), 0])[0]!;
    // Half of the light at 30°, from a face that looks narrower by cos 30°; none from behind.
    expect(at(Math.PI / 6) / at(0)).toBeCloseTo(0.5 / Math.cos(Math.PI / 6), 6);
    expect(at(Math.PI)).toBe(0);
    // All the light that a dull white face spreads by the cosine, ∫ cos θ/π dω = 1, a lobe of 60° spreads so too: cosⁿ 60° = ½ has n = 1.
    expect(glow({ ...screen, halfWidth: Math.PI / 3 }, [{ point: [0, 0, 0], normal: [1, 0, 0], area: 1e-4 }], [1, 0.7, 0.2])[0]).toBeCloseTo(1, 6);
  });
  test('sends its light past the object by the straight way', () => {
    expect(pastObject([-3, 0, 0], [4, 0, 0])).toBeCloseTo(0, 12);
    // 3, 4 and 5
    expect(pastObject([3, 0, 0], [0, 4, 0])).toBeCloseTo(-2, 12);
  });
});

/**
 * H1, 60 x 40 mm, is lit squarely from behind by a beam of 80 mm that runs side by side; the plate 300 mm before it is one point. Splitter → M2 → M3 → H1 → plate is 1000 + 700 + 400 + 300 = 2400 mm, and so is
 * the reference by (−u, 600): 700 + u + √(u² + 300²) = 2400 where u = (1700² − 300²)/3400 = 823.529.
 */
const transfer = (size = '60 x 40 mm', more = ''): string => `setup "Whelk, transfer" {
  laser red at (1000, 600) mm heading 180° {
    wavelength: 632.8 nm
    beam diameter: 80 mm
    coherence length: 2 mm
    coherence contrast: 50%
  }
  splitter S1 at (700, 600) mm
  mirror M1 at (-823.529, 600) mm
  mirror M2 at (700, -400) mm
  mirror M3 at (0, -400) mm
  hologram H1 at (0, 0) mm facing P1 {
${size === '' ? '' : `    size: ${size}\n`}    image: real
    image distance: 300 mm
  }
  plate P1 at (0, 300) mm facing H1 {
    size: 0.1 x 0.1 mm
  }
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam master from S1 reflected
    -> M2
    -> M3
    -> H1
  beam image from H1 diffracted
    -> P1
${more}}
`;

describe('the window of a first hologram', () => {
  const view = viewOf(results(transfer()));
  const [h1] = view.objects;
  const off = (p: readonly number[]): number => Math.hypot(p[0]!, p[2]!);
  test('is as large as it is written', () => {
    const [w, h] = half(view, 'H1');
    expect(w).toBeCloseTo(30, 6);
    expect(h).toBeCloseTo(20, 6);
  });
  test('behind a slit is what that leaves open', () => {
    // 4 mm of 63 x 63 mm; the scene lies on its side.
    const [w, h] = half(viewOf(example('rainbow-transfer.plate'), 'P2'), 'H1');
    expect(w).toBeCloseTo(2, 6);
    expect(h).toBeCloseTo(31.5, 6);
  });
  test('has its light from behind, by the profile of the beam', () => {
    // e^(−2r²/w²) with w = 40 mm: in the corners, 36 mm off, a fifth is left.
    const by = h1!.patches.map(({ point: p }) => Math.exp((-2 * off(p) ** 2) / 0.04 ** 2));
    const most = Math.max(...by);
    h1!.light.forEach((v, i) => { expect(Math.abs(v - by[i]! / most)).toBeLessThan(0.002); });
    expect(Math.min(...h1!.light)).toBeLessThan(0.25);
  });
  test('records by the way from each part of it', () => {
    h1!.patches.forEach(({ point: p }, i) => { expect(Math.abs(h1!.bright![i]! / h1!.light[i]! - recorded(Math.hypot(0.3, off(p)) - 0.3, 0.002))).toBeLessThan(0.005); });
  });
  test('is said to be what is drawn', () => {
    const d = drawn(results(transfer()), 'pair');
    expect(d.sheet.title).toBe('Whelk, transfer: H1 as P1 sees it');
    expect(d.items!.map(i => i.words)).toEqual(['hologram H1, as P1 sees it']);
    expect(said(d)).toContain('The image of H1 is not drawn');
    expect(said(d)).not.toContain('Surfaces count as dull');
  });
});

test.each([
  ['a hologram without a size', transfer(''), 'How large H1 is, is not written: give it a “size”.'],
  ['a hologram without a place', transfer().replace('hologram H1 at (0, 0) mm facing P1', 'hologram H1').replace(' facing H1', ' heading 270°'), 'What P1 sees of H1 is known where both stand somewhere.'],
  ['ground glass without a size', soft({ spread: true, glass: [] }), 'How large GG1 is, is not written: give it a “size”.'],
  ['ground glass without a place', soft().replace('ground glass GG1 at (-150, 0) mm', 'ground glass GG1'), 'What P1 sees of ball is known where ball, P1, GG1 all stand somewhere.'],
  ['ground glass as what is recorded', soft().replace('    -> ball\n', '').replace('facing ball', 'heading 270°'), 'P1 sees the light of GG1, and not an object.'],
])('why there is none is said of %s', (_, text, words) => { for (const view of ['object', 'pair']) expect(viewNamed(view)!.of(results(text), {})).toBe(words); });
