import { LENGTH, NUMBER } from '../units.ts';
import { PLATE } from './footprint.ts';
import { choice, quantity, sizes, text, type Kind } from './kind.ts';
import { size } from './shared.ts';

export const hologram: Kind = {
  word: 'hologram', article: 'a hologram', light: 'diffracts', ports: ['diffracted', 'through'], expectsLight: true, footprint: PLATE,
  doc: 'A finished hologram that serves as the object of a transfer. The beam that it makes starts at its port `diffracted`. A strip that masks it is a `slit` before it.',
  usual: ['size', 'turned', 'image', 'image distance', 'image size', 'depth'],
  facts: [
    text('from', 'The file in which its recording is told. Its size, and where its object stood and how large that was, are taken from there where they are not written here.', ['"whelk-master.plate"'], { names: true }),
    text('recorded as', 'The setup of its recording, where the file has several; without “from” one of this page.', ['"Whelk, master"'], { names: true }),
    text('recorded on', 'The plate of that setup that it is, where there are several.', ['P1'], { names: true }),
    size('63 x 63 mm', '102 x 127 mm'),
    quantity('efficiency', NUMBER, 'Share of the light that goes into its image.', {
      used: true, sign: 'share', usual: ['12% ×÷ 1.5', '20% ± 5 points'], assumed: { text: '10% ×÷ 4', why: 'an unbleached plate of an object gives a few per cent, 3.7 at most (Kogelnik 1969), a well bleached one up to 40; from memory' },
    }),
    choice('turned', ['as recorded', 'flipped'], 'Flipped, it gives the real image.', { used: true, usual: ['flipped', 'as recorded'] }),
    choice('emulsion', ['toward the image', 'away from the image'], 'Which way its layer faces now.', { used: true }),
    choice('up', ['up', 'down', 'left', 'right'], 'Where the edge is now that was up in the holder of its recording, seen from its image.', { used: true }),
    choice('image', ['real', 'virtual'], 'Which image is used.', { used: true }),
    quantity('image distance', LENGTH, 'From the hologram to the middle of its image.', { used: true, usual: ['250 mm ± 2 mm', '300 mm ± 2 mm'] }),
    sizes('image size', [2], 'Width and height of its image, as it stands on the table.', { used: true, usual: ['60 x 40 mm', '80 x 100 mm'] }),
    quantity('image light', NUMBER, 'Light of its image at the plate as a multiple of what efficiency and image size say; write it once its light was metered.', {
      used: true, usual: ['1 ×÷ 2', '0.7 ×÷ 1.3'], assumed: { text: '1 ×÷ 2', why: 'an image neither fills its size nor is it evenly bright; a guess until it is metered' },
    }),
    quantity('depth', LENGTH, 'Depth of its image along the line of sight.', { used: true, sign: 'not negative', usual: ['50 mm', '30 mm'] }),
  ],
};
