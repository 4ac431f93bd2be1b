import { ANGLE, LENGTH, NUMBER, POWER, PRESSURE, TEMPERATURE } from '../units.ts';
import { choice, quantity, sizes, text, type Kind } from './kind.ts';

const facing: Kind['facts'] = [quantity('distance', LENGTH, 'From the plate.'), quantity('angle', ANGLE, 'From the normal of the plate.', { sign: 'any' }), quantity('height', LENGTH, 'Above the floor.')];

export const lamp: Kind = { word: 'lamp', article: 'a lamp', light: 'none', ports: [], expectsLight: false, doc: 'The lamp or laser that shows the finished hologram.', facts: [...facing, quantity('size', LENGTH, 'Width of the glowing part.'), quantity('wavelength', LENGTH, 'Wavelength, for a laser or a single colour.'), quantity('bandwidth', LENGTH, 'Width of its colour.'), text('type', 'What lamp it is.')] };
export const viewer: Kind = { word: 'viewer', article: 'a viewer', light: 'none', ports: [], expectsLight: false, doc: 'Who looks at it, and from where.', facts: facing };
export const wall: Kind = { word: 'wall', article: 'a wall', light: 'ends', ports: [], expectsLight: false, doc: 'Where it hangs, or a wall of the room.', facts: facing };
export const screen: Kind = { word: 'screen', article: 'a screen', light: 'ends', ports: [], expectsLight: false, doc: 'A card on which a spot or an image is looked at.', facts: [sizes('size', [2], 'Width and height.')] };
export const room: Kind = {
  word: 'room', article: 'a room', light: 'none', ports: [], expectsLight: false, doc: 'The room during the evening.',
  facts: [quantity('temperature', TEMPERATURE, 'Temperature of the air.', { sign: 'any' }), quantity('humidity', NUMBER, 'Relative humidity.', { sign: 'share' }), quantity('pressure', PRESSURE, 'Air pressure.'), choice('safelight', ['none', 'green', 'red', 'amber', 'blue'], 'Colour of the safelight.')],
};
export const meter: Kind = {
  word: 'meter', article: 'a light meter', light: 'none', ports: [], expectsLight: false, doc: 'A light meter; its calibration error is shared by all its readings.',
  facts: [quantity('head', LENGTH, 'Diameter of its head.'), quantity('calibration', NUMBER, 'Factor by which its readings are multiplied.'), quantity('dark', POWER, 'Reading with the head covered.', { sign: 'not negative' }), sizes('head size', [2], 'Width and height of a rectangular head.')],
};
export const string: Kind = {
  word: 'string', article: 'a string or tape', light: 'none', ports: [], expectsLight: false, doc: 'What paths are measured with; its stretch is shared by all its readings.',
  facts: [choice('class', ['I', 'II', 'III'], 'Accuracy class of a tape.'), quantity('stretch', NUMBER, 'Share by which it is too long.', { sign: 'any' })],
};
