import { LENGTH, NUMBER } from '../units.ts';
import { choice, quantity, sizes, type Kind } from './kind.ts';

const facts: Kind['facts'] = [
  sizes('size', [2], 'Width and height.'),
  quantity('thickness', LENGTH, 'Thickness of the glass.', { used: true }),
  choice('glass', ['crown', 'fused silica', 'window', 'acrylic'], 'What it is made of.', { used: true, assumed: { text: 'window', why: 'ground glass is mostly made of window glass' } }),
  quantity('loss', NUMBER, 'Share of the light that is lost.', { sign: 'share' }),
];

export const groundGlass: Kind = { word: 'ground glass', article: 'a ground glass', light: 'scatters', ports: [], expectsLight: true, doc: 'A screen that scatters the light that goes through it; it lights an object from behind, or is the object itself.', facts };
export const diffuser: Kind = { word: 'diffuser', article: 'a diffuser', light: 'scatters', ports: [], expectsLight: true, doc: 'Scatters what goes through, to soften the light on an object.', facts };
