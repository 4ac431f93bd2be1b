import { LENGTH, NUMBER } from '../units.ts';
import { choice, quantity, sizes, type Kind } from './kind.ts';

export const mirror: Kind = {
  word: 'mirror', article: 'a mirror', light: 'turns', ports: [], expectsLight: true,
  doc: 'A front-surface mirror; with a `focal length` it is a curved one.',
  facts: [
    quantity('focal length', LENGTH, 'Focal length of a curved mirror.', { sign: 'any' }),
    quantity('loss', NUMBER, 'Share of the light that is lost at each reflection.', { sign: 'share' }),
    quantity('diameter', LENGTH, 'Diameter of the mirror.'),
    sizes('size', [2], 'Width and height.'),
    choice('coating', ['aluminium', 'silver', 'dielectric'], 'What the surface is made of.'),
  ],
};
