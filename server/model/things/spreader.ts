import { LENGTH, NUMBER } from '../units.ts';
import { SPREADER } from './footprint.ts';
import { count, quantity, type Kind } from './kind.ts';
import { CROWN, glassOf } from './shared.ts';

export const spreader: Kind = {
  word: 'spreader', called: 'R1', article: 'a spreading lens', light: 'passes', ports: [], expectsLight: true, footprint: SPREADER,
  doc: 'A lens that spreads the beam. With a `pinhole` at its focus it is a spatial filter, which also cleans the beam.',
  usual: ['focal length', 'pinhole', 'loss'],
  facts: [
    // Focal lengths as marked on objectives of 60, 40, 20 and 10 times, with the pinholes that go with them (common practice).
    quantity('focal length', LENGTH, 'Focal length; negative for a diverging lens.', { used: true, sign: 'not zero', usual: ['4.5 mm', '2.9 mm', '9 mm', '16.5 mm', '-10 mm'] }),
    quantity('pinhole', LENGTH, 'Diameter of the pinhole.', { used: true, within: { from: 1e-6, to: 1e-3, words: '1 µm to 1 mm' }, usual: ['10 µm', '6 µm', '15 µm', '20 µm', '25 µm'] }),
    count('power', 'Magnification that is engraved on an objective. What it does to the beam follows from its `focal length`: makers count from different tubes.', { usual: ['40', '60', '20', '10'] }),
    quantity('loss', NUMBER, 'Share of the light that is lost, in the lens and at the pinhole.', {
      used: true, sign: 'share', usual: ['20% ± 5 points', '8% ± 2 points'],
      assumed: { text: '15% ± 10 points', why: 'an objective with a pinhole that fits takes 10 to 25 %, a plain lens 8 % at its two bare faces; common practice, from memory' },
    }),
    quantity('diameter', LENGTH, 'Clear diameter.', { usual: ['5 mm', '8 mm'] }),
    ...glassOf('Glass that the light crosses on its axis.', ['10 mm', '3 mm'], CROWN),
  ],
};
