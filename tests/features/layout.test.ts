/** Layouts of setups without places, held against plain geometry: places, lengths and angles are worked out here from the text that is written. */
import { describe, expect, it } from 'vitest';
import { alone, analyse, type Snapshot } from '../../server/analysis.ts';
import { layoutsOf, layoutWords, type Layout, type Layouts } from '../../server/features/layout/layouts.ts';
import { applyEdits } from '../../server/model/edits.ts';

const URI = 'file:///saltmarsh/limpet.plate';
const things = `  shutter gate
  splitter S1
  mirror M1
  spreader R1 {
    focal length: 4.5 mm
  }
  mirror M2
  mirror M3
  spreader R2 {
    focal length: 6 mm
  }
  object limpet { // from the north beach
    size: 40 x 30 x 40 mm
  }
  plate P1 {
    size: 63 x 63 mm
  }
`;
const page = ({ hologram = 'transmission', table = '1200 x 900', more = '' } = {}): string => `setup "Limpet" {
  hologram: ${hologram}
  table: ${table} mm
  hole spacing: 25 mm
  laser red {
    wavelength: 632.8 nm
    coherence length: 200 mm
    beam diameter: 0.8 mm
  }
${things}${more}  beam raw from red
    -> gate
    -> S1
  beam reference from S1 through
    -> M1
    -> R1
    -> P1
  beam object from S1 reflected
    -> M2
    -> M3
    -> R2
    -> limpet
    -> P1
}
`;
const look = (text: string): Snapshot => analyse(URI, text);
function lay(text: string): Layouts & { readonly text: string } {
  const s = look(text);
  return { ...layoutsOf(s, s.results[0]!, alone), text };
}

type Point = readonly [number, number];
function placesIn(text: string): Map<string, Point> {
  return new Map([...text.matchAll(/^ {2}(?:laser|splitter|mirror|object|plate) (\S+) at \((-?\d+), (-?\d+)\) mm/gm)].map(m => [m[1]!, [Number(m[2]), Number(m[3])]]));
}
const far = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
/** Between two things as seen from a third, degrees, by the law of cosines. */
function seen(from: Point, a: Point, b: Point): number {
  const [p, q, r] = [far(from, a), far(from, b), far(a, b)];
  return (Math.acos((p * p + q * q - r * r) / (2 * p * q)) * 180) / Math.PI;
}
/** Of a point from a stretch, by steps along it. */
const passes = (a: Point, b: Point, p: Point): number => Math.min(...Array.from({ length: 201 }, (_, i) => far([a[0] + (i / 200) * (b[0] - a[0]), a[1] + (i / 200) * (b[1] - a[1])], p)));

function hold({ edits }: Layout, text: string, [w, h]: Point): Map<string, Point> {
  const laid = applyEdits(text, edits);
  const at = placesIn(laid);
  const of = (name: string): Point => at.get(name)!;
  expect([...at.keys()].sort()).toEqual(['M1', 'M2', 'M3', 'P1', 'S1', 'limpet', 'red']);
  for (const [x, y] of at.values()) {
    expect([x % 25, y % 25]).toEqual([0, 0]);
    expect(x >= 0 && y >= 0 && x <= w && y <= h).toBe(true);
  }
  // Behind S1 the reference goes straight on.
  expect(seen(of('S1'), of('red'), of('M1'))).toBeCloseTo(180, 4);
  const object = far(of('S1'), of('M2')) + far(of('M2'), of('M3')) + far(of('M3'), of('limpet')) + far(of('limpet'), of('P1'));
  const reference = far(of('S1'), of('M1')) + far(of('M1'), of('P1'));
  expect(Math.abs(object - reference)).toBeLessThanOrEqual(3);
  // Lit from the front.
  expect(seen(of('limpet'), of('P1'), of('M3'))).toBeLessThan(60);
  const ways = [['red', 'S1'], ['S1', 'M1'], ['M1', 'P1'], ['S1', 'M2'], ['M2', 'M3'], ['M3', 'limpet'], ['limpet', 'P1']] as const;
  for (const [a, b] of ways) for (const [name, p] of at) if (name !== a && name !== b) expect(passes(of(a), of(b), p), `${name} beside ${a} → ${b}`).toBeGreaterThan(25);
  expect(look(laid).findings.filter(f => f.severity === 'error' || f.severity === 'warning')).toEqual([]);
  // All else stands as it stood.
  expect(laid.replace(/ (?:at \([^)]*\) mm(?: heading 0°| facing limpet)?|on \S+ -> \S+ by \d+ mm)(?=$| \{)/gm, '')).toBe(text);
  return at;
}

describe('a layout', () => {
  it('is on holes and on the table, has matched paths, lights the object from the front, has nothing in its light, and no warning', () => {
    const { found, why, text } = lay(page());
    expect([found.length, why]).toEqual([3, undefined]);
    const all = found.map(l => hold(l, text, [1200, 900]));
    for (const at of all) { const angle = seen(at.get('P1')!, at.get('limpet')!, at.get('M1')!); expect(angle > 29 && angle < 56).toBe(true); }
    // Three that differ.
    all.forEach((a, i) => { for (const b of all.slice(0, i)) expect(Math.max(...[...a].map(([name, p]) => far(p, b.get(name)!)))).toBeGreaterThanOrEqual(150); });
    expect(layoutWords(found[0]!)).toMatch(/^mismatch [\d.]+ mm, reference angle [\d.]+°, lighting angle [\d.]+°$/);
  });
  it('is the same each time', () => { expect(lay(page()).found.map(l => [...l.written])).toEqual(lay(page()).found.map(l => [...l.written])); });
  it('of a reflection hologram has its reference come from behind, at the angle of the lamp that will show it', () => {
    const { found, text } = lay(page({ hologram: 'reflection', more: '  lamp spot {\n    angle: 45°\n  }\n' }));
    expect(found.length).toBeGreaterThan(0);
    for (const l of found) { const at = hold(l, text, [1200, 900]); expect(Math.abs(180 - seen(at.get('P1')!, at.get('limpet')!, at.get('M1')!) - 45)).toBeLessThan(1.1); }
  });
  it('has the angle that the plate is written with', () => {
    const { found, text } = lay(page().replace('63 x 63 mm', '63 x 63 mm\n    reference angle: 35°'));
    expect(found.length).toBeGreaterThan(0);
    for (const l of found) { const at = hold(l, text, [1200, 900]); expect(Math.abs(seen(at.get('P1')!, at.get('limpet')!, at.get('M1')!) - 35)).toBeLessThan(1.1); }
  });
  it('of one beam puts the object behind the plate', () => {
    const text = 'setup "Oyster" {\n  table: 1200 x 600 mm\n  laser red {\n    wavelength: 632.8 nm\n    coherence length: 200 mm\n    beam diameter: 0.8 mm\n  }\n  mirror M1\n  spreader R1 {\n    focal length: 4.5 mm\n  }\n  plate P1 {\n    size: 63 x 63 mm\n  }\n  object oyster {\n    size: 40 x 40 x 15 mm\n  }\n  beam all from red\n    -> M1\n    -> R1\n    -> P1 through\n    -> oyster\n    -> P1\n}\n';
    const { found, why } = lay(text);
    if (found.length === 0) expect(why).toMatch(/^(?:nothing was found|of \d+ tries)/);
    for (const l of found) expect(look(applyEdits(text, l.edits)).findings.filter(f => f.severity === 'error' || f.severity === 'warning')).toEqual([]);
  });
});

describe('no layout', () => {
  it.each<[string, string, RegExp]>([
    ['something has a place', page().replace('mirror M1\n', 'mirror M1 at (500, 500) mm\n'), /^M1 has a place already/],
    ['a leg has a length', page().replace('    -> M1\n', '    -> M1: 500 mm\n'), /^the leg to M1 has a length/],
    ['no light comes to a plate', 'setup "Empty" {\n  laser red\n  plate P1\n}\n', /^no beam leads/],
    ['the table is too small', page({ table: '300 x 200' }), /^(?:nothing was found in \d+ tries on a table of 300 x 200 mm|of \d+ tries)/],
  ])('where %s, and it says so', (_, text, why) => {
    const l = lay(text);
    expect(l.found).toEqual([]);
    expect(l.why).toMatch(why);
  });
});
