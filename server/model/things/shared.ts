/** Facts that several kinds of things share. */
import { LENGTH } from '../units.ts';
import { choice, quantity, sizes, type Assumed, type Fact } from './kind.ts';

/** Width and height of a thing. */
export const size = (...usual: string[]): Fact => sizes('size', [2], 'Width and height.', { used: true, usual });

/** Glass on the way of the light: both facts belong together. */
export const glassOf = (thickness: string, usual: readonly string[], assumed: Assumed): readonly Fact[] => [
  quantity('thickness', LENGTH, thickness, { used: true, usual }),
  choice('glass', ['crown', 'fused silica', 'window', 'acrylic'], 'What it is made of.', { used: true, assumed }),
];
export const CROWN: Assumed = { text: 'crown', why: 'the usual glass of a plain lens' };
