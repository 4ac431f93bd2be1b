import { LENGTH, NUMBER, TIME } from '../units.ts';
import { CARD, FILTER, MASK, SHUTTER, STOP } from './footprint.ts';
import { choice, quantity, type Kind } from './kind.ts';
import { CROWN, glassOf, size } from './shared.ts';

export const shutter: Kind = {
  word: 'shutter', called: 'gate', article: 'a shutter', light: 'passes', ports: [], expectsLight: false, footprint: SHUTTER,
  doc: 'A shutter, or a card lifted by hand.',
  usual: ['mounted'],
  facts: [
    choice('mounted', ['table', 'stand', 'hand'], 'Where it is: on the `table`, which it shakes when it opens, on a `stand` of its own, or a card in the `hand`.', {
      used: true, usual: ['stand', 'hand', 'table'],
      assumed: { text: 'table', why: 'the worst of the three, so that nothing is promised; common practice is a stand of its own' },
    }),
    quantity('ring time', TIME, 'How long the table rings after the shutter on it has opened.', { used: true, sign: 'not negative', usual: ['1 s ×÷ 2'], assumed: { text: '1 s ×÷ 2', why: 'a shutter that is screwed to the table was seen to ring for about a second; common practice' } }),
    size('50 x 80 mm'),
  ],
};
export const attenuator: Kind = {
  word: 'attenuator', article: 'an attenuator', light: 'passes', ports: [], expectsLight: true, footprint: FILTER, doc: 'Weakens the beam by its density.', usual: ['density'],
  facts: [
    quantity('density', NUMBER, 'Optical density: 0.3 lets half through. What its faces throw back is counted in it.', { used: true, sign: 'not negative', usual: ['0.3', '0.6', '1', '2'] }),
    ...glassOf('Glass that the light crosses.', ['2 mm', '3 mm'], CROWN),
  ],
};
export const aperture: Kind = { word: 'aperture', article: 'an aperture', light: 'passes', ports: [], expectsLight: true, footprint: MASK, doc: 'A hole that cuts the beam.', usual: ['diameter'], facts: [quantity('diameter', LENGTH, 'Diameter of the hole.', { usual: ['5 mm', '10 mm', '20 mm'] }), size('50 x 50 mm')] };
export const slit: Kind = {
  word: 'slit', called: 'mask', article: 'a slit', light: 'passes', ports: [], expectsLight: true, footprint: MASK, doc: 'A slit, for instance over the first hologram of a rainbow transfer.', usual: ['width', 'direction'],
  facts: [
    quantity('width', LENGTH, 'Width of the opening.', { used: true, usual: ['4 mm ± 0.5 mm', '2 mm', '5 mm', '10 mm'] }),
    quantity('length', LENGTH, 'Length of the opening; without it the slit is as long as the hologram behind it.', { used: true, usual: ['60 mm', '100 mm'] }),
    choice('direction', ['horizontal', 'vertical'], 'Which way it runs for whoever looks at the finished hologram; horizontal for head-side parallax. Where the top of the plate points `left` or `right`, a horizontal slit stands upright on the table.', { used: true, assumed: { text: 'horizontal', why: 'a rainbow hologram keeps the parallax from side to side, along its slit; common practice' } }),
    size('100 x 100 mm'),
  ],
};
export const blackCard: Kind = { word: 'black card', article: 'a black card', light: 'ends', ports: [], expectsLight: false, footprint: CARD, doc: 'Blocks light that should not reach something.', usual: ['size'], facts: [size('60 x 150 mm', '100 x 150 mm')] };
export const fillCard: Kind = {
  word: 'fill card', article: 'a fill card', light: 'turns', ports: [], expectsLight: false, footprint: CARD, doc: 'A white card that throws light into the shadows of the object.', usual: ['size', 'tone'],
  facts: [
    size('50 x 80 mm', '100 x 150 mm'),
    quantity('tone', NUMBER, 'Share of the light that it gives back.', { sign: 'share', usual: ['80% ± 10 points', '85% ± 5 points'], assumed: { text: '80% ± 10 points', why: 'white card and paper give back 70 to 90 %; from memory' } }),
    quantity('depolarization', NUMBER, 'Share of what it gives back that has lost its polarization.', { used: true, sign: 'share', usual: ['90% ± 10 points'], assumed: { text: '85% ± 15 points', why: 'light wanders about in matt white paper before it comes back; from memory' } }),
  ],
};
export const beamStop: Kind = { word: 'beam stop', article: 'a beam stop', light: 'ends', ports: [], expectsLight: false, footprint: STOP, doc: 'Where an unused beam ends.', usual: ['size'], facts: [size('50 x 50 mm', '30 x 30 mm')] };
