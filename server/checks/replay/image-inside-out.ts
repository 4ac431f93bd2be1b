import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';
import { capital } from '../words.ts';
import { hangs } from '../shown-words.ts';

export const imageInsideOut: Check = {
  code: 'image-inside-out',
  severity: 'warning',
  title: 'Who looks at the hologram sees its image inside out',
  page: `**What you see.** Hollows bulge and bulges are hollow: the image is pseudoscopic. Near parts hide behind far ones, and the image turns after the viewer.

**Why.** A hologram that is flipped shows its object from behind its own depth: the part that was nearest to the plate comes nearest to it again, on the viewer's side. A transfer of a flipped master turns that round once more, when it is flipped itself: so it comes right side out (orthoscopic).

**What to do.** Hang a plate of an object as it was recorded. Flip the master for a transfer, use its real image, and flip the transfer too. An image before the plate that is right side out takes these two steps.`,
  example: hangs({ plate: 'reference angle: 45°; reference distance: 1500 mm', lamp: 'distance: 1500 mm; angle: 45°; beam: converging; laser: red; hung: flipped', viewer: 'distance: 900 mm' }),
  message: d => `${capital(text(d, 'viewer'))} will see the image of ${text(d, 'plate')} inside out (pseudoscopic) under ${text(d, 'lamp')}: ${d['transfer'] === true ? (d['flipped'] === true ? 'it was made by the virtual image of the master, and is flipped itself. Flip the master, or hang the plate as it was recorded' : 'a transfer by the real image of a master has to be flipped to come right side out')
    : 'it hangs flipped. Hang it as it was recorded, or make a transfer of it, which comes right side out before the plate'}.`,
  run: ({ replay, setup }) => replay.all.flatMap((s): Problem[] => (s.image && s.hung.depth === 'pseudoscopic' && s.view.viewer
    ? [{ code: 'image-inside-out', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name, data: { plate: s.plate.id, lamp: s.lamp.id, viewer: s.view.viewer.id, transfer: s.pair.pair.arm.object?.kind.light === 'diffracts', flipped: s.hung.order === -1 } }] : [])),
};
