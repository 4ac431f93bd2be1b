import type { Problem } from '../../model/model.ts';
import { percent } from '../../model/show.ts';
import { ONE_DEGREE } from '../../model/units.ts';
import { interval } from '../../results/sampling.ts';
import type { Results } from '../../results/plan.ts';
import type { Shown } from '../../results/replay/shown.ts';
import { num, text, type Check } from '../check.ts';
import { capital } from '../words.ts';
import { colourWord, degrees, figure, hangs, nm, recording } from '../shown-words.ts';

/** Lamps are not set nearer than this by hand; common practice. */
const NOTED = 5 * ONE_DEGREE;
const FAR_OFF = 15 * ONE_DEGREE;
const DULL = 0.4;

/** Whether a lamp in the colour of the recording, or a white one, comes from another angle than the reference did. Of another colour another angle is right. */
export function angleOff(s: Shown, { graph, plates }: Results): { readonly lamp: number; readonly reference: number } | undefined {
  const arms = plates.find(p => p.plate === s.plate)?.arms;
  const reference = arms?.find(a => a.arm === s.pair.pair.reference)?.angle?.cell;
  if (!s.image || !reference || reference.missing || (!s.light.white && s.image.ratio)) return undefined;
  const [lamp, needed] = [graph.value(s.light.angle)!, Math.abs(graph.value(reference)!)];
  const give = interval(graph, reference);
  return Math.abs(lamp - needed) > Math.max(NOTED, (give.high - give.low) / 2) ? { lamp, reference: needed } : undefined;
}

export const lampAngleOff: Check = {
  code: 'lamp-angle-off',
  severity: 'warning',
  title: 'The lamp lights the hologram at another angle than its reference did',
  page: `**What you see.** The image turns aside by about as much as the lamp is off, and gets dull; lines across the plane of the lamp are sharp at another distance than those along it. A reflection hologram changes its colour.

**Why.** sin θ_image = sin θ_object − sin θ_reference + sin θ_lamp. A thick layer sends light on only near the angle at which its fringes were made; out of white light it takes the colour that meets them.

**What to do.** Bring the lamp to the angle of the reference. Before the plate is shot: bring the reference to where the lamp will be (\`platewright hang\`).`,
  example: hangs({ plate: 'reference angle: 45°; reference distance: 1500 mm', lamp: 'distance: 1500 mm; angle: 25°; laser: red' }),
  severityOf: d => (Math.abs(num(d, 'lampAngle') - num(d, 'reference')) >= FAR_OFF || (d['brightness'] !== undefined && num(d, 'brightness') < DULL) ? 'warning' : 'note'),
  message: d => `${capital(text(d, 'lamp'))} lights ${text(d, 'plate')} at ${degrees(d, 'lampAngle')}, and its reference came at ${degrees(d, 'reference')}: the image is seen from ${degrees(d, 'image')} off the normal and not from ${degrees(d, 'object')}` +
    `${d['brightness'] === undefined ? '' : `, with ${percent(num(d, 'brightness'))} of its brightness`}${d['colour'] === undefined ? '' : `, in ${colourWord(num(d, 'colour')) ?? 'a colour that no eye sees well'} at ${nm(d, 'colour')}`}. Bring the lamp to the angle of the reference.`,
  run: r => r.replay.all.flatMap((s): Problem[] => {
    const off = angleOff(s, r);
    if (!off || !s.image) return [];
    const { graph, setup } = r;
    const [image, object, share] = [graph.value(s.image.angle)!, graph.value(s.image.object)!, s.image.brightness && graph.value(s.image.brightness)];
    const colour = s.image.colourBy === 'layer' ? graph.value(s.image.colour) : undefined;
    return [{
      code: 'lamp-angle-off', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name,
      data: { lamp: s.lamp.id, ...recording(s), lampAngle: figure(off.lamp), reference: figure(off.reference), image: figure(-image), object: figure(-object), ...(share === undefined ? {} : { brightness: figure(share) }), ...(colour === undefined ? {} : { colour: figure(colour) }) },
    }];
  }),
};
