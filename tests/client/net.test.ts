/** The point of a map that keys move: where it comes to, and what is told there. */
import { describe, expect, test } from 'vitest';
import { inTheMiddle, stepped, wordsAt } from '../../client/plan/view/net.ts';

/** Five columns and three rows; the figures are their numbers, row by row. */
const PROBE = {
  box: { x: 0, y: 0, w: 100, h: 50 }, columns: 5, rows: 3, values: [], words: 'light at P1', texts: Array.from({ length: 15 }, (_, i) => `${i} µW/cm²`),
  across: ['50 mm to the left', '25 mm to the left', '', '25 mm to the right', '50 mm to the right'], down: ['25 mm up', '', '25 mm down'],
};
const after = (...keys: readonly (readonly [string, boolean?])[]): ReturnType<typeof inTheMiddle> => keys.reduce((at, [key, far = false]) => stepped(PROBE, at, key, far)!, inTheMiddle(PROBE));

describe('a step', () => {
  test('goes to the next figure that way', () => {
    expect(inTheMiddle(PROBE)).toEqual({ column: 2, row: 1 });
    expect(after(['ArrowRight'])).toEqual({ column: 3, row: 1 });
    expect(after(['ArrowUp'], ['ArrowLeft'])).toEqual({ column: 1, row: 0 });
  });
  test('goes to the edge, and no further', () => {
    expect(after(['ArrowLeft', true], ['ArrowDown', true])).toEqual({ column: 0, row: 2 });
    expect(after(['ArrowRight'], ['ArrowRight'], ['ArrowRight'], ['ArrowUp'], ['ArrowUp'])).toEqual({ column: 4, row: 0 });
  });
  test('goes back to the middle', () => { expect(after(['ArrowLeft', true], ['ArrowUp'], ['Home'])).toEqual({ column: 2, row: 1 }); });
  test.each(['Tab', 'Escape', 'Enter', 'd', '+', '0', 'toString'])('is not what %s does', key => { expect(stepped(PROBE, inTheMiddle(PROBE), key, false)).toBeUndefined(); });
});

test.each([
  [{ column: 2, row: 1 }, '7 µW/cm²', 'in the middle'], [{ column: 0, row: 1 }, '5 µW/cm²', 'from the middle 50 mm to the left'],
  [{ column: 2, row: 2 }, '12 µW/cm²', 'from the middle 25 mm down'], [{ column: 3, row: 0 }, '3 µW/cm²', 'from the middle 25 mm to the right and 25 mm up'],
])('the figure of %j is told with its place', (at, figure, place) => { expect(wordsAt(PROBE, at)).toEqual({ figure: `light at P1: ${figure}`, place }); });
