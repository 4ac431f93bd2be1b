import { ANGLE, LENGTH, LIGHT, NUMBER, POWER, PRESSURE, TEMPERATURE } from '../units.ts';
import { CARD } from './footprint.ts';
import { choice, named, quantity, sizes, text, wavelength, type Fact, type Kind } from './kind.ts';
import { size } from './shared.ts';

/** Where something stands before the finished hologram. `angle`: how its angle counts; of a wall only how high the hologram hangs on it is computed with. */
const before = (distances: readonly string[], angles: readonly string[], heights: readonly string[], words: { readonly angle?: string; readonly height?: string; readonly used?: boolean } = {}): readonly Fact[] => [
  quantity('distance', LENGTH, 'From the plate.', { used: words.used ?? true, usual: distances }),
  quantity('angle', ANGLE, words.angle ?? 'From the normal of the plate.', { used: words.used ?? true, sign: 'any', usual: angles }),
  quantity('height', LENGTH, words.height ?? 'Above the floor.', { used: true, usual: heights }),
  named('plate', 'plate', 'Which plate, where the setup has more than one.', { used: true }),
];

export const lamp: Kind = {
  word: 'lamp', called: 'spot', article: 'a lamp', light: 'none', ports: [], expectsLight: false, footprint: undefined, doc: 'The lamp or laser that shows the finished hologram.', usual: ['distance', 'angle', 'size'],
  facts: [
    ...before(['1.5 m', '2 m'], ['45°', '30°', '56.6°'], ['2.2 m']), quantity('size', LENGTH, 'Width of the glowing part.', { used: true, usual: ['3 mm', '5 mm', '1 mm'] }),
    wavelength('Wavelength, for a laser or a single colour.', { used: true, usual: ['632.8 nm', '532.1 nm', '630 nm ± 5 nm'] }), quantity('bandwidth', LENGTH, 'Width of its colour.', { used: true, usual: ['20 nm', '30 nm', '300 nm'] }),
    named('laser', 'laser', 'The laser of the setup that it is, where the hologram is looked at in laser light.', { used: true }), text('type', 'What lamp it is.', ['"halogen spot"', '"red LED"']),
    choice('from', ['above', 'below', 'the left', 'the right'], 'From where it lights the hologram, for who looks at it; heights tell it too.', { used: true, usual: ['above', 'below', 'the left'] }),
    choice('beam', ['diverging', 'parallel', 'converging'], 'How its light comes to the hologram: converging light would run together at its `distance` behind it.', { used: true, usual: ['parallel', 'converging'], assumed: { text: 'diverging', why: 'a lamp sends its light apart' } }),
    choice('hung', ['as recorded', 'flipped'], 'How the hologram hangs before it: as in its holder, so that the image is behind it, or flipped, so that the light runs the way of the reference backwards. Without it a transfer is flipped, and no other is.', { used: true, usual: ['flipped', 'as recorded'] }),
  ],
};
export const viewer: Kind = { word: 'viewer', called: 'visitor', article: 'a viewer', light: 'none', ports: [], expectsLight: false, footprint: undefined, doc: 'Who looks at it, and from where.', usual: ['distance'], facts: before(['600 mm', '1 m'], ['0°', '10°'], ['1.6 m', '1.2 m'], { angle: 'From the normal of the plate, counted to the same side as that of the lamp.' }) };
export const wall: Kind = { word: 'wall', article: 'a wall', light: 'ends', ports: [], expectsLight: false, footprint: undefined, doc: 'Where it hangs, or a wall of the room.', usual: ['height'], facts: before(['50 mm', '2 m'], ['0°'], ['1.5 m'], { height: 'Above the floor, of the middle of what hangs on it.', used: false }) };
export const screen: Kind = { word: 'screen', called: 'card', article: 'a screen', light: 'ends', ports: [], expectsLight: false, footprint: CARD, doc: 'A card on which a spot or an image is looked at.', usual: ['size'], facts: [size('100 x 150 mm', '200 x 200 mm')] };
export const room: Kind = {
  word: 'room', called: '', article: 'a room', light: 'none', ports: [], expectsLight: false, footprint: undefined, doc: 'The room during the evening.', usual: ['temperature', 'humidity', 'safelight'],
  facts: [
    quantity('temperature', TEMPERATURE, 'Temperature of the air.', { sign: 'any', usual: ['20 °C ± 0.5 K'] }), quantity('humidity', NUMBER, 'Relative humidity.', { sign: 'share', usual: ['50% ± 5 points'] }),
    quantity('pressure', PRESSURE, 'Air pressure.', { usual: ['1013 hPa'] }), choice('safelight', ['none', 'green', 'red', 'amber', 'blue'], 'Colour of the safelight.', { used: true, usual: ['green', 'red', 'none'] }),
  ],
};
export const meter: Kind = {
  word: 'meter', called: 'meter-1', article: 'a light meter', light: 'none', ports: [], expectsLight: false, footprint: undefined, doc: 'A light meter; its calibration error is shared by all its readings.', usual: ['head', 'calibration', 'dark'], rivals: [['head', 'head size']],
  facts: [
    quantity('head', LENGTH, 'Diameter of its head.', { used: true, usual: ['10 mm', '8 mm'] }), sizes('head size', [2], 'Width and height of a rectangular head.', { used: true, usual: ['10 x 10 mm'] }),
    quantity('calibration', NUMBER, 'Factor by which its readings are multiplied.', {
      used: true, usual: ['1 ± 5%', '1 ± 3%'], assumed: { text: '1 ± 10%', why: 'a silicon head that is set to the wavelength is right to 5 or 10 % some years after its calibration; from memory' },
    }),
    quantity('dark', POWER, 'Reading with the head covered, in the unit in which it reads; a bare number for one without units.', { used: true, sign: 'not negative', or: [LIGHT, NUMBER], usual: ['8 nW ± 2 nW', '0 nW', '1'] }), wavelength('Wavelength to which it is set.', { usual: ['633 nm', '532 nm'] }),
  ],
};
const STEEL = { text: '0%', why: 'a tape does not stretch as thread does; how far it may be off is its class (2014/32/EU, annex X)' };
export const string: Kind = {
  word: 'string', called: 'thread', article: 'a string or tape', light: 'none', ports: [], expectsLight: false, footprint: undefined, doc: 'What paths are measured with; its stretch is shared by all its readings.', usual: ['stretch'],
  facts: [
    choice('class', ['I', 'II', 'III'], 'Accuracy class of a tape.', { used: true }),
    quantity('stretch', NUMBER, 'Share by which it is too long; negative where it reads too much.', {
      used: true, sign: 'any', usual: ['0.3% ± 0.2 points', '0%'], within: { from: -0.2, to: 0.2, words: '-20 % to 20 %' },
      assumed: { text: '0% ± 0.5 points', why: 'thread gives by 0.1 to 1 % of its length when it is pulled; common practice' }, assumedBy: { phrase: 'class', of: { I: STEEL, II: STEEL, III: STEEL } },
    }),
  ],
};
