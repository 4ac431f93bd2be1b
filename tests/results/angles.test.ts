/** Angles of light by their names: in expectations and formulas, as written and by the places. */
import { describe, expect, test } from 'vitest';
import { expectNear, read, serious, setup, type Read } from './read.ts';

const DEGREE = Math.PI / 180;
/** The reference comes to P1 from 300 mm to its left and 400 mm before it: atan(300 / 400) = 36.87°. */
const PLACED = [
  'laser red at (0, 0) mm heading 0° {', '  coherence length: 20 m', '}', 'splitter S1 at (100, 0) mm', 'mirror M1 at (400, 0) mm', 'mirror M2 at (100, 700) mm', 'object whelk at (700, 700) mm {', '  depth: 20 mm', '}',
];
const BEAMS = ['beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> P1', 'beam object from S1 reflected', '  -> M2', '  -> whelk', '  -> P1'];
const placed = (plate: string, ...more: string[]): Read => read(setup(...PLACED, plate, ...BEAMS, ...more));
const outcomes = (r: Read): string[] => r.results.goals.map(g => g.outcome);

test('expectations of angles, by short and by long names', () => {
  const r = placed('plate P1 at (700, 400) mm facing whelk', 'expect reference angle from 36° to 37°', 'expect P1.reference.angle < 36°', 'expect object angle < 1°', 'expect lighting angle from 89° to 91°', 'expect whelk.lighting angle > 95°', 'expect M1.incidence < 30°');
  // M1 turns light along +x into (300, 400) / 500: by 53.13°, so that it meets it at 63.43°. M2 lies level with the whelk: lit from the side.
  expect(outcomes(r)).toEqual(['met', 'not met', 'met', 'met', 'not met', 'not met']);
  expectNear(r.value('M1.incidence') / DEGREE, (180 - 53.13010235) / 2, 1e-7);
  expectNear(r.value('reference angle') / DEGREE, 36.86989765, 1e-7);
});
test('an angle is in angles', () => { expect(serious(placed('plate P1 at (700, 400) mm facing whelk', 'expect reference angle < 40 mm').snapshot.findings)).toEqual(['21 wrong-unit']); });
test('in a formula', () => {
  const r = placed('plate P1 at (700, 400) mm facing whelk', 'beam unused from M1', '  -> card: 100 mm * cos(M1.incidence)', 'beam stop card');
  expectNear(r.mm('unused.1.length'), 100 * Math.cos(((180 - 53.13010235) / 2) * DEGREE), 1e-6);
});

describe('which way a plate faces', () => {
  const angles = (clauses: string): [number, number] => { const r = placed(`plate P1 at (700, 400) mm ${clauses}`); return [r.value('reference angle') / DEGREE, r.value('object angle') / DEGREE]; };
  const near = (found: readonly number[], expected: readonly number[]): void => { found.forEach((a, i) => { expectNear(a, expected[i]!, 1e-6); }); };
  const reference = Math.atan(3 / 4) / DEGREE;
  test('by a heading, from either side', () => {
    near(angles('heading 90°'), [reference, 0]);
    near(angles('heading 270°'), [reference, 0]);
    near(angles('heading 60°'), [Math.abs(Math.atan2(4, 3) / DEGREE - 60), 30]);
  });
  test('by what it faces', () => {
    near(angles('facing whelk'), [reference, 0]);
    near(angles('facing M1'), [0, reference]);
    near(angles('facing beam'), [0, reference]);
  });
  test('tipped up', () => {
    // Normal (0, cos 20°, sin 20°): the reference along (0.6, 0.8, 0)
    near(angles('facing whelk tilted 20°'), [Math.acos(0.8 * Math.cos(20 * DEGREE)) / DEGREE, 20]);
    near(angles('heading 90° tilted -20°'), [Math.acos(0.8 * Math.cos(20 * DEGREE)) / DEGREE, 20]);
  });
  test('facing something higher, as it is; tipped, only its heading', () => {
    const r = read(setup(...PLACED, 'wall above1 at (700, 700, 420) mm', 'plate P1 at (700, 400) mm facing above1', ...BEAMS));
    expectNear(r.value('object angle') / DEGREE, 45, 1e-9);
    expectNear(read(r.snapshot.text.replace('facing above1', 'facing above1 tilted 0°')).value('object angle') / DEGREE, 0, 1e-6);
  });
  test('not known where nothing says so, and that is no fault', () => {
    const r = placed('plate P1 at (700, 400) mm', 'expect reference angle < 40°');
    expect(outcomes(r)).toEqual(['cannot be told']);
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
});

describe('without places', () => {
  const string = (fact: string, ...more: string[]): Read => read(setup('laser red {', '  coherence length: 1 m', '}', 'splitter S1', 'object whelk {', '  depth: 20 mm', '}', 'plate P1 facing whelk {', fact, '}', 'beam raw from red', '  -> S1: 100 mm', 'beam reference from S1 through', '  -> P1: 900 mm', 'beam object from S1 reflected', '  -> whelk: 600 mm', '  -> P1: 300 mm', ...more));
  test('as written', () => {
    const r = string('reference angle: 30° ± 3°', 'expect reference angle < 40°');
    expectNear(r.value('P1.reference.angle') / DEGREE, 30, 1e-12);
    expectNear(r.u('reference angle') / DEGREE, 3 / Math.sqrt(3), 1e-12);
    expect(outcomes(r)).toEqual(['met']);
    expect(serious(r.snapshot.findings)).toEqual([]);
  });
  test('not at all', () => {
    const r = string('size: 60 x 60 mm', 'expect reference angle < 40°', 'expect M1.incidence < 40°', 'expect lighting angle < 80°');
    expect(outcomes(r)).toEqual(['cannot be told', 'cannot be told', 'cannot be told']);
    // The light on the object is assumed, as the depth needs it.
    expect(r.cell('whelk.lit at')).toMatchObject({ origin: 'assumed' });
  });
});

describe('written and placed', () => {
  const both = (fact: string): Read => read(setup(...PLACED, 'plate P1 at (700, 400) mm facing whelk {', `  reference angle: ${fact}`, '}', ...BEAMS));
  test('the written one counts', () => { expectNear(both('35° ± 1°').value('reference angle') / DEGREE, 35, 1e-12); });
  test('a finding says where they differ by more than both are unsure', () => {
    expect(serious(both('35°').snapshot.findings)).toEqual([]);
    expect(serious(both('30°').snapshot.findings)).toEqual(['12 two-angles']);
    expect(serious(both('-36.87°').snapshot.findings)).toEqual([]);
    // 6.87° off; 3 · 5° / √3 = 8.7°
    expect(serious(both('30° ± 5°').snapshot.findings)).toEqual([]);
  });
});

describe('a laser that points elsewhere', () => {
  const aimed = (clauses: string, place = '(1000, 100) mm'): Read => read(setup(`laser red at (0, 0) mm ${clauses}`, `beam stop B1 at ${place}`, 'beam raw from red', '  -> B1'));
  test.each([
    ['heading 0°', ['2 heading-off']], ['heading 5.7°', []], ['heading 6.6°', []], ['heading 6.9°', ['2 heading-off']], ['heading 3° ± 3°', []], ['heading 186°', ['2 heading-off']], ['facing B1', []], ['', []], ['heading 5.7° tilted 5°', ['2 heading-off']],
  ] as const)('%s', (clauses, expected) => { expect(serious(aimed(clauses).snapshot.findings)).toEqual(expected); });
  test('says by how much the beam misses', () => {
    // 11.31° is the angle of 200 mm to the side over 1000 mm; the line of the beam passes 1019.8 mm · sin 11.31° = 200 mm beside it.
    const { data } = aimed('heading 0°', '(1000, 200) mm').snapshot.findings.find(f => f.code === 'heading-off')!;
    expectNear(Number(data['angle']), Math.atan(0.2), 1e-9);
    expectNear(Number(data['miss']), 0.2, 1e-9);
  });
  test('is said once, and can be accepted', () => {
    const text = setup('laser red at (0, 0) mm heading 0°', 'beam stop B1 at (1000, 100) mm', 'beam raw from red', '  -> B1', 'accept heading-off "it is bent by a periscope"');
    expect(read(text).snapshot.findings.filter(f => f.code === 'heading-off').map(f => f.accepted)).toEqual(['it is bent by a periscope']);
  });
});
