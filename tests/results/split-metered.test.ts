/** What a splitter has to reflect for a ratio, from what was metered while it reflected a known share. Energy is kept: the ratio goes as one share to the other. */
import { describe, expect, test } from 'vitest';
import { metered, METER } from './light-library.ts';
import { expectNear, type Read } from './read.ts';

const AIM = ['hologram: transmission', 'aim beam ratio: 8:1'];
const split = ({ results }: Read): number => results.graph.value(results.ask('S1.split for ratio')!)!;
const both = (reference: string, object: string): string[] => [`measured reference at P1: ${reference} by m`, `measured object at P1: ${object} by m`];

describe('the split for a ratio', () => {
  // 4:1 with a tenth to the reference: x = 4 · 0.9 / 0.1 = 36; for 8:1 the objects get 36 / (36 + 8) = 81.82 %.
  test('follows from both lights that were read, and from the share then', () => expectNear(split(metered(both('1.6 µW/cm²', '0.4 µW/cm²'), { facts: AIM, splitter: ['reflects: 90%'], things: METER })), 36 / 44, 1e-9));
  // Bare numbers of one meter make a ratio too.
  test('from bare numbers of one meter', () => expectNear(split(metered(both('160', '40'), { facts: AIM, splitter: ['reflects: 90%'], things: METER })), 36 / 44, 1e-9));
  test('is the share itself where the ratio that was read is the one that is aimed at', () => expectNear(split(metered(both('3.2 µW/cm²', '0.4 µW/cm²'), { facts: AIM, splitter: ['reflects: 90%'], things: METER })), 0.9, 1e-9));
  test('by the wheel as it was read', () => expectNear(split(metered([...both('1.6 µW/cm²', '0.4 µW/cm²'), 'measured S1 wheel: 2'], { facts: AIM, splitter: ['reflects: ?', 'mark 1: 80%', 'mark 3: 100%'], things: METER })), 36 / 44, 1e-9));
  // What the splitter reflected while it stood open nobody has told.
  test('follows from no reading while the share is open', () => {
    const r = metered(both('1.6 µW/cm²', '0.4 µW/cm²'), { facts: AIM, splitter: ['reflects: ?'], things: METER });
    expect(r.results.ask('S1.split for ratio')?.missing).toBeDefined();
  });
  test('has the band of the readings: all of 3.2 ± 10 % to 0.4 ± 10 % moves it by less than the share to the reference', () => {
    const r = metered(both('1.6 µW/cm² ± 10%', '0.4 µW/cm² ± 10%'), { facts: AIM, splitter: ['reflects: 90%'], things: METER });
    // d ln(x) = √2 · 10 % / √3 = 8.16 %; ds = s (1 − s) · 8.16 % = 0.01215.
    expectNear(r.results.graph.uncertainty(r.results.ask('S1.split for ratio')!), (36 / 44) * (8 / 44) * 0.0816497, 1e-4);
  });
  test('at a share that leaves one arm dark there is none', () => expect(metered(both('1.6 µW/cm²', '0.4 µW/cm²'), { facts: AIM, splitter: ['reflects: 100%'], things: METER }).results.ask('S1.split for ratio')?.missing).toBeDefined());
});
