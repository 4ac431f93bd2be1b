import { ANGLE, NUMBER } from '../units.ts';
import { SCREEN } from './footprint.ts';
import { quantity, type Kind } from './kind.ts';
import { glassOf, size } from './shared.ts';

const facts: Kind['facts'] = [
  size('150 x 150 mm', '100 x 100 mm', '200 x 250 mm'),
  ...glassOf('Thickness of the glass.', ['3 mm', '2 mm'], { text: 'window', why: 'ground glass is mostly made of window glass' }),
  quantity('loss', NUMBER, 'Share of the light that is lost.', {
    used: true, sign: 'share', usual: ['30% ± 10 points'], assumed: { text: '30% ± 15 points', why: 'besides its two faces, ground glass throws a part of the light back; from memory' },
  }),
  quantity('scatter angle', ANGLE, 'Angle from straight on at which the scattered light is down to a half.', {
    used: true, within: { from: 0.001, to: 1.2, words: '0.06° to 68°' }, usual: ['10° ×÷ 1.5', '60° ± 5°'], assumed: { text: '12° ×÷ 2', why: 'finely to coarsely ground glass scatters to about 6° to 25°, opal far wider; from memory' },
  }),
  quantity('scatter', NUMBER, 'Its light at the plate as a multiple of what loss and scatter angle say; write it once its light was metered.', {
    used: true, usual: ['1 ×÷ 3', '0.6 ×÷ 1.3'], assumed: { text: '1 ×÷ 3', why: 'light from a screen is a guess within a factor of three either way until it is metered; common practice' },
  }),
  quantity('depolarization', NUMBER, 'Share of what comes through that has lost its polarization.', {
    used: true, sign: 'share', usual: ['5% ± 5 points', '90% ± 10 points'], assumed: { text: '10% ± 10 points', why: 'a ground face scatters the light once and mostly keeps its polarization, opal does not; from memory' },
  }),
];
const usual = ['size', 'thickness', 'loss'];

export const groundGlass: Kind = { word: 'ground glass', article: 'a ground glass', light: 'scatters', ports: [], expectsLight: true, footprint: SCREEN, doc: 'A screen that scatters the light that goes through it; it lights an object from behind, or is the object itself.', usual, facts };
export const diffuser: Kind = { word: 'diffuser', article: 'a diffuser', light: 'scatters', ports: [], expectsLight: true, footprint: SCREEN, doc: 'Scatters what goes through, to soften the light on an object.', usual, facts };
