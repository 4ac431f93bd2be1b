import type { Problem } from '../../model/model.ts';
import { num, text, type Check } from '../check.ts';
import { capital } from '../words.ts';
import { colourWord, degrees, figure, hangs, nm, recording } from '../shown-words.ts';

/** Less than this nobody sees, m; common practice. */
const NOTED = 10e-9;

export const colourShifted: Check = {
  code: 'colour-shifted',
  severity: 'note',
  title: 'The finished layer shines in another colour than that of the laser',
  page: `**What you see.** A reflection hologram that was shot in red shines orange, yellow or green, and its image has turned a little aside. A layer that has shrunk so far that the colour is out of sight stays dark.

**Why.** Fixing and solvent baths take 10 to 20 % of the thickness of the layer, and its fringes come nearer together: λ′ = λ · s · n′/n where they lie along the surface. A layer that was swollen before the exposure shrinks by that too. A lamp at a larger angle than the reference makes the colour shorter as well.

**What to do.** If you want another colour, swell the layer before the exposure, or shrink less: a tanning developer with a bleach that leaves the silver keeps the thickness. Else take it as it is: turn the plate by as much as the image has turned. Write the \`replay wavelength\` of a shot, and \`platewright learn\` tells the shrinkage.`,
  example: hangs({ hologram: 'reflection', object: '40 mm', plate: 'reference angle: 45°; reference distance: 1500 mm; index: 1.52; shrinkage: 10%', lamp: 'distance: 1.5 m; angle: 45°' }),
  severityOf: d => (colourWord(num(d, 'colour')) === undefined ? 'warning' : 'note'),
  message: d => {
    const word = colourWord(num(d, 'colour'));
    return `${capital(text(d, 'plate'))} will shine ${word === undefined ? `at ${nm(d, 'colour')}, where eyes see next to nothing` : `in ${word}, at ${nm(d, 'colour')}`} instead of the ${nm(d, 'laser')} of the laser, by what its layer ${text(d, 'change')}. Its image is seen from ${degrees(d, 'angle')} off its normal. ${num(d, 'colour') < num(d, 'laser') ? 'Baths that take less of the layer' : 'Less swelling'} would keep the colour.`;
  },
  run: ({ replay, graph, values, setup }) => replay.all.flatMap((s): Problem[] => {
    if (s.image?.colourBy !== 'layer' || !['shrinkage', 'pre-swell', 'finished index'].some(f => s.plate.facts.has(f))) return [];
    const [colour, laser, angle, thickness] = [s.image.colour, values.fact(s.pair.pair.arm.laser, 'wavelength'), s.image.angle, graph.find(`${s.base}.thickness`)].map(c => c && graph.value(c));
    if (colour === undefined || laser === undefined || angle === undefined || thickness === undefined || Math.abs(colour - laser) < NOTED) return [];
    return [{ code: 'colour-shifted', at: s.plate.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name, data: { ...recording(s), lamp: s.lamp.id, colour: figure(colour), laser: figure(laser), angle: figure(Math.abs(angle)), change: thickness < 0.995 ? 'loses in thickness' : thickness > 1.005 ? 'gains in thickness' : 'becomes' } }];
  }),
};
