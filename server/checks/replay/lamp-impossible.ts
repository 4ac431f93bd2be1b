import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';
import { capital } from '../words.ts';
import { degrees, figure, hangs } from '../shown-words.ts';

export const lampImpossible: Check = {
  code: 'lamp-impossible',
  severity: 'warning',
  title: 'A lamp cannot light the hologram from where it is written',
  page: `**What you see.** Nothing: its light runs along the plate, and next to none enters it; or there is no such place, since the lamp would be higher above the plate than it is far from it.

**Why.** The angle of a lamp counts from the normal of the plate, so that 90° is along its surface. A \`distance\` is that from the plate to the lamp along its light: it is never less than the difference of their heights.

**What to do.** Bring the lamp to 30° to 60°, where references mostly come from. Or correct its \`height\`, its \`distance\`, or the height of the \`wall\`.`,
  example: hangs({ plate: 'reference angle: 45°; reference distance: 1500 mm', lamp: 'distance: 1.5 m; angle: 89°' }),
  message: d => (d['steep'] === true ? `${capital(text(d, 'lamp'))} cannot be that much higher or lower than ${text(d, 'plate')} and still so near: the distance is that from the plate to the lamp, along its light. Write a greater one, or another height.`
    : `At ${degrees(d, 'angle')} from the normal the light of ${text(d, 'lamp')} runs along ${text(d, 'plate')}, and next to nothing enters it: no image. Bring it to 30° to 60°.`),
  run: ({ replay, graph, setup }) => replay.all.flatMap((s): Problem[] => (s.trouble === 'edge-on' || s.trouble === 'too steep'
    ? [{ code: 'lamp-impossible', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name, data: { lamp: s.lamp.id, plate: s.plate.id, steep: s.trouble === 'too steep', ...(s.trouble === 'edge-on' ? { angle: figure(graph.value(s.light.angle)!) } : {}) } }] : [])),
};
