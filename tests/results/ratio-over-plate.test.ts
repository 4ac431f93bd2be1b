/** Beam ratio over a plate, against both lights by hand: a point source with a Gaussian profile, and a small flat object that scatters by the cosine. */
import { expect, test } from 'vitest';
import { expectNear, read, setup } from './read.ts';

type V = readonly [number, number, number];
const less = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const size = (v: V): number => Math.sqrt(dot(v, v));

const page = (things: string): string => setup(
  'table: 1500 x 1200 mm', 'beam height: 120 mm', 'laser red at (100, 100) mm heading 0° {', '  wavelength: 632.8 nm', '  power: 12 mW', '  beam diameter: 1.4 mm', '}', 'splitter S1 at (350, 100) mm {', '  reflects: 90%', '}',
  'mirror M1 at (1200, 100) mm', 'spreader R1 on M1 -> P1 by 60 mm {', '  focal length: 3 mm', '}', 'mirror M2 at (100, 450) mm', 'mirror M3 at (550, 950) mm', 'spreader R2 on M3 -> shard by 30 mm {', '  focal length: 4 mm', '}',
  things, 'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> R1', '  -> P1', 'beam object from S1 reflected', '  -> M2', '  -> M3', '  -> R2', '  -> shard', '  -> P1',
);
const SHARD = 'object shard at (700, 600) mm {\n  shape: box\n  size: 1 x 1 x 0.01 mm\n  tone: 40%\n  gloss: 0%\n}\nplate P1 at (700, 800) mm facing shard {\n  size: 120 x 90 mm\n}';

const PLATE: V = [700, 800, 0];
// The beam spreads from a point 3 mm behind the lens (past it for whoever follows the light), 60 mm behind M1.
const way = less(PLATE, [1200, 100, 0]);
const along = (d: number): V => [1200 + (way[0] / size(way)) * d, 100 + (way[1] / size(way)) * d, 0];
const [source, axis]: [V, V] = [along(63), [way[0] / size(way), way[1] / size(way), 0]];
// w = r z / f (physics of thin lenses: r the radius on the lens, z from the focus); light on the plate: exp(−2ρ²/w²)/w² · cos θ / cos β.
const radius = 0.7 * Math.sqrt(1 + ((60 + 250 + 850) / (Math.PI * 0.7 ** 2 / 632.8e-6)) ** 2);
const reference = (p: V): number => {
  const ray = less(p, source);
  const z = dot(ray, axis);
  const w = (radius * z) / 3;
  return (Math.exp((-2 * (dot(ray, ray) - z * z)) / w ** 2) / w ** 2) * (Math.abs(ray[1]) / size(ray)) / (z / size(ray));
};
/** Of a small flat thing that faces the middle of the plate: cosine at it, cosine at the plate, and the square of the distance. */
const scattered = (from: V) => (p: V): number => { const [ray, sight] = [less(p, from), less(PLATE, from)]; return (dot(ray, sight) / size(ray) / size(sight)) * (ray[1] / size(ray)) / dot(ray, ray); };
const NET = [-60, 0, 60].flatMap(x => [-45, 0, 45].map((z): V => [700 + x, 800, z]));

test('is that of both lights at its corners, its edges and its middle', () => {
  const r = read(page(SHARD));
  const object = scattered([700, 600, 0]);
  const shares = NET.map(p => reference(p) / object(p) / (reference(PLATE) / object(PLATE)));
  // The beam's own waist and the depth of the shard leave some parts in a thousand.
  const told = (end: string): number => r.results.graph.value(r.results.ask(`P1.object.${end} ratio across the plate`)!)!;
  expectNear(told('least'), Math.min(...shares), 0.01, 'least');
  expectNear(told('greatest'), Math.max(...shares), 0.01, 'greatest');
  expect(Math.max(...shares)).toBeGreaterThan(1.1);
});

test('of several object beams is that of all their light: each falls off as it does, from what it brings to the middle', () => {
  const [a, b]: [V, V] = [[640, 640, 0], [800, 560, 0]];
  const flat = (name: string, [x, y]: V): string => `object ${name} at (${x}, ${y}) mm {\n  shape: box\n  size: 1 x 1 x 0.01 mm\n  tone: 40%\n  gloss: 0%\n}`;
  const r = read(page(`${flat('shard', a)}\n${flat('sherd', b)}\nplate P1 at (700, 800) mm heading 270° {\n  size: 120 x 90 mm\n}\nsplitter S2 at (300, 750) mm {\n  reflects: 50%\n}\nmirror M4 at (900, 980) mm\nspreader R3 on M4 -> sherd by 30 mm {\n  focal length: 4 mm\n}`)
    .replace(/beam object from S1 reflected[^]*?-> shard\n *-> P1/, 'beam split from S1 reflected\n  -> M2\n  -> S2\nbeam key from S2 through\n  -> M3\n  -> R2\n  -> shard\n  -> P1\nbeam fill from S2 reflected\n  -> M4\n  -> R3\n  -> sherd\n  -> P1'));
  const told = (name: string): number => { const cell = (r.results.ask(name) ?? r.results.graph.find(name))!; expect(cell.missing, name).toBeUndefined(); return r.results.graph.value(cell)!; };
  const light = (p: V): number => (told('P1.key.light') * scattered(a)(p)) / scattered(a)(PLATE) + (told('P1.fill.light') * scattered(b)(p)) / scattered(b)(PLATE);
  const shares = NET.map(p => reference(p) / light(p) / (reference(PLATE) / light(PLATE)));
  expectNear(told('P1.least ratio across the plate'), Math.min(...shares), 0.01, 'least');
  expectNear(told('P1.greatest ratio across the plate'), Math.max(...shares), 0.01, 'greatest');
  // Neither of the two alone would do.
  for (const one of [a, b]) expect(Math.abs(Math.max(...NET.map(p => (reference(p) / scattered(one)(p)) / (reference(PLATE) / scattered(one)(PLATE)))) - Math.max(...shares))).toBeGreaterThan(0.02);
});

test('is not told of an object whose size nobody wrote', () => {
  const r = read(page(SHARD.replace('  size: 1 x 1 x 0.01 mm\n', '').replace('  shape: box\n', '')));
  expect(r.results.light.over(r.results.setup.things.get('P1')!)).toBeUndefined();
});
