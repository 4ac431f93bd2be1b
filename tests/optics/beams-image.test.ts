/** Light of an image where a plate crosses it: similar triangles by hand, in mm. */
import { expect, test } from 'vitest';
import { imageSpread } from '../../server/optics/beams/image.ts';

const MM = 1e-3;
test.each([
  // opening a, image b, distance D, plate L: a |1 − L/D| and b |L/D|, the longer one
  ['half way to the image: 5 and 15', 10, 30, 500, 250, 15],
  ['a quarter of the way: 7.5 both', 10, 30, 500, 125, 7.5],
  ['near the opening: 36 and 3', 40, 30, 500, 50, 36],
  ['in the image: its own width', 10, 30, 500, 500, 30],
  ['beyond the image: 10 and 60', 10, 30, 500, 1000, 60],
  ['of a virtual image behind: 60 and 15', 40, 30, -500, 250, 60],
  ['of a virtual image far behind: 11 and 3', 10, 30, -5000, 500, 11],
  // counted as at 1 µm
  ['of an image in the hologram: 500 000 times its width', 10, 30, 0, 500, 30 * 500_000],
])('%s', (_, a, b, distance, plate, spread) => {
  expect(imageSpread(a * MM, b * MM, distance * MM, plate * MM) / MM / spread).toBeCloseTo(1, 9);
});
