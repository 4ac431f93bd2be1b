import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';
import { capital } from '../words.ts';
import { hangs } from '../shown-words.ts';

export const lampBehind: Check = {
  code: 'lamp-behind',
  severity: 'warning',
  title: 'A reflection hologram is lit from behind',
  page: `**What you see.** A dark plate, or a faint image in a wrong place.

**Why.** The layer of a reflection hologram throws its light back to the side from which it comes. A lamp at more than 90° from the normal stands on the side away from the viewer.

**What to do.** Light it from the viewer's side: an \`angle\` below 90°. To be lit from behind, in a window, it has to be a transmission hologram.`,
  example: hangs({ hologram: 'reflection', object: '60 mm', plate: 'reference angle: 45°; reference distance: 1500 mm', lamp: 'distance: 1.5 m; angle: 135°' }),
  message: d => `${capital(text(d, 'lamp'))} stands behind ${text(d, 'plate')}, which is a reflection hologram and throws its light back: from the front it stays dark. Light it from the side of who looks, at less than 90° from its normal.`,
  run: ({ replay, setup }) => replay.all.flatMap((s): Problem[] => (s.trouble === 'lamp behind' ? [{ code: 'lamp-behind', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name, data: { lamp: s.lamp.id, plate: s.plate.id } }] : [])),
};
