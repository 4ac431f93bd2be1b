import { plain } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { num, text, type Check } from '../check.ts';
import { degrees, figure, hangs, recording } from '../shown-words.ts';

export const noImage: Check = {
  code: 'no-image',
  severity: 'warning',
  title: 'The lamp brings no image out of the hologram',
  page: `**What you see.** No image, however one turns the head.

**Why.** The fringes send light of each colour to one side by as much in sines as reference and object were apart: sin θ_image = μ (sin θ_object − sin θ_reference) + sin θ_lamp, μ the wavelength of the lamp beside that of the laser. Beyond 1 no light leaves the plate. White light on a reflection hologram shines in the one colour that meets the fringes in the layer; where none does, nothing comes back. Of white light on a transmission hologram each angle gets another colour, and some angles get none.

**What to do.** Bring the lamp to the angle of the reference, choose one nearer to the colour of the laser, or look from another side.`,
  example: hangs({ plate: 'reference angle: 60°; object angle: -20°; reference distance: 1500 mm', lamp: 'distance: 1.5 m; angle: 5°; laser: red' }),
  message: d => (d['colour'] === true ? `No colour of ${text(d, 'lamp')} comes from ${text(d, 'plate')} ${d['viewer'] === undefined ? 'as an image: at that angle its light misses the fringes' : `to ${text(d, 'viewer')}`}. Bring the lamp to the ${degrees(d, 'reference')} of the reference${d['viewer'] === undefined ? '' : ', or look from another side'}.`
    : `Under ${text(d, 'lamp')}, at ${degrees(d, 'angle')}, ${text(d, 'plate')} shows no image: its light would have to leave at a sine of ${plain(num(d, 'sine'), 3)}, and 1 runs along the plate. Bring the lamp to the ${degrees(d, 'reference')} of the reference, or choose one nearer to the colour of the laser.`),
  run: ({ replay, graph, plates, setup }) => replay.all.flatMap((s): Problem[] => {
    if (s.trouble !== 'no image' && s.trouble !== 'no colour') return [];
    const reference = graph.value(plates.find(p => p.plate === s.plate)!.arms.find(a => a.arm === s.pair.pair.reference)!.angle!.cell)!;
    const sine = s.trouble === 'no image' ? graph.value(graph.find(`${s.base}.sine`)!)! : undefined;
    const viewer = s.trouble === 'no colour' && s.way === 'transmission' ? s.view.viewer?.id : undefined;
    return [{
      code: 'no-image', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name,
      data: { lamp: s.lamp.id, ...recording(s), reference: figure(Math.abs(reference)), angle: figure(graph.value(s.light.angle)!), colour: s.trouble === 'no colour', ...(sine === undefined ? {} : { sine: figure(sine) }), ...(viewer === undefined ? {} : { viewer }) },
    }];
  }),
};
