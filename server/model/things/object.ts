import { ANGLE, LENGTH, NUMBER } from '../units.ts';
import { choice, points, quantity, sizes, text, type Kind } from './kind.ts';

export const object: Kind = {
  word: 'object', article: 'an object', light: 'scatters', ports: [], expectsLight: true,
  doc: 'What is recorded. Its distances are those of the middle of its depth.',
  facts: [
    quantity('depth', LENGTH, 'From its nearest to its farthest lit part, along the line of sight from the plate.', { used: true, sign: 'not negative' }),
    sizes('size', [2, 3], 'Width, height and depth as seen from the plate.', { used: true }),
    quantity('lit at', ANGLE, 'Angle between the light that falls on it and the line of sight from the plate: 0° is lit squarely from the front, 90° from the side, above 90° from behind.', {
      used: true, sign: 'not negative', within: { from: 0, to: Math.PI, words: '0° to 180°' }, assumed: { text: '45° ± 30°', why: 'most objects are lit from the front and to one side; the distances alone do not tell' },
    }),
    quantity('tone', NUMBER, 'Share of the light that its surface gives back.', { sign: 'share' }),
    quantity('gloss', NUMBER, 'Share of what it gives back that is mirror-like.', { sign: 'share' }),
    quantity('depolarization', NUMBER, 'Share of what it gives back that has lost its polarization.', { sign: 'share' }),
    choice('shape', ['box', 'sphere', 'cylinder', 'points'], 'Rough shape.'),
    points('points', 'Single points of it, from its middle.'),
    points('match to', 'The part whose path is to be matched, from its middle.'),
    quantity('diameter', LENGTH, 'Diameter of a sphere or cylinder.'),
    text('material', 'What it is made of.'),
    choice('warmth', ['cold', 'handled', 'warm'], 'A warm object creeps while it cools.'),
  ],
};
