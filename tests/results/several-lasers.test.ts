/** A plate in the light of several lasers: each records by itself, as it would alone; all of their light exposes; and their images lie on each other or not. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { imagesApart } from '../../server/optics/replay/apart.ts';
import { read, type Read } from './read.ts';

interface Colour { readonly id: string; readonly nm: number; readonly mw: number; readonly reference: number; readonly object: number }
const RED: Colour = { id: 'red', nm: 632.8, mw: 12, reference: 1000, object: 700 };
const GREEN: Colour = { id: 'green', nm: 532.1, mw: 50, reference: 500, object: 650 };
const things = ({ id, nm, mw }: Colour): string => `  laser ${id} {
    wavelength: ${nm} nm
    coherence length: 5 m
    power: ${mw} mW ± 5%
    beam diameter: 0.8 mm
    polarization: vertical
  }
  splitter S-${id} {
    reflects: 30%
  }
  spreader R-${id} {
    focal length: 5 mm
  }
  spreader O-${id} {
    focal length: 8 mm
  }
`;
const beams = ({ id, reference, object }: Colour): string => `  beam raw-${id} from ${id}
    -> S-${id}: 300 mm
  beam reference-${id} from S-${id} reflected
    -> R-${id}: 300 mm
    -> P1: ${reference} mm
  beam object-${id} from S-${id} through
    -> O-${id}: 300 mm
    -> tile: ${object} mm
    -> P1: 60 mm
`;
const page = (colours: readonly Colour[], more = '', hologram = 'reflection'): Read => read(`setup "Glazed tile" {
  hologram: ${hologram}
${colours.map(things).join('')}  object tile {
    size: 40 x 40 x 10 mm
    tone: 40% ± 5 points
  }
  plate P1 {
    size: 63 x 63 mm
    sensitivity: 100 µJ/cm²
    reference angle: 45°
  }
${colours.map(beams).join('')}${more}}
`);

describe('light', () => {
  const SAME = ['mismatch', 'ratio loss', 'fringes', 'angle', 'corner light', 'polarization'];
  it('is told for each laser as on a page that has no other', () => {
    const both = page([RED, GREEN]);
    for (const colour of [RED, GREEN]) {
      const alone = page([colour]);
      for (const what of ['beam ratio', 'reference.light', 'object.light', 'light']) expect(both.value(`P1.${colour.id}.${what}`), what).toBeCloseTo(alone.value(`P1.${what}`), 9);
      for (const arm of ['reference', 'object']) for (const what of SAME) {
        const name = `P1.${arm}-${colour.id}.${what}`;
        const [a, b] = [both.results.ask(name), alone.results.ask(name)];
        expect(a && both.results.graph.value(a), name).toEqual(b && alone.results.graph.value(b));
      }
      expect(both.value(`P1.${colour.id}.exposure time`)).toBeCloseTo(alone.value('P1.exposure time'), 9);
    }
  });
  it('and what is wrong with the light of one is found beside the other, once', () => {
    const codes = (r: Read): string[] => r.snapshot.findings.filter(f => f.severity !== 'hint').map(f => f.code).sort();
    // The green reference spreads over half the way: its corner is dark, whoever else lights the plate.
    expect(codes(page([RED]))).not.toContain('corners-dark');
    expect(codes(page([GREEN]))).toContain('corners-dark');
    const [both, either] = [codes(page([RED, GREEN])), new Set([...codes(page([RED])), ...codes(page([GREEN]))])];
    expect(both.filter(c => c === 'corners-dark')).toHaveLength(1);
    expect(both.filter(c => !either.has(c) && c !== 'exposure-hard-to-time')).toEqual([]);
  });
  it('of all of them exposes the plate: 1/t is the sum of 1/t of each', () => {
    const both = page([RED, GREEN]);
    const [red, green] = [both.value('P1.red.exposure time'), both.value('P1.green.exposure time')];
    expect(1 / both.value('P1.exposure time')).toBeCloseTo(1 / red + 1 / green, 12);
    expect(both.value('P1.light')).toBeCloseTo(both.value('P1.red.light') + both.value('P1.green.light'), 12);
  });
  it('leaves each of them the square of its share of the light', () => {
    const both = page([RED, GREEN]);
    for (const colour of [RED, GREEN]) {
      const name = `P1.object-${colour.id}.recorded brightness`;
      expect(both.value(name)).toBeCloseTo(page([colour]).value(name) * (both.value(`P1.${colour.id}.light`) / both.value('P1.light')) ** 2, 9);
    }
  });
  it('read of one beam says nothing of the other laser', () => {
    const reading = '  measured reference-green at P1: 20 µW/cm² ± 5%\n  measured object-green at P1: 5 µW/cm² ± 5%\n';
    const both = page([RED, GREEN], reading);
    // 20 / 5
    expect(both.value('P1.green.beam ratio')).toBeCloseTo(4, 9);
    expect(both.value('P1.red.beam ratio')).toBeCloseTo(page([RED]).value('P1.beam ratio'), 9);
  });
  it('a ratio that is aimed at for one laser sets the splitter of that one', () => {
    const both = page([RED, GREEN], '  aim P1.red.beam ratio: 3:1\n');
    const alone = page([RED], '  aim beam ratio: 3:1\n');
    const [split, own] = [both, alone].map(({ results: r }) => r.graph.value(r.ask('S-red.split for ratio')!));
    expect(both.results.ask('S-green.split for ratio')).toBeUndefined();
    expect(split).toBeGreaterThan(0);
    expect(split).toBeCloseTo(own!, 9);
  });
  it('a short name that could mean either is said to be one', () => {
    expect(page([RED, GREEN], '  expect beam ratio < 5\n').snapshot.findings.map(f => f.code)).toContain('ambiguous-result');
  });
});

describe('the register of the images', () => {
  const SPOT = '  lamp spot {\n    distance: 1000 mm\n    angle: 45°\n  }\n  viewer visitor {\n    distance: 600 mm\n  }\n';
  it('is off where one reference came from half as far', () => {
    // A beam through a lens of 5 mm spreads from 5 mm behind it: red from 995 mm: 1/(1/0.06 − 1/0.995 + 1/1) = 60.018 mm, 60.018/60 = 1.00030 as wide;
    // green from 495 mm: 1/(1/0.06 − 1/0.495 + 1/1) = 63.916 mm, 1.06527 as wide. Edges of the tile, 20 mm aside, seen from 600 mm:
    // red 20.0060 · 600/660.018 = 18.1868, green 21.3053 · 600/663.916 = 19.2543 in the plate; 1.0675 · 660.018/600 = 1.1743 mm at the image of red
    const r = page([RED, GREEN], SPOT);
    expect(r.mm('P1.green.replay.apart')).toBeCloseTo(1.1743, 2);
    expect(r.snapshot.findings.map(f => f.code)).toContain('colours-apart');
  });
  it('is exact where both references came from one place, whatever the layer shrinks', () => {
    const r = page([RED, { ...GREEN, reference: RED.reference }], SPOT);
    // light of another colour leaves the waist of its beam a little otherwise
    expect(r.mm('P1.green.replay.apart')).toBeLessThan(1e-5);
    expect(r.snapshot.findings.map(f => f.code)).not.toContain('colours-apart');
  });
  it('what is wrong with the image of one of them says which', () => {
    // Only green comes from half as far as the lamp stands: 63.9 mm instead of 60 mm is no finding, so let it come from a fifth: 1/(1/0.06 − 1/0.195 + 1) = 79.8 mm, 1.33 times
    const r = page([RED, { ...GREEN, reference: 200 }], SPOT);
    const found = r.snapshot.findings.filter(f => f.code === 'lamp-distance-off');
    expect(found.map(f => f.data['laser'])).toEqual(['green']);
    expect(found[0]!.message).toContain('P1 in green');
  });
  it('a lamp of one colour shows the recording in that colour', () => {
    const of = (wavelength: string): (string | undefined)[] => page([RED, GREEN], `  lamp spot {\n    distance: 1000 mm\n    angle: 45°\n    wavelength: ${wavelength}\n  }\n`).results.replay.all.map(s => s.laser?.id);
    expect([of('630 nm'), of('530 nm')]).toEqual([['red'], ['green']]);
    expect(page([RED, GREEN], '  lamp bench {\n    distance: 500 mm\n    angle: 45°\n    laser: green\n  }\n').results.replay.all.map(s => s.laser?.id)).toEqual(['green']);
  });
  test('of an image with itself is none, and of two the same from either', () => {
    const image = fc.record({ distance: fc.double({ min: -0.4, max: 2, noNaN: true }), angle: fc.double({ min: -1, max: 1, noNaN: true }), width: fc.double({ min: 0.1, max: 5, noNaN: true }) });
    fc.assert(fc.property(image, image, fc.double({ min: -1, max: 1, noNaN: true }), (a, b, angle) => {
      const eye = { distance: 0.6, angle };
      expect(imagesApart(a, a, eye, 0.02)).toBe(0);
      const at = (d: { distance: number; angle: number }): number => Math.max(1e-3, eye.distance * Math.cos(angle) + d.distance * Math.cos(d.angle));
      // in the plate both see the same
      expect(imagesApart(a, b, eye, 0.02) / at(a)).toBeCloseTo(imagesApart(b, a, eye, 0.02) / at(b), 9);
    }));
  });
});
