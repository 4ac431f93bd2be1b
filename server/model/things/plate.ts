import { ANGLE, EXPOSURE, LENGTH, NUMBER, PER_LENGTH } from '../units.ts';
import { choice, date, quantity, sizes, text, type Kind } from './kind.ts';

export const plate: Kind = {
  word: 'plate', article: 'a plate', light: 'recorded', ports: ['through'], expectsLight: true,
  doc: 'The plate in its holder. Light that goes on behind it says so: `-> P1 through`.',
  facts: [
    sizes('size', [2], 'Width and height.'),
    choice('emulsion', ['toward the object', 'away from the object', 'toward the reference', 'away from the reference'], 'Which way the emulsion faces.'),
    choice('up', ['up', 'down', 'left', 'right'], 'Where the top of the finished hologram is in the holder.'),
    choice('edges', ['bare', 'masked'], 'Light that enters an edge makes dark bars.'),
    choice('backing', ['none', 'index-matched', 'black'], 'What is behind the plate.'),
    text('stock', 'Name of the plate stock.'),
    quantity('sensitivity', EXPOSURE, 'Exposure that it needs.'),
    quantity('resolving power', PER_LENGTH, 'Finest fringes that it records.'),
    quantity('thickness', LENGTH, 'Thickness of the glass.'),
    quantity('layer', LENGTH, 'Thickness of the emulsion.'),
    quantity('index', NUMBER, 'Refractive index of the layer.'),
    quantity('shrinkage', NUMBER, 'Share of its thickness that the layer loses in processing.', { sign: 'any' }),
    quantity('reciprocity', NUMBER, 'Exponent p of the reciprocity law; 1 when long exposures need no more light.'),
    quantity('tilt', ANGLE, 'Tilt in the holder.', { sign: 'any' }),
    choice('sensitive to', ['red', 'green', 'blue', 'red and green', 'green and blue', 'all'], 'Colours that the stock is sensitive to; decides the safelight.'),
    choice('kind', ['transmission', 'reflection', 'either'], 'What the stock is made for.'),
    date('expires', 'Date on the box.'),
  ],
};
