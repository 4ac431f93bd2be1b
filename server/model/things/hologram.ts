import { LENGTH, NUMBER } from '../units.ts';
import { choice, quantity, sizes, text, type Kind } from './kind.ts';

export const hologram: Kind = {
  word: 'hologram', article: 'a hologram', light: 'diffracts', ports: ['diffracted', 'through'], expectsLight: true,
  doc: 'A finished hologram that serves as the object of a transfer. The beam that it makes starts at its port `diffracted`.',
  facts: [
    text('from', 'The file and setup in which it was recorded.'),
    sizes('size', [2], 'Width and height.'),
    quantity('efficiency', NUMBER, 'Share of the light that goes into its image.', { sign: 'share' }),
    choice('turned', ['as recorded', 'flipped'], 'Flipped, it gives the real image.'),
    choice('image', ['real', 'virtual'], 'Which image is used.'),
    quantity('image distance', LENGTH, 'From the hologram to the middle of its image.'),
    quantity('depth', LENGTH, 'Depth of its image along the line of sight.', { used: true, sign: 'not negative' }),
    quantity('slit', LENGTH, 'Width of the slit in front of it.'),
    choice('slit direction', ['horizontal', 'vertical'], 'Which way the slit runs.'),
  ],
};
