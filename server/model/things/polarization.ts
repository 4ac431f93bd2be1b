import { ANGLE, LENGTH, NUMBER } from '../units.ts';
import { RING } from './footprint.ts';
import { quantity, wavelength, type Assumed, type Fact, type Kind } from './kind.ts';
import { glassOf } from './shared.ts';

const facts = (loss: Assumed, angles: readonly string[]): readonly Fact[] => [
  quantity('axis', ANGLE, 'Angle of its axis from vertical, seen along the beam.', { used: true, sign: 'any', usual: angles }),
  quantity('loss', NUMBER, 'Share of the light that is lost besides what it selects.', { used: true, sign: 'share', usual: [loss.text], assumed: loss }),
  quantity('diameter', LENGTH, 'Clear diameter.', { used: true, usual: ['25 mm', '50 mm'] }),
  ...glassOf('Glass that the light crosses.', ['2 mm', '3 mm'], { text: 'window', why: 'sheets are mostly held between plain glass' }),
];
const usual = ['axis', 'loss'];

export const polarizer: Kind = {
  word: 'polarizer', called: 'LP1', article: 'a polarizer', light: 'passes', ports: [], expectsLight: true, footprint: RING, doc: 'Lets one direction of polarization through.', usual,
  facts: facts({ text: '25% ± 12 points', why: 'sheet lets 65 to 85 % of the light through that has its direction; from memory' }, ['0°', '90°', '45°']),
};
export const halfWavePlate: Kind = {
  word: 'half-wave plate', called: 'HW1', article: 'a half-wave plate', light: 'passes', ports: [], expectsLight: true, footprint: RING, doc: 'Turns the polarization by twice the angle to its axis.', usual,
  facts: [
    ...facts({ text: '3% ± 2 points', why: 'two coated faces and the cement between them lose 1 to 5 % together; from memory' }, ['45°', '22.5°', '0°']),
    wavelength('Wavelength for which it is made: there it turns by just half a wave.', { used: true, usual: ['632.8 nm', '532.1 nm'] }),
  ],
};
