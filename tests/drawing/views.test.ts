/** The other pictures of a setup: from the side, and its arms unrolled. Expected places are the figures of the texts, in mm. */
import { describe, expect, test } from 'vitest';
import { analyse } from '../../server/analysis.ts';
import type { Mark } from '../../server/drawing/marks.ts';
import { svgOf } from '../../server/drawing/svg.ts';
import type { Drawn } from '../../server/drawing/view.ts';
import { viewNamed, VIEWS } from '../../server/drawing/views.ts';
import { disk, EXAMPLES } from '../examples/library.ts';
import { whelk } from '../features/source.ts';
import { all } from './all-marks.ts';

const view = (name: string, text: string): Drawn | string => { const made = viewNamed(name)!.of(analyse('file:///saltmarsh/setup.plate', text).results[0]!, {}); return typeof made === 'string' ? made : made(); };
const drawn = (name: string, text: string): Drawn => { const d = view(name, text); if (typeof d === 'string') throw new Error(d); return d; };
const texts = (d: Drawn): string[] => all(d.sheet.marks).flatMap(m => (m.tag === 'text' ? [m.text!] : []));
const ofClass = (d: Drawn, name: string): Mark[] => all(d.sheet.marks).filter(m => m.attributes['class']?.split(' ').includes(name));

describe('arms unrolled', () => {
  // reference 750 + 721 = 1471 mm; object 410 + 377 + 468 + 300 = 1555 mm
  test('are strips of legs to one scale, from where they part', () => {
    const strips = (role: string): number[][] => ofClass(drawn('arms', whelk), `strip-${role}`).map(m => [Number(m.attributes['x']), Number(m.attributes['width'])]);
    expect(strips('reference')).toEqual([[0, 750], [750, 721]]);
    expect(strips('object')).toEqual([[0, 410], [410, 377], [787, 468], [1255, 300]]);
  });
  test('show the mismatch as what stands out', () => {
    const d = drawn('arms', whelk);
    expect(ofClass(d, 'gap').map(m => /M(\d+) [\d.]+H(\d+)/.exec(m.attributes['d']!)!.slice(1).map(Number))).toEqual([[1471, 1555]]);
    expect(texts(d).filter(t => t.includes('mismatch'))).toEqual([expect.stringMatching(/^longer than the reference: mismatch 84 ± \d mm$/)]);
    expect(Number(ofClass(d, 'guide')[0]!.attributes['x1'])).toBe(1471);
  });
  test('of arms as long as each other have no gap', () => {
    const d = drawn('arms', whelk.replace('468 mm', '384 mm'));
    expect(ofClass(d, 'gap')).toEqual([]);
    expect(texts(d).find(t => t.includes('mismatch'))).toMatch(/^as long as the reference: mismatch 0 ± \d mm$/);
  });
  test('name what each leg ends at, and stand in the text', () => {
    const d = drawn('arms', whelk);
    expect(texts(d)).toEqual(expect.arrayContaining(['S1', 'M1', 'P1', 'M2', 'M3', 'whelk', '750 mm', '468 mm']));
    expect(d.items!.map(i => i.id)).toEqual(['reference.1', 'reference.2', 'object.1', 'object.2', 'object.3', 'object.4']);
  });
  test('without lengths cannot be drawn, and the words say what is missing', () => { expect(view('arms', whelk.replace(': 750 mm ± 2 mm', ''))).toMatch(/^No two arms of a plate in “.*” have lengths on all of their legs\. Write a length/); });
});

describe('from the near side', () => {
  const rising = 'setup "Whelk shell" {\n  table: 1200 x 900 mm\n  beam height: 120 mm\n  laser red at (0, 300) mm heading 0°\n  mirror M1 at (500, 300) mm\n  beam stop B1 at (500, 300, 700) mm\n  beam raw from red\n    -> M1\n    -> B1\n}\n';
  test('light rises as it is written, over the top of the table', () => {
    const d = drawn('side', rising);
    expect(ofClass(d, 'light').map(m => ['x1', 'y1', 'x2', 'y2'].map(k => Number(m.attributes[k])))).toEqual([[0, -120, 500, -120], [500, -120, 500, -700]]);
    expect(texts(d)).toContain('B1 stands at 700 mm');
  });
  test('there is nothing to see where all is level', () => { expect(view('side', rising.replace('(500, 300, 700)', '(500, 700)'))).toMatch(/all beams run at one height/); });
});

describe('every picture of every example', () => {
  const MADE = EXAMPLES.flatMap(e => analyse(e.uri, e.text, disk).results.flatMap(r => VIEWS.flatMap(v => { const of = v.of(r, {}); return typeof of === 'string' ? [] : [[`${e.name}, ${r.setup.name}, ${v.name}`, of] as const]; })));
  test.each(MADE)('%s: its marks of the text stand in it, its classes have a look, and it is the same each time', (_, of) => {
    const d = of();
    const ids = new Set(all(d.sheet.marks).flatMap(m => m.attributes['data-item'] ?? []));
    for (const i of d.items ?? []) expect(ids.has(i.id), i.id).toBe(true);
    const svg = svgOf(d.sheet);
    expect(svg).toBe(svgOf(of().sheet));
    expect(svg).not.toMatch(/NaN|Infinity|undefined|null|[\d)]e-\d/);
    const { x, y, w, h } = d.sheet.box;
    for (const m of all(d.sheet.marks)) if (m.tag === 'text' && m.attributes['transform'] === undefined && m.attributes['class']?.startsWith('letter') && !m.attributes['class'].includes('halo')) {
      expect(Number(m.attributes['x']), m.text).toBeGreaterThanOrEqual(x);
      expect(Number(m.attributes['x'])).toBeLessThanOrEqual(x + w);
      expect(Number(m.attributes['y'])).toBeGreaterThanOrEqual(y);
      expect(Number(m.attributes['y'])).toBeLessThanOrEqual(y + h);
    }
  });
});
