import { ANGLE, EXPOSURE, LENGTH, NUMBER, PER_LENGTH } from '../units.ts';
import { PLATE } from './footprint.ts';
import { choice, date, quantity, text, type Kind } from './kind.ts';
import { INDEX, LAYER, MATERIALS, RESOLVING_POWER, SENSITIVITY } from './materials.ts';
import { size } from './shared.ts';

const SLOPE = { from: -Math.PI / 2, to: Math.PI / 2, words: '-90° to 90°' };

export const plate: Kind = {
  word: 'plate', article: 'a plate', light: 'recorded', ports: ['through'], expectsLight: true, footprint: PLATE,
  doc: 'The plate in its holder. Light that goes on behind it says so: `-> P1 through`.',
  usual: ['size', 'material', 'emulsion', 'up', 'edges', 'resolving power', 'sensitivity'], rivals: [['image behind', 'image before']],
  facts: [
    size('63 x 63 mm', '102 x 127 mm', '127 x 178 mm', '200 x 250 mm', '300 x 400 mm'),
    choice('emulsion', ['toward the object', 'away from the object', 'toward the reference', 'away from the reference'], 'Which way the emulsion faces.', { used: true }),
    choice('up', ['up', 'down', 'left', 'right'], 'Where the top of the finished hologram is in the holder, seen from the object.', { used: true }),
    choice('edges', ['bare', 'masked', 'index-matched'], 'Light that enters a bare edge makes dark bars.', { used: true, assumed: { text: 'bare', why: 'a plate comes with bare edges' } }),
    choice('backing', ['none', 'index-matched', 'black'], 'What is behind the plate.', { used: true, assumed: { text: 'none', why: 'a plate stands in its holder without a backing unless one is put there' } }),
    quantity('reference angle', ANGLE, 'Angle at which the reference arrives at its middle, from the plate’s normal; for a setup that names distances only.', { used: true, sign: 'any', within: SLOPE, usual: ['45° ± 2°', '30° ± 2°', '56.6° ± 2°'] }),
    quantity('reference distance', LENGTH, 'From how far the reference spreads, or `parallel`; for a setup in which nothing spreads it.', { used: true, words: ['parallel'], usual: ['600 mm ± 20 mm', 'parallel'] }),
    choice('reference from', ['the side', 'above', 'below'], 'From where the reference comes, with a `reference angle`: level from the side, or overhead, or from below; the `object angle` counts to the same side.', {
      used: true, assumed: { text: 'the side', why: 'on most tables all beams run level' },
    }),
    quantity('object angle', ANGLE, 'Angle at which object light arrives at its middle, from the normal, counted to the same side as the reference’s; for a setup that names distances only.', {
      used: true, sign: 'any', within: SLOPE, usual: ['0° ± 5°', '-15° ± 3°'], assumed: { text: '0° ± 10°', why: 'a plate is mostly set square to the line of sight; common practice' },
    }),
    quantity('image behind', LENGTH, 'How far behind the finished plate, seen by who looks at it, the middle of its image is to stand; what to record for that, `platewright hang` tells.', { used: true, sign: 'not negative', usual: ['80 mm', '0 mm'] }),
    quantity('image before', LENGTH, 'The same of an image that is to stand before the plate; it takes a master and a transfer.', { used: true, sign: 'not negative', usual: ['30 mm', '50 mm'] }),
    text('stock', 'Name of the plate stock.', ['"box 3"']),
    choice('material', MATERIALS, 'What the layer is. Without figures of its own, those of its sort are assumed, as bands.', { used: true }),
    quantity('sensitivity', EXPOSURE, 'Exposure that it needs.', { used: true, within: { from: 1e-4, to: 1e5, words: '0.01 µJ/cm² to 10 J/cm²' }, usual: ['40 µJ/cm² ×÷ 2', '120 µJ/cm² ×÷ 2', '1.5 mJ/cm² ×÷ 2'], assumedBy: { phrase: 'material', of: SENSITIVITY } }),
    quantity('resolving power', PER_LENGTH, 'Finest fringes that it records.', { used: true, within: { from: 5e4, to: 5e7, words: '50 lines/mm to 50000 lines/mm' }, usual: ['3000 lines/mm ± 10%', '5000 lines/mm ± 10%', '8000 lines/mm ± 15%'], assumedBy: { phrase: 'material', of: RESOLVING_POWER } }),
    quantity('thickness', LENGTH, 'Thickness of the glass or film: how much light enters by its edge.', {
      used: true, usual: ['1.5 mm', '2 mm', '3 mm'], assumed: { text: '2 mm ×÷ 1.5', why: 'plates are coated on glass of 1.5 to 3 mm; common practice, from memory' },
      assumedBy: { phrase: 'base', of: { film: { text: '0.18 mm ×÷ 1.5', why: 'films are 0.12 to 0.25 mm thick; common practice, from memory' } } },
    }),
    choice('base', ['glass', 'film', 'film on glass', 'film between glass'], 'What carries the layer. `film on glass` is stuck to one glass by a liquid or by vacuum; `film` alone and film that is clipped `between glass` flex in their holder.', { used: true, assumed: { text: 'glass', why: 'a plate is of glass unless it is said to be film' } }),
    quantity('layer', LENGTH, 'Thickness of the emulsion.', { used: true, within: { from: 1e-7, to: 1e-3, words: '0.1 µm to 1 mm' }, usual: ['6 µm ± 1 µm', '7 µm ± 1 µm'], assumedBy: { phrase: 'material', of: LAYER } }),
    quantity('index', NUMBER, 'Refractive index of the layer before processing.', {
      used: true, within: { from: 1, to: 3, words: '1 to 3' }, usual: ['1.62 ± 0.03'],
      assumed: { text: '1.62 ± 0.03', why: 'unexposed silver halide in gelatin has 1.6 to 1.65 (Bjelkhagen 1993, from memory), and most plates are that' }, assumedBy: { phrase: 'material', of: INDEX },
    }),
    quantity('index amplitude', NUMBER, 'By how much the index swings about its mean in the finished hologram; estimates of its efficiency rest on it.', {
      used: true, within: { from: 1e-5, to: 0.3, words: '0.00001 to 0.3' }, usual: ['0.03 ×÷ 2'], assumed: { text: '0.03 ×÷ 2', why: 'bleached silver halide and gelatin reach 0.01 to 0.06, by exposure and process; from memory' },
    }),
    quantity('shrinkage', NUMBER, 'Share of its thickness that the layer loses in processing; negative where it swells.', {
      used: true, sign: 'any', within: { from: -1, to: 0.99, words: '-100 % to 99 %' }, usual: ['15% ± 5 points', '0% ± 3 points'],
      assumed: { text: '0% ± 10 points', why: 'tanning baths with a bleach that leaves the silver keep the thickness, fixing and solvent bleaches take 10 to 20 %; from memory' },
    }),
    quantity('pre-swell', NUMBER, 'Share by which the layer is swollen before the exposure, so that it is thinner in the finished hologram.', { used: true, sign: 'not negative', within: { from: 0, to: 2, words: '0 % to 200 %' }, usual: ['10% ± 3 points'] }),
    quantity('finished index', NUMBER, 'Refractive index of the layer in the finished hologram; without it that before processing counts.', { used: true, within: { from: 1, to: 3, words: '1 to 3' }, usual: ['1.55 ± 0.02'] }),
    quantity('reciprocity', NUMBER, 'Exponent p of the reciprocity law; 1 when long exposures need no more light.', {
      used: true, within: { from: 0.3, to: 1, words: '0.3 to 1' }, usual: ['1', '0.9 ± 0.05'], assumed: { text: '1', why: 'nothing is added for long exposures until a figure is given; 0.85 to 0.95 is often quoted for fine-grain silver halide, and measurements disagree' },
    }),
    quantity('tilt', ANGLE, 'Tilt in the holder.', { sign: 'any', usual: ['0°', '5°'] }),
    choice('sensitive to', ['red', 'green', 'blue', 'red and green', 'green and blue', 'all'], 'Colours that the stock is sensitive to; decides the safelight.', { used: true }),
    choice('kind', ['transmission', 'reflection', 'either'], 'What the stock is made for.'),
    date('expires', 'Date on the box.'),
  ],
};
