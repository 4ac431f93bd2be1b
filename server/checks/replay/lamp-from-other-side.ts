import type { Problem } from '../../model/model.ts';
import { text, type Check } from '../check.ts';
import { capital } from '../words.ts';
import { hangs } from '../shown-words.ts';

const OPPOSITE: Readonly<Record<string, string>> = { above: 'below', below: 'above', 'the left': 'the right', 'the right': 'the left' };

export const lampFromOtherSide: Check = {
  code: 'lamp-from-other-side',
  severity: 'warning',
  title: 'The lamp lights the hologram from another side than its reference came',
  page: `**What you see.** No image, or only its edge, far aside; or, once the plate is turned until it shines, an image that stands on its head or lies on its side.

**Why.** A hologram takes its light from where its reference came, seen with its top up; flipped, from the opposite side. \`up\` says where the top was in the holder, \`reference from\` or the places say from where the reference came.

**What to do.** Bring the lamp to that side. Before the plate is shot: turn the object or the plate in its holder, or bring the reference in from the other side. Write \`up\` as it really was if that is the slip.`,
  example: hangs({ plate: 'reference angle: 45°; reference from: above; reference distance: 1500 mm; up: up', lamp: 'distance: 1.5 m; angle: 45°; from: below' }),
  message: d => `${capital(text(d, 'plate'))}${d['flipped'] === true ? ', flipped,' : ''} takes its light from ${text(d, 'needed')}, by where its reference came from and “up: ${text(d, 'up')}”, and ${text(d, 'lamp')} lights it from ${text(d, 'from')}: ${OPPOSITE[text(d, 'needed')] === text(d, 'from') ? 'turned round until it shines, the image stands on its head' : 'turned until it shines, the image lies on its side'}. Bring the lamp to the other side, or turn the plate in its holder before it is shot.`,
  run: ({ replay, setup }) => replay.all.flatMap((s): Problem[] => (s.trouble === 'other side'
    ? [{ code: 'lamp-from-other-side', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name, data: { lamp: s.lamp.id, plate: s.plate.id, needed: s.hung.from!, from: s.light.from!, up: s.hung.up ?? '', flipped: s.hung.order === -1 } }] : [])),
};
