import { ANGLE, NUMBER } from '../units.ts';
import { SPLITTER } from './footprint.ts';
import { choice, count, quantity, type Kind } from './kind.ts';
import { glassOf, size } from './shared.ts';

export const splitter: Kind = {
  word: 'splitter', article: 'a splitter', light: 'shares', ports: ['through', 'reflected'], expectsLight: true, footprint: SPLITTER,
  doc: 'Shares one beam into two: what goes `through` and what is `reflected`. A graduated one is set by its wheel; each mark that was metered gets a line of its own, `mark 4.5: 88% ± 2 points`.',
  rivals: [['reflects', 'wheel']],
  usual: ['reflects', 'loss', 'thickness', 'glass'],
  facts: [
    quantity('reflects', NUMBER, 'Share of the light that is reflected, of what is not lost.', { used: true, sign: 'share', usual: ['50% ± 5 points', '? from 1% to 99%', '90% ± 2 points'] }),
    quantity('loss', NUMBER, 'Share of the light that is lost.', {
      used: true, sign: 'share', usual: ['3% ± 1 points', '5% ± 2 points'],
      assumed: { text: '6% ×÷ 3', why: 'a dielectric splitter loses a few per cent, most of it at its back face, and a thin film of metal up to a fifth; from memory' },
    }),
    choice('split', ['fixed', 'graduated'], 'Whether its share can be set, on a wheel or a slide.'),
    quantity('wheel', NUMBER, 'Mark of the wheel at which it stands.', { used: true, sign: 'not negative', usual: ['4.5', '6'] }),
    quantity('mark', NUMBER, 'Share that is reflected with the wheel at that mark, of what is not lost, as it was metered; one line for each mark.', { used: true, sign: 'share', numbered: true, usual: ['50% ± 3 points', '88% ± 2 points'] }),
    count('graduations', 'Number of marks on the wheel.', { usual: ['10', '12'] }),
    ...glassOf('Thickness of the glass that the light going through crosses.', ['3 mm', '5 mm', '6 mm'], { text: 'crown', why: 'most splitters are borosilicate crown' }),
    quantity('wedge', ANGLE, 'Angle between its faces; it parts the second spot, which the back face throws back, from the first.', { used: true, sign: 'not negative', usual: ['0.5°', '0°'] }),
    size('50 x 50 mm', '50 x 75 mm'),
  ],
};
