/** Worked table layouts: what is given are coordinates; lengths follow by Pythagoras, angles by the tangent or the scalar product, shown beside each. */
import { describe, expect, test } from 'vitest';
import { expectNear, read, serious, setup, type Read } from './read.ts';

const degrees = (r: Read, name: string): number => (r.value(name) * 180) / Math.PI;
const LASER = ['laser red at (60, 100) mm heading 0° {', '  coherence length: 1 m', '}'];
const incidence = (r: Read, ...things: string[]): string[] => {
  const asked = read(r.snapshot.text.replace(/\}\n$/, `${things.map(t => `  expect ${t}.incidence < 90°\n`).join('')}}\n`));
  return things.map(t => degrees(asked, `${t}.incidence`).toFixed(1));
};

describe('off-axis transmission master, object lit from the front', () => {
  const page = (...more: string[]): Read => read(setup(
    ...LASER, 'splitter S1 at (350, 100) mm', 'mirror M1 at (1100, 100) mm', 'mirror M2 at (94, 420) mm', 'mirror M3 at (400, 640) mm',
    'object whelk at (700, 400) mm {', '  depth: 80 mm', ...more, '}', 'plate P1 at (700, 700) mm facing whelk',
    'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> P1', 'beam object from S1 reflected', '  -> M2', '  -> M3', '  -> whelk', '  -> P1',
  ));
  const r = page();
  test('legs and arms', () => {
    // √(256² + 320²) = 409.8, √(306² + 220²) = 376.9, √(300² + 240²) = 384.2; √(400² + 600²) = 721.1
    expect(['object.1', 'object.2', 'object.3', 'object.4', 'reference.1', 'reference.2'].map(l => r.mm(`${l}.length`).toFixed(1))).toEqual(['409.8', '376.9', '384.2', '300.0', '750.0', '721.1']);
    expect([r.mm('reference length').toFixed(1), r.mm('object length').toFixed(1)]).toEqual(['1471.1', '1470.9']);
    expect(r.mm('mismatch').toFixed(1)).toBe('-0.2');
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
  test('the reference arrives at 33.7°, the object light squarely', () => {
    // atan(400 / 600)
    expect(degrees(r, 'reference angle').toFixed(1)).toBe('33.7');
    expect(degrees(r, 'P1.reference.angle')).toBe(degrees(r, 'reference angle'));
    expectNear(degrees(r, 'object angle'), 0, 1e-9);
  });
  test('angles of incidence on the mirrors', () => { expect(incidence(r, 'S1', 'M1', 'M2', 'M3')).toEqual(['25.7', '28.2', '43.5', '52.8']); });
  test('the light falls on the object at 51.3°, so that ±40 mm of depth make ±65 mm of path', () => {
    // acos(240 / 384.19); 40 mm · (1 + cos 51.3°) = 65 mm
    expect(degrees(r, 'lighting angle').toFixed(1)).toBe('51.3');
    expect([r.mm('P1.object.near.mismatch'), r.mm('P1.object.far.mismatch')].map(x => (x - r.mm('mismatch')).toFixed(0))).toEqual(['-65', '65']);
    expect(r.results.graph.cells.some(c => c.name === 'whelk.lit at')).toBe(false);
  });
  test('from the far side it is lit at 135°, and the depth shrinks deceptively to ±12 mm', () => {
    // M3 at (400, 100): 300 mm to the side and 300 mm beyond the object. 40 mm · (1 − cos 45°) = 11.7 mm
    const far = read(r.snapshot.text.replace('(400, 640)', '(400, 100)'));
    expect(degrees(far, 'lighting angle').toFixed(1)).toBe('135.0');
    expect((far.mm('P1.object.far.mismatch') - far.mm('mismatch')).toFixed(0)).toBe('12');
  });
  test('a written angle wins, and says so where it differs', () => {
    const near = page('  lit at: 50° ± 2°');
    expect(degrees(near, 'whelk.lit at').toFixed(0)).toBe('50');
    expectNear(near.mm('P1.object.far.mismatch') - near.mm('mismatch'), 40 * (1 + Math.cos((50 * Math.PI) / 180)), 1e-9);
    expect(serious(near.snapshot.findings)).toEqual([]);
    expect(serious(page('  lit at: 90° ± 2°').snapshot.findings)).toEqual(['11 two-angles']);
    expect(serious(page('  lit at: 90° ± 40°').snapshot.findings)).toEqual([]);
  });
  test('a spreader on the leg changes neither length nor angle', () => {
    const spread = read(r.snapshot.text.replace('  object whelk', '  spreader R2 on M3 -> whelk by 30 mm\n  object whelk').replace('    -> whelk\n', '    -> R2\n    -> whelk\n'));
    for (const name of ['object length', 'lighting angle', 'reference angle']) expectNear(spread.value(name), r.value(name), 1e-12, name);
    expectNear(spread.mm('object.4.length'), r.mm('object.3.length') - 30, 1e-9);
  });
});

describe('single-beam reflection', () => {
  // Light from a mirror 606 mm above the plate's middle and 400 mm before it: atan(606 / 400) = 56.573°.
  const page = (depth: number): Read => read(setup(
    'beam height: 150 mm', 'laser red at (60, 300) mm heading 0° {', '  coherence length: 1 m', '}', 'mirror M1 at (500, 300) mm', 'mirror M2 at (500, 300, 756) mm', 'plate P1 at (900, 300) mm heading 180°',
    `object oyster at (900.001, 300) mm {`, `  depth: ${depth} mm`, '}', 'beam all from red', '  -> M1', '  -> M2', '  -> P1 through', '  -> oyster', '  -> P1',
  ));
  test('30 mm of depth behind a plate lit at 56.57° are 46.5 mm of path', () => {
    const r = page(30);
    expect(degrees(r, 'reference angle').toFixed(2)).toBe('56.57');
    expect(degrees(r, 'lighting angle').toFixed(2)).toBe('56.57');
    expect((r.mm('P1.object.far.mismatch') - r.mm('P1.object.near.mismatch')).toFixed(1)).toBe('46.5');
    expectNear(r.mm('all.3.length'), Math.hypot(606, 400), 1e-9);
  });
  test('the light falls on the object from the mirror, through the plate', () => {
    const r = read(page(30).snapshot.text.replace('900.001', '950'));
    expectNear(degrees(r, 'lighting angle'), (Math.atan(606 / 450) * 180) / Math.PI, 1e-9);
  });
});

test('split-beam reflection, object lit past the edge of the plate', () => {
  const r = read(setup(
    'laser red at (50, 200) mm heading 0° {', '  coherence length: 1 m', '}', 'splitter S1 at (150, 200) mm', 'mirror Ma at (150, 675.5) mm', 'mirror Mr at (450, 250) mm', 'mirror Mo1 at (550, 200) mm', 'mirror Mo2 at (620, 760) mm',
    'object shard at (780, 500) mm {', '  depth: 20 mm', '}', 'plate P1 at (700, 500) mm heading 180°',
    'beam raw from red', '  -> S1', 'beam reference from S1 reflected', '  -> Ma', '  -> Mr', '  -> P1', 'beam object from S1 through', '  -> Mo1', '  -> Mo2', '  -> shard', '  -> P1',
  ));
  expect(['reference.1', 'reference.2', 'reference.3', 'object.1', 'object.2', 'object.3', 'object.4'].map(l => r.mm(`${l}.length`).toFixed(1))).toEqual(['475.5', '520.6', '353.6', '400.0', '564.4', '305.3', '80.0']);
  expect([r.mm('reference length').toFixed(1), r.mm('object length').toFixed(1)]).toEqual(['1349.7', '1349.6']);
  // From 250 mm to the left and 250 mm below: 45°, from the other side than the object. acos(160 / 305.3) = 58.4°.
  expect([degrees(r, 'reference angle').toFixed(1), degrees(r, 'object angle').toFixed(1), degrees(r, 'lighting angle').toFixed(1)]).toEqual(['45.0', '0.0', '58.4']);
  // The splitter turns the light by a right angle.
  expect(incidence(r, 'S1')).toEqual(['45.0']);
});

test('a transparency lit from behind through a ground glass', () => {
  const r = read(setup(
    'laser red at (60, 150) mm heading 0° {', '  coherence length: 1 m', '}', 'splitter S1 at (150, 150) mm', 'mirror M1 at (150, 600) mm', 'ground glass GG1 at (800, 600) mm', 'object leaf at (1000, 600) mm {', '  depth: 30 mm', '}',
    'mirror M2 at (986, 150) mm', 'mirror M3 at (850, 250) mm', 'plate P1 at (1200, 600) mm facing leaf',
    'beam raw from red', '  -> S1', 'beam object from S1 reflected', '  -> M1', '  -> GG1', '  -> leaf', '  -> P1', 'beam reference from S1 through', '  -> M2', '  -> M3', '  -> P1',
  ));
  expect([r.mm('object length').toFixed(1), r.mm('reference length').toFixed(1)]).toEqual(['1500.0', '1499.8']);
  expect(['reference.1', 'reference.2', 'reference.3'].map(l => r.mm(`${l}.length`).toFixed(1))).toEqual(['836.0', '168.8', '495.0']);
  expect(degrees(r, 'reference angle').toFixed(1)).toBe('45.0');
  // Straight through: the depth of the leaf adds no path.
  expectNear(degrees(r, 'lighting angle'), 180, 1e-9);
  expectNear(r.mm('P1.object.far.mismatch'), r.mm('mismatch'), 1e-9);
});
