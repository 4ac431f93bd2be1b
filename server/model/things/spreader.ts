import { LENGTH, NUMBER } from '../units.ts';
import { count, quantity, type Kind } from './kind.ts';

export const spreader: Kind = {
  word: 'spreader', article: 'a spreading lens', light: 'passes', ports: [], expectsLight: true,
  doc: 'A lens that spreads the beam. With a `pinhole` at its focus it is a spatial filter, which also cleans the beam.',
  facts: [
    quantity('focal length', LENGTH, 'Focal length; negative for a diverging lens.', { sign: 'any' }),
    quantity('pinhole', LENGTH, 'Diameter of the pinhole.'),
    count('power', 'Magnification that is engraved on an objective.'),
    quantity('loss', NUMBER, 'Share of the light that is lost.', { sign: 'share' }),
    quantity('thickness', LENGTH, 'Glass that the light crosses on its axis.', { used: true }),
    quantity('diameter', LENGTH, 'Clear diameter.'),
  ],
};
