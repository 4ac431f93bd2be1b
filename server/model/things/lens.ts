import { LENGTH, NUMBER } from '../units.ts';
import { COLLIMATOR, LENS } from './footprint.ts';
import { quantity, type Kind } from './kind.ts';
import { CROWN, glassOf } from './shared.ts';

const facts = (focal: readonly string[], diameters: readonly string[]): Kind['facts'] => [
  quantity('focal length', LENGTH, 'Focal length; negative for a diverging one.', { used: true, sign: 'not zero', usual: focal }),
  quantity('diameter', LENGTH, 'Clear diameter.', { used: true, usual: diameters }),
  quantity('loss', NUMBER, 'Share of the light that is lost.', {
    used: true, sign: 'share', usual: ['8% ± 1 points', '2% ± 1 points'], assumed: { text: '5% ± 4 points', why: 'the two faces of a lens reflect 8 % together where they are bare (Fresnel’s formulas for n = 1.52), 1 % where they are coated (from memory)' },
  }),
  ...glassOf('Glass that the light crosses on its axis.', ['5 mm', '3 mm', '10 mm'], CROWN),
];
const usual = ['focal length', 'diameter', 'loss'];

export const lens: Kind = { word: 'lens', article: 'a lens', light: 'passes', ports: [], expectsLight: true, footprint: LENS, doc: 'A lens that is neither the spreading one nor the collimator.', usual, facts: facts(['200 mm', '100 mm', '500 mm', '-25 mm'], ['50 mm', '25 mm']) };
export const collimator: Kind = {
  word: 'collimator', article: 'a collimator', light: 'passes', ports: [], expectsLight: true, footprint: COLLIMATOR,
  doc: 'A large lens, one focal length behind the pinhole, that makes the spread beam parallel. A curved `mirror` does the same with a fold.', usual, facts: facts(['500 mm', '750 mm', '1 m'], ['150 mm', '200 mm']),
};
