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

test('is that of both lights at its corners, its edges and its middle', () => {
  const r = read(page(SHARD));
  const [object, plate]: [V, V] = [[700, 600, 0], [700, 800, 0]];
  // The beam spreads from a point 3 mm behind the lens (past it for whoever follows the light), 60 mm behind M1.
  const way = less(plate, [1200, 100, 0]);
  const at = (along: number): V => [1200 + (way[0] / size(way)) * along, 100 + (way[1] / size(way)) * along, 0];
  const [source, axis]: [V, V] = [at(63), [way[0] / size(way), way[1] / size(way), 0]];
  // w = r z / f (physics of thin lenses: r the radius on the lens, z from the focus); light on the plate: exp(−2ρ²/w²)/w² · cos θ / cos β.
  const radius = 0.7 * Math.sqrt(1 + ((60 + 250 + 850) / (Math.PI * 0.7 ** 2 / 632.8e-6)) ** 2);
  const reference = (p: V): number => {
    const ray = less(p, source);
    const z = dot(ray, axis);
    const w = (radius * z) / 3;
    return (Math.exp((-2 * (dot(ray, ray) - z * z)) / w ** 2) / w ** 2) * (Math.abs(ray[1]) / size(ray)) / (z / size(ray));
  };
  // Cosine at the object, cosine at the plate, and the square of the distance: cos⁴ over the square of the distance along the line of sight.
  const scattered = (p: V): number => { const ray = less(p, object); return (ray[1] / size(ray)) ** 2 / dot(ray, ray); };
  const shares = [-60, 0, 60].flatMap(x => [-45, 0, 45].map((z): V => [700 + x, 800, z])).map(p => reference(p) / scattered(p) / (reference(plate) / scattered(plate)));
  // The beam's own waist and the depth of the shard leave some parts in a thousand.
  const told = (end: string): number => r.results.graph.value(r.results.ask(`P1.object.${end} ratio across the plate`)!)!;
  expectNear(told('least'), Math.min(...shares), 0.01, 'least');
  expectNear(told('greatest'), Math.max(...shares), 0.01, 'greatest');
  expect(Math.max(...shares)).toBeGreaterThan(1.1);
});

test('is not told of an object whose size nobody wrote', () => {
  const r = read(page(SHARD.replace('  size: 1 x 1 x 0.01 mm\n', '').replace('  shape: box\n', '')));
  expect(r.results.light.over(r.results.setup.things.get('P1')!)).toBeUndefined();
});
