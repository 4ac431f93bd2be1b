import { LENGTH, NUMBER } from '../units.ts';
import { MIRROR } from './footprint.ts';
import { choice, quantity, type Kind } from './kind.ts';
import { size } from './shared.ts';

export const mirror: Kind = {
  word: 'mirror', article: 'a mirror', light: 'turns', ports: [], expectsLight: true, footprint: MIRROR,
  doc: 'A front-surface mirror. It is flat; with a `focal length` it is a curved one.',
  usual: ['diameter', 'coating', 'loss'],
  facts: [
    quantity('focal length', LENGTH, 'Focal length of a curved mirror, half its radius; negative where it bulges.', { used: true, sign: 'not zero', usual: ['750 mm ± 5 mm', '500 mm', '1 m'] }),
    quantity('loss', NUMBER, 'Share of the light that is lost at each reflection.', {
      used: true, sign: 'share', usual: ['12% ± 5 points', '4% ± 2 points', '1% ± 0.5 points'],
      assumed: { text: '12% ± 5 points', why: 'typical of protected aluminium in use, from memory; nearly all front-surface mirrors on such tables are aluminium' },
      assumedBy: { phrase: 'coating', of: {
        aluminium: { text: '12% ± 5 points', why: 'typical of protected aluminium in use, from memory' },
        silver: { text: '4% ± 3 points', why: 'typical of protected silver, which tarnishes, from memory' },
        dielectric: { text: '1% ×÷ 3', why: 'dielectric mirrors are sold as better than 99 % at their own wavelength and angle, from memory; elsewhere they lose more' },
      } },
    }),
    quantity('diameter', LENGTH, 'Diameter of the mirror.', { used: true, usual: ['50 mm', '25 mm', '150 mm', '200 mm'] }),
    size('75 x 75 mm', '100 x 150 mm'),
    choice('coating', ['aluminium', 'silver', 'dielectric'], 'What the surface is made of; decides which loss is assumed.', { used: true, usual: ['aluminium', 'silver', 'dielectric'] }),
  ],
};
