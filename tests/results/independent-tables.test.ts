/**
 * Random tables in three dimensions, against plain vector arithmetic: things at a place, beyond another with a turn, on a leg. Uncertainties come from the slopes of that
 * arithmetic by each coordinate, distance and angle that is written. Lengths in mm, angles in degrees.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { amount, expectFigure, propagated, type Written } from './independent.ts';
import { read, setup } from './read.ts';

type V = readonly [number, number, number];
const RAD = Math.PI / 180;
const add = (a: V, b: V, k = 1): V => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
const less = (a: V, b: V): V => add(a, b, -1);
const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const size = (a: V): number => Math.sqrt(dot(a, a));
const toward = (a: V, b: V): V => { const d = less(b, a); return [d[0] / size(d), d[1] / size(d), d[2] / size(d)]; };
const angle = (a: V, b: V): number => Math.acos(Math.max(-1, Math.min(1, dot(a, b) / size(a) / size(b)))) / RAD;

const TURNS = ['', 'left', 'right', 'up', 'down', 'back', 'angle'] as const;
type Turn = (typeof TURNS)[number];
/** Level and to the left of the light; above it. */
const left = ([x, y]: V): V => { const l = Math.hypot(x, y); return [-y / l, x / l, 0]; };
const above = ([x, y, z]: V): V => { const l = Math.hypot(x, y); return [(-x * z) / l, (-y * z) / l, l]; };
function turned(light: V, turn: Turn, by: number): V {
  switch (turn) {
    case '': return light;
    case 'left': return left(light);
    case 'right': return less([0, 0, 0], left(light));
    case 'up': return above(light);
    case 'down': return less([0, 0, 0], above(light));
    case 'back': return less([0, 0, 0], light);
    case 'angle': return add([light[0] * Math.cos(by * RAD), light[1] * Math.cos(by * RAD), light[2] * Math.cos(by * RAD)], left(light), Math.sin(by * RAD));
  }
}
const clause = (turn: Turn, by: Written): string => (turn === '' ? '' : ` turning ${turn === 'angle' ? by.text : turn}`);

const place = fc.tuple(amount(-900, 900, 3, ''), amount(-900, 900, 3, ''), amount(60, 400, 3, ''));
const at = (p: readonly Written[]): string => `(${p.map(w => w.text).join(', ')}) mm`;
const turn = fc.constantFrom<Turn>(...TURNS.filter(t => t !== 'back'));
const bend = amount(-150, 150, 1, '°');
const tables = fc.record({
  red: place, heading: amount(-180, 180, 1, '°'), tilt: amount(-40, 40, 1, '°'),
  toS1: amount(100, 600, 2, 'mm'), toM1: amount(200, 900, 2, 'mm'), toM2: amount(200, 900, 2, 'mm'), turn: fc.tuple(turn, bend, fc.constantFrom<Turn>('left', 'right', 'up', 'down', 'angle'), bend),
  whelk: place, P1: place, share: amount(20, 80, 2, 'mm'),
});

/** What stands where, from the inputs in the order of `inputs`. */
function stand(x: readonly number[], turns: readonly [Turn, Turn]): Record<'red' | 'S1' | 'M1' | 'M2' | 'M3' | 'whelk' | 'P1', V> {
  const [heading, tilt, a, b, c, first, second, d] = x.slice(0, 8) as [number, number, number, number, number, number, number, number];
  const [red, whelk, P1] = [8, 11, 14].map(i => [x[i]!, x[i + 1]!, x[i + 2]!] as V) as [V, V, V];
  const light: V = [Math.cos(tilt * RAD) * Math.cos(heading * RAD), Math.cos(tilt * RAD) * Math.sin(heading * RAD), Math.sin(tilt * RAD)];
  const S1 = add(red, light, a);
  const M1 = add(S1, turned(light, turns[0], first), b);
  const M2 = add(S1, turned(light, turns[1], second), c);
  return { red, S1, M1, M2, M3: add(M2, toward(M2, whelk), d), whelk, P1 };
}
const distance = (a: V, b: V): number => size(less(b, a));

test('lengths, mismatch and angles, each with its uncertainty', () => {
  fc.assert(fc.property(tables, t => {
    const turns = [t.turn[0], t.turn[2]] as const;
    const inputs: Written[] = [t.heading, t.tilt, t.toS1, t.toM1, t.toM2, t.turn[1], t.turn[3], t.share, ...t.red, ...t.whelk, ...t.P1];
    const s = stand(inputs.map(i => i.value), turns);
    // What stands in one place, or in one line where an angle has a kink, is tested elsewhere.
    const all = Object.values(s);
    fc.pre(all.every((p, i) => all.every((q, j) => i >= j || distance(p, q) >= 30)));
    const r = read(setup(
      `laser red at ${at(t.red)} heading ${t.heading.text} tilted ${t.tilt.text}`, `splitter S1 beyond red by ${t.toS1.text}`, `mirror M1 beyond S1 by ${t.toM1.text}${clause(t.turn[0], t.turn[1])}`,
      `mirror M2 beyond S1 by ${t.toM2.text}${clause(t.turn[2], t.turn[3])}`, `mirror M3 on M2 -> whelk by ${t.share.text}`, `object whelk at ${at(t.whelk)} {`, '  depth: 40 mm', '}', `plate P1 at ${at(t.P1)} facing whelk`,
      'beam raw from red', '  -> S1', 'beam reference from S1 through', '  -> M1', '  -> P1', 'beam object from S1 reflected', '  -> M2', '  -> M3', '  -> whelk', '  -> P1', 'expect M1.incidence < 90°',
    ));
    expect(r.snapshot.findings.filter(f => f.severity === 'error')).toEqual([]);
    const legs = (p: ReturnType<typeof stand>, ...ways: readonly (keyof ReturnType<typeof stand>)[]): number => ways.slice(1).reduce((sum, w, i) => sum + distance(p[ways[i]!], p[w]), 0);
    const of = (f: (p: ReturnType<typeof stand>) => number): { value: number; u: number } => propagated(x => f(stand(x, turns)), inputs);
    const lengths: Record<string, (p: ReturnType<typeof stand>) => number> = {
      'raw.1.length': p => distance(p.red, p.S1), 'reference.1.length': p => distance(p.S1, p.M1), 'reference.2.length': p => distance(p.M1, p.P1), 'object.1.length': p => distance(p.S1, p.M2),
      'object.2.length': p => distance(p.M2, p.M3), 'object.3.length': p => distance(p.M3, p.whelk), 'object.4.length': p => distance(p.whelk, p.P1),
      'P1.reference.length': p => legs(p, 'S1', 'M1', 'P1'), 'P1.object.length': p => legs(p, 'S1', 'M2', 'M3', 'whelk', 'P1'), mismatch: p => legs(p, 'S1', 'M2', 'M3', 'whelk', 'P1') - legs(p, 'S1', 'M1', 'P1'),
    };
    for (const [name, f] of Object.entries(lengths)) expectFigure(r, name, of(f), 1e-3, 1e-7);
    const angles: Record<string, (p: ReturnType<typeof stand>) => number> = {
      'reference angle': p => { const a = angle(less(p.M1, p.P1), less(p.whelk, p.P1)); return Math.min(a, 180 - a); },
      'lighting angle': p => 180 - angle(less(p.whelk, p.M3), less(p.P1, p.whelk)), 'M1.incidence': p => (180 - angle(less(p.M1, p.S1), less(p.P1, p.M1))) / 2,
    };
    for (const [name, f] of Object.entries(angles)) {
      const value = f(s);
      if (Math.abs(value % 90) > 3 && Math.abs(value % 90) < 87) expectFigure(r, name, of(f), RAD, 1e-6);
    }
  }), { numRuns: 150 });
});
