import { NUMBER } from '../units.ts';
import { named, quantity, text, type Kind } from './kind.ts';

export const exposure: Kind = {
  word: 'exposure', called: 'first', article: 'an exposure', light: 'none', ports: [], expectsLight: false, footprint: undefined,
  doc: 'One of several exposures that a plate gets: with the table as it is written, or as in a variant.', usual: ['variant', 'share'],
  facts: [
    text('variant', 'The variant in which the table then stands; without it, it stands as it is written.', ['"green"'], { names: true }),
    named('laser', 'laser', 'The laser that is open then, where there are several and the others are shut.', { used: true }),
    quantity('share', NUMBER, 'How much of what the plate needs it gets then; what is left goes to those without a share, each alike.', { used: true, sign: 'share', usual: ['50%', '40% ± 2 points'] }),
    named('plate', 'plate', 'Which plate, where the setup has more than one.', { used: true }),
  ],
};
