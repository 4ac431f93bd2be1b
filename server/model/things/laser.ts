import { ANGLE, FREQUENCY, LENGTH, NUMBER, PER_TEMPERATURE, POWER, TIME } from '../units.ts';
import { LASER } from './footprint.ts';
import { choice, count, quantity, wavelength, type Kind } from './kind.ts';

export const laser: Kind = {
  word: 'laser', called: 'red', article: 'a laser', light: 'source', ports: [], expectsLight: true, footprint: LASER,
  doc: 'The source. How far apart the two paths may be is its coherence: state a `coherence length`, a `linewidth`, or the `tube length` of a gas laser.',
  rivals: [['coherence length', 'linewidth', 'tube length']],
  usual: ['wavelength', 'tube length', 'modes', 'power', 'beam diameter', 'polarization'],
  facts: [
    // Air wavelengths: CIPM 2007 for the red and green lines of helium-neon, the NIST atomic spectra tables for the ions (from memory); diodes as they are sold.
    wavelength('Wavelength of the line in air.', {
      used: true, usual: ['632.8 nm', '532.1 nm', '543.4 nm', '441.6 nm', '457.9 nm', '488 nm', '514.5 nm', '647.1 nm', '638 nm ± 5 nm', '660 nm ± 5 nm', '405 nm ± 5 nm'],
    }),
    quantity('coherence length', LENGTH, 'The path difference at which fringes have lost the share of their contrast that `coherence contrast` names.', { used: true, usual: ['200 mm ×÷ 1.5', '50 mm ×÷ 1.5', '5 m ×÷ 2', '30 m ×÷ 2'] }),
    quantity('coherence contrast', NUMBER, 'The fringe contrast that is left at one coherence length.', {
      used: true, usual: ['50%', '37%', '71%'], within: { from: 0.001, to: 0.999, words: '0.1 % to 99.9 %' }, assumed: { text: '50%', why: 'makers and books use 50 %, 37 % and 71 %; half is the middle of them' },
    }),
    quantity('linewidth', FREQUENCY, 'Full width of the line at half its height.', { used: true, usual: ['5 MHz ×÷ 2', '10 MHz ×÷ 2', '100 MHz ×÷ 3'] }),
    choice('line shape', ['gaussian', 'lorentzian', 'rectangular'], 'Shape of the line: gaussian for a gas laser, lorentzian for a single-mode diode.', {
      used: true, assumed: { text: 'gaussian', why: 'the line of a gas laser is broadened by the motion of its atoms' },
    }),
    quantity('tube length', LENGTH, 'Length between the mirrors of the laser; decides how far apart its modes are.', { used: true, usual: ['350 mm', '150 mm', '250 mm', '600 mm', '1 m'] }),
    count('modes', 'How many modes are lasing at once, or `unknown`.', { used: true, words: ['unknown'], usual: ['unknown', '1', '2', '3', '4'] }),
    quantity('gain width', FREQUENCY, 'Full width at half height of the range of frequencies that the tube amplifies.', { used: true, usual: ['1.5 GHz', '5 GHz ± 1 GHz'] }),
    quantity('power', POWER, 'Power tonight, as it leaves the laser.', { used: true, usual: ['5 mW ± 10%', '12 mW ± 10%', '35 mW ± 10%', '50 mW ± 5%', '200 mW ± 5%'] }),
    quantity('beam diameter', LENGTH, 'Diameter of the raw beam, to 1/e² of its middle.', {
      used: true, usual: ['0.8 mm', '0.5 mm', '1 mm', '1.5 mm'], assumed: { text: '0.8 mm ×÷ 2', why: 'the raw beam of most lasers that holograms are made with is 0.5 to 1.5 mm wide (from memory)' },
    }),
    quantity('divergence', ANGLE, 'Full angle by which the raw beam widens.', { used: true, usual: ['1 mrad', '1.2 mrad'] }),
    quantity('beam quality', NUMBER, 'How many times faster than a perfect beam it widens (M² of ISO 11146).', {
      used: true, within: { from: 1, to: 100, words: '1 to 100' }, usual: ['1.1 ± 0.1'], assumed: { text: '1.1 ± 0.1', why: 'a laser that is coherent enough for holograms runs in the lowest cross mode, and makers state below 1.2 for that (from memory)' },
    }),
    choice('polarization', ['vertical', 'horizontal', 'random', 'unknown'], 'How the light leaves the laser.', {
      used: true,
      usual: ['vertical', 'horizontal', 'random'],
      assumed: { text: 'unknown', why: 'tubes are sold polarized and random, and the text does not tell; a sheet of polarizer does' },
    }),
    quantity('polarization angle', ANGLE, 'Angle of the polarization from vertical, where it is neither vertical nor horizontal.', { used: true, sign: 'any', usual: ['45°'] }),
    quantity('warm-up', TIME, 'How long it has been on, or must be.', { usual: ['40 min', '20 min', '2 h'] }),
    quantity('drift', PER_TEMPERATURE, 'Change of wavelength with temperature.', { used: true, sign: 'any', usual: ['0.2 nm/K ×÷ 2'] }),
    choice('class', ['1', '1M', '2', '2M', '3R', '3B', '4'], 'Class on its label (IEC 60825-1). It is kept for the cautions and makes no beam safe.', { used: true }),
  ],
};
