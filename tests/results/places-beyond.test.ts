/** `beyond A by d turning …`, `on A -> B by d`: places that follow the light, held against plain trigonometry. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { expectNear, read, serious, setup, type Read } from './read.ts';

type Point = readonly [number, number, number];
const at = (r: Read, thing: string): Point => [r.mm(`${thing}.x`), r.mm(`${thing}.y`), r.results.graph.find(`${thing}.z`) ? r.mm(`${thing}.z`) : 120];
function expectAt(r: Read, thing: string, expected: Point, allowed = 1e-9): void {
  at(r, thing).forEach((mm, i) => { expectNear(mm, expected[i]!, allowed, `${thing}.${'xyz'[i]!}`); });
}
// Some of these stops stand in their own beam or in one another, some mirrors turn nothing, some outputs are left over, and some beams rise: that is tested in `table.test.ts` and with the cautions for eyes.
const ELSEWHERE = ['leg-blocked', 'things-overlap', 'mirror-in-line', 'output-unused', 'beam-rises'];
const ofPlaces = (r: Read): string[] => serious(r.snapshot.findings.filter(f => !ELSEWHERE.includes(f.code)));
const clean = (r: Read): Read => { expect(ofPlaces(r)).toEqual([]); return r; };
const RED = 'laser red at (100, 200) mm heading 0°';
const found = (...lines: string[]): string[] => ofPlaces(read(setup(...lines)));

describe('beyond', () => {
  test('goes straight on where it says nothing else', () => { expectAt(clean(read(setup(RED, 'shutter gate beyond red by 90 mm', 'shutter card beyond gate by 60 mm'))), 'card', [250, 200, 120]); });
  test.each([
    ['left', [600, 500, 120]], ['right', [600, -100, 120]], ['back', [300, 200, 120]], ['up', [600, 200, 420]], ['down', [600, 200, -180]],
    ['90°', [600, 500, 120]], ['-90°', [600, -100, 120]], ['180°', [300, 200, 120]], ['0°', [900, 200, 120]], ['30°', [600 + 300 * Math.cos(Math.PI / 6), 350, 120]], ['(quarter / 3)', [600 + 300 * Math.cos(Math.PI / 6), 350, 120]],
  ] as const)('turning %s', (turning, place) => {
    // Light along +x meets M1 at (600, 200); 300 mm on.
    expectAt(clean(read(setup('let quarter = 90°', RED, 'mirror M1 beyond red by 500 mm', `beam stop B1 beyond M1 by 300 mm turning ${turning}`, 'beam raw from red', '  -> M1', '  -> B1'))), 'B1', place);
  });
  test('follows the beam that leads there, not the order of the text', () => {
    // The light comes to M1 from S1, 300 mm to its right and 400 mm below: (0.6, 0.8), whose left is (−0.8, 0.6).
    const lines = ['beam stop B1 beyond M1 by 100 mm turning left', 'mirror M1 at (400, 500) mm', 'splitter S1 at (100, 100) mm', 'laser red at (0, 100) mm heading 0°', 'beam object from S1 reflected', '  -> M1', '  -> B1', 'beam raw from red', '  -> S1'];
    expectAt(clean(read(setup(...lines))), 'B1', [400 - 80, 500 + 60, 120]);
  });
  test('of two beams that come there, follows the one that goes on', () => {
    // Light comes to the shell first from M2 and, on the beam that goes on to B1, from M3 above it.
    const r = read(setup(RED, 'splitter S1 beyond red by 100 mm', 'mirror M2 at (200, 600) mm', 'mirror M3 at (600, 200) mm', 'mirror M4 at (600, 600) mm', 'beam stop B1 beyond M4 by 50 mm', 'beam stop B2 at (800, 800) mm',
      'beam raw from red', '  -> S1', 'beam one from S1 reflected', '  -> M2', '  -> M4', '  -> B2', 'beam two from S1 through', '  -> M3', '  -> M4', '  -> B1'));
    expectAt(clean(r), 'B1', [600, 650, 120]);
  });
  test('a plate is passed straight on', () => {
    // From M2 through the plate: 45° down and to the right.
    const r = read(setup('beam height: 100 mm', 'laser red at (0, 0) mm heading 0° {', '  coherence length: 1 m', '}', 'mirror M1 at (300, 0) mm', 'mirror M2 at (300, 0, 600) mm', 'plate P1 at (800, 0) mm heading 180°', 'object shell beyond P1 by 20 mm', 'beam all from red', '  -> M1', '  -> M2', '  -> P1 through', '  -> shell', '  -> P1'));
    expectAt(clean(r), 'shell', [800 + 20 * Math.SQRT1_2, 0, 100 - 20 * Math.SQRT1_2], 1e-6);
  });
  test('light that climbs keeps its own left, which is level', () => {
    // From M1 to M2 the light goes along (0.8, 0, 0.6); left of it is +y, above it (−0.6, 0, 0.8).
    const r = read(setup('beam height: 100 mm', 'laser red at (0, 0) mm heading 0°', 'mirror M1 at (100, 0) mm', 'mirror M2 at (500, 0, 400) mm', 'beam stop B1 beyond M2 by 50 mm turning left', 'beam stop B2 beyond M2 by 50 mm turning up', 'beam raw from red', '  -> M1', '  -> M2', '  -> B1'));
    expectAt(r, 'B1', [500, 50, 400], 1e-6);
    expectAt(r, 'B2', [500 - 30, 0, 400 + 40], 1e-6);
  });
  test('needs no beam where it follows another thing that is placed so', () => {
    expectAt(clean(read(setup(RED, 'shutter gate beyond red by 100 mm', 'shutter card beyond gate by 100 mm turning left', 'screen wall1 beyond card by 40 mm turning left'))), 'wall1', [160, 300, 120]);
  });
  test('a laser without a heading sends its beam where that leads', () => {
    expectAt(clean(read(setup('laser red at (0, 0) mm', 'mirror M1 at (300, 400) mm', 'shutter gate beyond red by 50 mm', 'beam stop B1 beyond M1 by 100 mm', 'beam raw from red', '  -> gate', '  -> M1', '  -> B1'))), 'gate', [30, 40, 120]);
  });
  test('a laser may face a thing, or be tipped up', () => {
    expectAt(clean(read(setup('laser red at (0, 0) mm facing M1', 'mirror M1 at (300, 400) mm', 'shutter gate beyond red by 50 mm'))), 'gate', [30, 40, 120]);
    expectAt(clean(read(setup('laser red at (0, 0) mm heading 90° tilted 30°', 'shutter gate beyond red by 50 mm'))), 'gate', [0, 50 * Math.cos(Math.PI / 6), 120 + 25], 1e-9);
  });
  test('a chain equals the coordinates of plain trigonometry', () => {
    const step = fc.record({ by: fc.integer({ min: 5, max: 900 }), turn: fc.integer({ min: -170, max: 170 }) });
    fc.assert(fc.property(fc.integer({ min: -180, max: 180 }), fc.array(step, { minLength: 1, maxLength: 8 }), fc.boolean(), (heading, steps, backwards) => {
      let [x, y, way] = [60, 100, heading];
      const expected: Point[] = [];
      const lines = steps.map(({ by, turn }, i) => {
        // The first goes straight out of the laser.
        way += i === 0 ? 0 : turn;
        x += by * Math.cos((way * Math.PI) / 180);
        y += by * Math.sin((way * Math.PI) / 180);
        expected.push([x, y, 150]);
        return `mirror M${i} beyond ${i === 0 ? 'red' : `M${i - 1}`} by ${by} mm${i === 0 ? '' : ` turning ${turn}°`}`;
      });
      const beam = ['beam raw from red', ...steps.map((_, i) => `  -> M${i}`)];
      const r = read(setup('beam height: 150 mm', ...(backwards ? [...lines].reverse() : lines), `laser red at (60, 100) mm heading ${heading}°`, ...beam));
      expected.forEach((p, i) => { expectAt(r, `M${i}`, p, 1e-6); });
      steps.forEach(({ by }, i) => { expectNear(r.mm(`raw.${i + 1}.length`), by, 1e-7); });
      // The same places written out give the same figures.
      const plain = read(setup('laser red at (60, 100) mm', ...expected.map(([px, py], i) => `mirror M${i} at (${px.toFixed(9)}, ${py.toFixed(9)}) mm`), ...beam));
      steps.forEach((_, i) => { expectNear(plain.mm(`raw.${i + 1}.length`), r.mm(`raw.${i + 1}.length`), 1e-6); });
    }), { numRuns: 60 });
  });
  test('thousands in a row, the first of them last, are no trouble', () => {
    const r = read(setup(...Array.from({ length: 4000 }, (_, i) => `shutter s${i} beyond s${i + 1} by 1 mm`), 'shutter s4000 beyond red by 1 mm', RED));
    expectAt(r, 's0', [100 + 4001, 200, 120], 1e-6);
  });
});

describe('on a leg', () => {
  test('lies so far behind the first of the two', () => {
    // 3-4-5
    expectAt(clean(read(setup('mirror M1 at (100, 100) mm', 'mirror M2 at (400, 500, 120) mm', 'shutter gate on M1 -> M2 by 250 mm'))), 'gate', [250, 300, 120]);
    expectAt(clean(read(setup('let far = 25 cm', 'mirror M1 at (100, 100) mm', 'mirror M2 at (100, 100, 720) mm', 'shutter gate by far / 2 on M1 -> M2'))), 'gate', [100, 100, 245]);
  });
  test('between things that follow the light', () => { expectAt(clean(read(setup(RED, 'shutter gate on red -> card by 40 mm', 'shutter card beyond red by 90 mm'))), 'gate', [140, 200, 120]); });
});

describe('what cannot be told', () => {
  test.each([
    ['no heading and no beam', ['laser red at (0, 0) mm', 'shutter gate beyond red by 50 mm'], ['3 place-unknown']],
    ['no beam leads there', [RED, 'mirror M1 at (500, 0) mm', 'beam stop B1 beyond M1 by 50 mm turning left'], ['4 place-unknown']],
    ['the light comes from nowhere', [RED, 'mirror M0', 'mirror M1 at (500, 0) mm', 'beam stop B1 beyond M1 by 50 mm turning left', 'beam raw from red', '  -> M0: 300 mm', '  -> M1: 200 mm', '  -> B1'], ['5 place-unknown']],
    ['it stands nowhere itself', [RED, 'mirror M1', 'beam stop B1 beyond M1 by 50 mm', 'beam raw from red', '  -> M1: 300 mm', '  -> B1'], ['4 place-unknown']],
    ['an end of a leg stands nowhere', [RED, 'mirror M1', 'spreader R1 on red -> M1 by 50 mm', 'beam stop B1', 'beam raw from red', '  -> R1: 50 mm', '  -> M1: 300 mm', '  -> B1: 20 mm'], ['4 place-unknown']],
    ['straight up there is no left', [RED, 'mirror M1 beyond red by 100 mm', 'mirror M2 beyond M1 by 500 mm turning up', 'beam stop B1 beyond M2 by 50 mm turning left', 'beam raw from red', '  -> M1', '  -> M2', '  -> B1'], ['5 place-unknown']],
    ['nor an angle', [RED, 'mirror M1 beyond red by 100 mm', 'mirror M2 beyond M1 by 500 mm turning up', 'beam stop B1 beyond M2 by 50 mm turning 20°', 'beam raw from red', '  -> M1', '  -> M2', '  -> B1'], ['5 place-unknown']],
    ['the whole row behind it is not told again', ['laser red at (0, 0) mm', 'shutter gate beyond red by 50 mm', 'shutter card beyond gate by 50 mm', 'shutter third on gate -> card by 5 mm'], ['3 place-unknown']],
    ['two things at one place', ['laser red at (0, 0) mm', 'mirror M1 at (0, 0) mm', 'beam stop B1 beyond M1 by 50 mm', 'beam raw from red', '  -> M1: 10 mm', '  -> B1'], ['4 place-unknown']],
    ['two things beyond one', [RED, 'mirror M1 at (500, 0) mm', 'beam stop B1 beyond M1 by 50 mm turning left', 'beam stop B2 beyond M1 by 90 mm'], ['4 place-unknown']],
  ] as const)('%s', (_, lines, expected) => { expect(found(...lines).filter(f => !f.includes('two-lengths'))).toEqual(expected); });
  test('straight up, straight on and back still mean something', () => {
    const r = clean(read(setup(RED, 'mirror M1 beyond red by 100 mm', 'mirror M2 beyond M1 by 500 mm turning up', 'beam stop B1 beyond M2 by 50 mm turning back', 'beam stop B2 beyond M2 by 50 mm', 'beam raw from red', '  -> M1', '  -> M2', '  -> B1')));
    expectAt(r, 'B1', [200, 200, 570], 1e-9);
    expectAt(r, 'B2', [200, 200, 670], 1e-9);
  });
  test('a value that is asked for is no fault, and what rests on it says so', () => {
    for (const clauses of ['at ?', 'at (?, 3) mm', 'beyond red by ? mm', 'beyond red by ? from 20 mm to 80 mm', 'beyond red by 30 mm turning ?', 'on red -> B1 by ?']) {
      const r = clean(read(setup(RED, `mirror M1 ${clauses}`, 'beam stop B1 at (500, 500) mm', 'beam raw from red', '  -> M1', '  -> B1')));
      expect(r.cell('raw.2.length').missing, clauses).toMatchObject({ code: 'unknown-asked' });
      expect(r.cell('raw.2.length').missing!.why, clauses).toMatch(/ is written \?$/);
      expect(r.snapshot.findings.filter(f => f.severity === 'hint').map(f => f.code)).toEqual(['value-sought']);
    }
  });
  test('while a beam is not finished nothing is said', () => {
    expect(found('laser red at (0, 0) mm', 'shutter gate beyond red by 50 mm', 'beam raw from red', '  -> §')).toEqual(['5 unreadable-character']);
  });
});

describe('rings', () => {
  const ring = (...lines: string[]): unknown[] => read(setup(...lines)).snapshot.findings.filter(f => f.severity === 'error').map(f => `${f.at.line + 1} ${f.code} ${String(f.data['ring'])}`);
  test.each([
    ['by itself', ['mirror M1 beyond M1 by 50 mm'], ['2 place-ring M1 → M1']],
    ['by each other', ['mirror M1 beyond M2 by 50 mm', 'mirror M2 beyond M1 by 50 mm'], ['2 place-ring M1 → M2 → M1']],
    ['by a leg that starts there', ['mirror M1 at (0, 0) mm', 'mirror M2 beyond R1 by 50 mm', 'spreader R1 on M1 -> M2 by 20 mm'], ['3 place-ring M2 → R1 → M2']],
    ['by the light', [RED, 'mirror M1 at (500, 0) mm', 'mirror M2 beyond M1 by 50 mm turning left', 'shutter gate on red -> M2 by 5 mm', 'beam raw from red', '  -> gate', '  -> M1', '  -> M2'], ['4 place-ring M2 → gate → M2']],
    ['of a laser that faces what stands in its beam', ['laser red at (0, 0) mm facing M1', 'mirror M1 beyond red by 50 mm'], ['3 place-ring M1 → red → M1']],
    ['and what hangs on it', ['mirror M1 beyond M2 by 50 mm', 'mirror M2 beyond M1 by 50 mm', 'mirror M3 beyond M2 by 5 mm', 'mirror M4 on M1 -> M3 by 5 mm'], ['2 place-ring M1 → M2 → M1']],
  ] as const)('%s', (_, lines, expected) => { expect(ring(...lines)).toEqual(expected); });
  test('of three thousand', () => {
    const found = ring(...Array.from({ length: 3000 }, (_, i) => `shutter s${i} beyond s${(i + 1) % 3000} by 1 mm`));
    expect(found).toHaveLength(1);
    expect(String(found[0])).toMatch(/^2 place-ring s0 → s1 → .* → s0$/);
  });
});
