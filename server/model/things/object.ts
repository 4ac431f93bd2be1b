import { ANGLE, LENGTH, NUMBER } from '../units.ts';
import { OBJECT } from './footprint.ts';
import { choice, point, points, quantity, sizes, text, type Kind } from './kind.ts';

export const object: Kind = {
  word: 'object', called: 'shell', article: 'an object', light: 'scatters', ports: [], expectsLight: true, footprint: OBJECT,
  doc: 'What is recorded. Its distances are those of the middle of its depth.',
  usual: ['size', 'tone', 'gloss'],
  facts: [
    quantity('depth', LENGTH, 'From its nearest to its farthest lit part, along the line of sight from the plate.', { used: true, sign: 'not negative', usual: ['35 mm', '20 mm', '50 mm'] }),
    sizes('size', [2, 3], 'Width, height and depth as seen from the plate.', { used: true, usual: ['40 x 60 x 35 mm', '50 x 60 x 20 mm'] }),
    quantity('lit at', ANGLE, 'Angle between the light that falls on it and the line of sight from the plate: 0° is lit squarely from the front, 90° from the side, above 90° from behind.', {
      used: true, sign: 'not negative', usual: ['45° ± 5°', '60° ± 5°', '180°'], within: { from: 0, to: Math.PI, words: '0° to 180°' }, assumed: { text: '45° ± 30°', why: 'most objects are lit from the front and to one side; the distances alone do not tell' },
    }),
    quantity('tone', NUMBER, 'Share of the light that its surface gives back.', {
      used: true, sign: 'share', usual: ['35% ± 10 points', '15% ± 5 points', '60% ± 10 points'], assumed: { text: '30% ×÷ 2.5', why: 'from rusty iron to bleached shell, 12 to 75 %; common practice, and object light stays a guess within a factor of three until it is metered' },
    }),
    quantity('gloss', NUMBER, 'Share of what it gives back that is mirror-like.', {
      used: true, sign: 'share', usual: ['10% ± 5 points', '40% ± 15 points'], assumed: { text: '10% ×÷ 4', why: 'a matt thing gives back a few per cent of it as gleam, a glazed or wet one up to 40 %; from memory' },
    }),
    quantity('gloss angle', ANGLE, 'Angle from the mirror direction at which its gleam is down to a half.', {
      used: true, within: { from: 0.001, to: 1.2, words: '0.06° to 68°' }, usual: ['15° ×÷ 1.5', '5° ×÷ 2'], assumed: { text: '15° ×÷ 2', why: 'from a glaze or a wet stone to satin, 7° to 30°; from memory' },
    }),
    quantity('scatter', NUMBER, 'Its light at the plate as a multiple of what size, tone and gloss say; write it once its light was metered.', {
      used: true, usual: ['1 ×÷ 3', '0.6 ×÷ 1.3'], assumed: { text: '1 ×÷ 3', why: 'light from an object is a guess within a factor of three either way until it is metered; common practice' },
    }),
    quantity('passes', NUMBER, 'Share of the light of a screen behind it that it lets by and through toward the plate: of a leaf, a slide, a cut-out.', {
      used: true, sign: 'share', usual: ['60% ± 20 points', '10% ×÷ 2'], assumed: { text: '30% ×÷ 3', why: 'a thin cut-out lets most of it by, a dense slide a few per cent; from memory' },
    }),
    quantity('depolarization', NUMBER, 'Share of what it gives back that has lost its polarization.', {
      used: true, sign: 'share', usual: ['60% ± 20 points', '10% ± 10 points'], assumed: { text: '50% ± 50 points', why: 'bare metal keeps the polarization, chalk, shell and paint lose nearly all of it: anything between is met; from memory' },
    }),
    choice('shape', ['rounded', 'box', 'sphere', 'cylinder', 'points'], 'Rough shape; `rounded` is a ball stretched to its size, `points` has parts anywhere within it. Fringes are looked at over the whole box of its size.', { used: true, assumed: { text: 'rounded', why: 'shells, pots and worn tools have no corners; their light and their lit side are those of a ball that is stretched to their size' } }),
    points('points', 'Single points of it, from its middle as the plate sees it: to the right, up, and toward the plate.', { used: true, usual: ['(0, 0, 0) mm, (10, 5, -3) mm', '(0, 0, 15) mm'] }),
    point('match to', 'The part whose path is to be matched, from its middle as the plate sees it: to the right, up, and toward the plate.', { usual: ['(0, 0, 10) mm', '(0, 15, 5) mm'] }),
    quantity('diameter', LENGTH, 'Diameter of a sphere or cylinder.', { used: true, usual: ['40 mm', '60 mm'] }),
    choice('axis', ['upright', 'across', 'along'], 'How a cylinder lies: upright, across the line of sight, or along it.', { used: true }),
    text('material', 'What it is made of.', ['slipware', 'bone', 'forged iron']),
    choice('warmth', ['cold', 'handled', 'warm'], 'A warm object creeps while it cools.'),
  ],
};
