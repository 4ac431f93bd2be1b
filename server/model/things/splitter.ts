import { ANGLE, LENGTH, NUMBER } from '../units.ts';
import { choice, count, quantity, sizes, type Kind } from './kind.ts';

export const splitter: Kind = {
  word: 'splitter', article: 'a splitter', light: 'shares', ports: ['through', 'reflected'], expectsLight: true,
  doc: 'Shares one beam into two: what goes `through` and what is `reflected`. A graduated one is set by its wheel.',
  facts: [
    quantity('reflects', NUMBER, 'Share of the light that is reflected, of what is not lost.', { sign: 'share' }),
    quantity('loss', NUMBER, 'Share of the light that is lost.', { sign: 'share' }),
    quantity('wheel', NUMBER, 'Mark of the wheel at which it stands.', { sign: 'any' }),
    quantity('thickness', LENGTH, 'Thickness of the glass that the light going through crosses.', { used: true }),
    choice('glass', ['crown', 'fused silica', 'window', 'acrylic'], 'What it is made of.', { used: true, assumed: { text: 'crown', why: 'most splitters are borosilicate crown' } }),
    quantity('wedge', ANGLE, 'Angle between its faces.', { sign: 'not negative' }),
    count('graduations', 'Number of marks on the wheel.'),
    sizes('size', [2], 'Width and height.'),
  ],
};
