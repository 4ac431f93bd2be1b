import { LENGTH, NUMBER } from '../units.ts';
import { choice, quantity, type Kind } from './kind.ts';

const facts: Kind['facts'] = [
  quantity('focal length', LENGTH, 'Focal length; negative for a diverging one.', { sign: 'any' }),
  quantity('diameter', LENGTH, 'Clear diameter.'),
  quantity('loss', NUMBER, 'Share of the light that is lost.', { sign: 'share' }),
  quantity('thickness', LENGTH, 'Glass that the light crosses on its axis.', { used: true }),
  choice('glass', ['crown', 'fused silica', 'window', 'acrylic'], 'What it is made of.', { used: true, assumed: { text: 'crown', why: 'the usual glass of a plain lens' } }),
];

export const lens: Kind = { word: 'lens', article: 'a lens', light: 'passes', ports: [], expectsLight: true, doc: 'A lens that is neither the spreading one nor the collimator.', facts };
export const collimator: Kind = {
  word: 'collimator', article: 'a collimator', light: 'passes', ports: [], expectsLight: true,
  doc: 'A large lens, one focal length behind the pinhole, that makes the spread beam parallel. A curved `mirror` does the same with a fold.', facts,
};
