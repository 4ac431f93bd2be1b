/** A finished hologram as it hangs: places in mm by hand. */
import { expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import type { Mark } from '../../server/drawing/marks.ts';
import { viewNamed } from '../../server/drawing/views.ts';
import { all } from './all-marks.ts';

const page = (lamp: string, viewer = 'distance: 600 mm', more = ''): string => `setup "Limpet" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1
  object limpet {
    size: 40 x 30 mm
  }
  plate P1 {
    size: 100 x 100 mm
    reference angle: 30°
    object angle: 0°
    reference distance: parallel
  }
${lamp === '' ? '' : `  lamp spot {\n${lamp.split('; ').map(f => `    ${f}\n`).join('')}  }\n`}  viewer visitor {
    ${viewer}
  }
${more}  beam raw from red
    -> S1: 300 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> limpet: 1300 mm
    -> P1: 200 mm
}
`;
const marks = (text: string): Mark[] | string => { const of = viewNamed('hung')!.of(analyse('file:///saltmarsh/a.plate', text).results[0]!, {}); return typeof of === 'string' ? of : all(of().sheet.marks); };
const drawn = (text: string): Mark[] => { const m = marks(text); if (typeof m === 'string') throw new Error(m); return m; };
const item = (m: Mark[], id: string, tag: string): Mark => all(m.find(x => x.attributes['data-item'] === id)!.children).find(x => x.tag === tag)!;
const texts = (m: Mark[]): string[] => m.flatMap(x => (x.tag === 'text' ? [x.text!] : []));

test('the lamp stands behind a transmission hologram, above it, and the viewer before it', () => {
  const m = drawn(page('distance: 1000 mm; angle: 30°; laser: red; beam: parallel'));
  // cos 30° = 0.866025, sin 30° = 0.5
  const lamp = item(m, 'spot', 'circle').attributes;
  const plate = item(m, 'P1', 'line').attributes;
  // The plate is 100 mm high.
  const unit = (Number(plate['y2']) - Number(plate['y1'])) / 100;
  expect([Number(lamp['cx']) / unit, Number(lamp['cy']) / unit]).toEqual([expect.closeTo(-866.03, -1), expect.closeTo(-500, -1)]);
  expect(texts(m).join(' ')).toContain('image, 200 mm behind the plate');
  expect(texts(m).join(' ')).toContain('visitor, eyes 600 mm from the plate');
});
test('each eye sees the image aside by its share of the way', () => {
  // The plate is 100 mm wide; the image 40 mm wide at 200 mm, from 600 mm: 30 mm wide in the plane of the plate, its middle 32.5 · 200/800 = 8.125 mm aside, to the left for the left eye.
  const m = drawn(page('distance: 1000 mm; angle: 30°; laser: red; beam: parallel'));
  const rects = (name: string): Record<string, string>[] => m.filter(x => x.attributes['class'] === name).map(x => x.attributes);
  const [plates, images] = [rects('night'), rects('lit')];
  const unit = Number(plates[0]!['width']) / 100;
  const aside = plates.map((p, i) => (Number(images[i]!['x']) + Number(images[i]!['width']) / 2 - Number(p['x']) - Number(p['width']) / 2) / unit);
  expect(aside).toEqual([expect.closeTo(-8.125, 1), expect.closeTo(8.125, 1)]);
  expect(Number(images[0]!['width']) / unit).toBeCloseTo(30, 1);
});
test('heights count from the floor', () => {
  const m = drawn(page('distance: 1000 mm; height: 2000 mm; laser: red', 'distance: 600 mm', '  wall hall {\n    height: 1500 mm\n  }\n'));
  expect(texts(m).join(' ')).toContain('spot, 1000 mm from the plate, 2000 mm above the floor');
  expect(texts(m).join(' ')).toContain('Fix spot 866 mm behind the middle of the plate and 500 mm higher.');
});
test('is as wide as a narrow panel, and its letters are read there: 9 of 300 points across', () => {
  for (const lamp of ['distance: 200 mm; angle: 80°; laser: red', 'distance: 6000 mm; angle: 30°; laser: red', 'distance: 1000 mm; angle: 89°; laser: red']) {
    const view = viewNamed('hung')!.of(analyse('file:///saltmarsh/a.plate', page(lamp)).results[0]!, {});
    if (typeof view === 'string') throw new Error(view);
    const { sheet: { box, marks: own } } = view();
    const letters = all(own).filter(x => x.tag === 'text');
    expect(Math.min(...letters.map(x => (Number(x.attributes['font-size']) * 300) / box.w))).toBeGreaterThan(8.4);
    // Nothing hangs out of the sheet, and no words stand on others.
    const spans = letters.map(x => ({ x: Number(x.attributes['x']), y: Number(x.attributes['y']), text: x.text! }));
    for (const s of spans) { expect(s.x).toBeGreaterThan(box.x); expect(s.x).toBeLessThan(box.x + box.w); expect(s.y).toBeGreaterThan(box.y); expect(s.y).toBeLessThan(box.y + box.h); }
    expect(new Set(spans.map(s => `${Math.round(s.x)} ${Math.round(s.y)}`)).size).toBe(spans.length);
  }
});
test('without a lamp it cannot be drawn, and the words say what to write', () => expect(marks(page(''))).toMatch(/Write a “lamp”/));

test('of one on which several lasers recorded each can be chosen, the first by default', () => {
  const two = page('distance: 1.5 m; angle: 30°').replace('  splitter S1\n', '  laser green {\n    wavelength: 532.1 nm\n    coherence length: 5 m\n  }\n  splitter S1\n  splitter S2\n')
    .replace(/\}\n$/, '  beam raw-green from green\n    -> S2: 300 mm\n  beam reference-green from S2 through\n    -> P1: 1500 mm\n  beam object-green from S2 reflected\n    -> limpet: 1300 mm\n    -> P1: 200 mm\n}\n');
  const of = (plate?: string): { plate?: string | undefined; choices?: readonly string[] | undefined } => { const made = viewNamed('hung')!.of(analyse('file:///saltmarsh/a.plate', two).results[0]!, plate === undefined ? {} : { plate }); if (typeof made === 'string') throw new Error(made); return made(); };
  expect(of().choices).toEqual(['P1, in red', 'P1, in green']);
  expect([of().plate, of('P1').plate, of('P1, in green').plate]).toEqual(['P1, in red', 'P1, in red', 'P1, in green']);
});
