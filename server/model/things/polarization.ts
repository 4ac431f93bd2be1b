import { ANGLE, NUMBER } from '../units.ts';
import { quantity, type Kind } from './kind.ts';

const facts: Kind['facts'] = [
  quantity('axis', ANGLE, 'Angle of its axis from vertical, seen along the beam.', { sign: 'any' }),
  quantity('loss', NUMBER, 'Share of the light that is lost besides what it selects.', { sign: 'share' }),
];

export const polarizer: Kind = { word: 'polarizer', article: 'a polarizer', light: 'passes', ports: [], expectsLight: true, doc: 'Lets one direction of polarization through.', facts };
export const halfWavePlate: Kind = { word: 'half-wave plate', article: 'a half-wave plate', light: 'passes', ports: [], expectsLight: true, doc: 'Turns the polarization by twice the angle to its axis.', facts };
