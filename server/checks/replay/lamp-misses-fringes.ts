import type { Problem } from '../../model/model.ts';
import { percent } from '../../model/show.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';
import { angleOff } from './lamp-angle-off.ts';
import { figure, hangs, nm, recording } from '../shown-words.ts';

const DULL = 0.7;
const DARK = 0.4;

export const lampMissesFringes: Check = {
  code: 'lamp-misses-fringes',
  severity: 'warning',
  title: 'Light of one colour misses the fringes of the finished layer',
  page: `**What you see.** A dull image, or none, under a laser or a lamp of one colour, although the plate is bright under others.

**Why.** A thick layer answers to one colour at each angle. A lamp of another wavelength than the laser's has to come from another angle; a layer that has shrunk answers to a shorter wavelength. A reflection hologram is the most choosy: 10 to 20 nm are all that it sends back.

**What to do.** Choose a lamp whose colour is that in which the finished plate shines, or a white one. Else bring the lamp to the angle that fits its colour: \`platewright hang\` tells how to record for it.`,
  example: hangs({ hologram: 'reflection', object: '40 mm', plate: 'reference angle: 45°; reference distance: 1500 mm; material: ultra-fine silver halide', lamp: 'distance: 1.5 m; angle: 45°; wavelength: 530 nm' }),
  severityOf: d => (num(d, 'brightness') < DARK ? 'warning' : 'note'),
  message: d => `The light of ${text(d, 'lamp')}, ${nm(d, 'colour')}, misses the fringes in ${text(d, 'plate')}: its image has at most ${percent(num(d, 'brightness'))} of its brightness. They were made with ${nm(d, 'laser')}; take a lamp near to the colour in which the finished plate shines, or a white one.`,
  run: r => r.replay.all.flatMap((s): Problem[] => {
    const share = s.image?.brightness;
    if (!s.image || !share || share.missing || angleOff(s, r)) return [];
    const { graph, values, setup } = r;
    const { high } = interval(graph, share);
    if (high >= DULL) return [];
    return [{ code: 'lamp-misses-fringes', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name, data: { lamp: s.lamp.id, ...recording(s), brightness: figure(high), colour: figure(graph.value(s.image.colour)!), laser: figure(graph.value(values.fact(s.pair.pair.arm.laser, 'wavelength')!)!) } }];
  }),
};
