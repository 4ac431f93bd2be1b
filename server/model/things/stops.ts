import { LENGTH, NUMBER } from '../units.ts';
import { choice, quantity, sizes, type Kind } from './kind.ts';

const size = sizes('size', [2], 'Width and height.');

export const shutter: Kind = {
  word: 'shutter', article: 'a shutter', light: 'passes', ports: [], expectsLight: false,
  doc: 'A shutter, or a card lifted by hand.',
  facts: [choice('mounted', ['table', 'stand', 'hand'], 'Where it is: on the `table`, which it shakes when it opens, on a `stand` of its own, or a card in the `hand`.'), size],
};
export const attenuator: Kind = {
  word: 'attenuator', article: 'an attenuator', light: 'passes', ports: [], expectsLight: true, doc: 'Weakens the beam by its density.',
  facts: [quantity('density', NUMBER, 'Optical density: 0.3 lets half through.', { sign: 'not negative' }), quantity('thickness', LENGTH, 'Glass that the light crosses.', { used: true })],
};
export const aperture: Kind = { word: 'aperture', article: 'an aperture', light: 'passes', ports: [], expectsLight: true, doc: 'A hole that cuts the beam.', facts: [quantity('diameter', LENGTH, 'Diameter of the hole.'), size] };
export const slit: Kind = {
  word: 'slit', article: 'a slit', light: 'passes', ports: [], expectsLight: true, doc: 'A slit, for instance over the first hologram of a rainbow transfer.',
  facts: [quantity('width', LENGTH, 'Width of the opening.'), choice('direction', ['horizontal', 'vertical'], 'Which way it runs; horizontal for head-side parallax.'), size],
};
export const blackCard: Kind = { word: 'black card', article: 'a black card', light: 'ends', ports: [], expectsLight: false, doc: 'Blocks light that should not reach something.', facts: [size] };
export const fillCard: Kind = { word: 'fill card', article: 'a fill card', light: 'turns', ports: [], expectsLight: false, doc: 'A white card that throws light into the shadows of the object.', facts: [size, quantity('tone', NUMBER, 'Share of the light that it gives back.', { sign: 'share' })] };
export const beamStop: Kind = { word: 'beam stop', article: 'a beam stop', light: 'ends', ports: [], expectsLight: false, doc: 'Where an unused beam ends.', facts: [size] };
