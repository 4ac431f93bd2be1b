import { ANGLE, LENGTH, FREQUENCY, NUMBER, POWER, TIME, PER_TEMPERATURE } from '../units.ts';
import { choice, count, quantity, type Kind } from './kind.ts';

export const laser: Kind = {
  word: 'laser', article: 'a laser', light: 'source', ports: [], expectsLight: true,
  doc: 'The source. How far apart the two paths may be is its coherence: state a `coherence length`, a `linewidth`, or the `tube length` of a gas laser.',
  facts: [
    quantity('wavelength', LENGTH, 'Wavelength of the line in air.', { used: true, within: { from: 200e-9, to: 2000e-9, words: '200 nm to 2000 nm' } }),
    quantity('coherence length', LENGTH, 'The path difference at which fringes have lost the share of their contrast that `coherence contrast` names.', { used: true }),
    quantity('coherence contrast', NUMBER, 'The fringe contrast that is left at one coherence length.', {
      used: true, within: { from: 0.001, to: 0.999, words: '0.1 % to 99.9 %' }, assumed: { text: '50%', why: 'makers and books use 50 %, 37 % and 71 %; half is the middle of them' },
    }),
    quantity('linewidth', FREQUENCY, 'Full width of the line at half its height.', { used: true }),
    choice('line shape', ['gaussian', 'lorentzian', 'rectangular'], 'Shape of the line: gaussian for a gas laser, lorentzian for a single-mode diode.', {
      used: true, assumed: { text: 'gaussian', why: 'the line of a gas laser is broadened by the motion of its atoms' },
    }),
    quantity('tube length', LENGTH, 'Length between the mirrors of the laser; decides how far apart its modes are.', { used: true }),
    count('modes', 'How many modes are lasing at once, or `unknown`.', { used: true, words: ['unknown'] }),
    quantity('gain width', FREQUENCY, 'Full width at half height of the range of frequencies that the tube amplifies.', { used: true }),
    quantity('power', POWER, 'Power tonight, as it leaves the laser.'),
    quantity('beam diameter', LENGTH, 'Diameter of the raw beam, to 1/e² of its middle.'),
    quantity('divergence', ANGLE, 'Full angle by which the raw beam widens.'),
    choice('polarization', ['vertical', 'horizontal', 'random', 'unknown'], 'How the light leaves the laser.'),
    quantity('polarization angle', ANGLE, 'Angle of the polarization from vertical.', { sign: 'any' }),
    quantity('warm-up', TIME, 'How long it has been on, or must be.'),
    quantity('drift', PER_TEMPERATURE, 'Change of wavelength with temperature.', { sign: 'any' }),
  ],
};
