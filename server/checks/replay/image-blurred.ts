import type { Problem } from '../../model/model.ts';
import { num, text, type Check } from '../check.ts';
import { figure, hangs, mm, recording } from '../shown-words.ts';

/** Multiples of what an eye tells apart, from which an image looks soft, and blurred; common practice. */
export const SOFT = 3;
const BLURRED = 10;
const PART: Readonly<Record<string, string>> = { near: 'the near end of ', middle: '', far: 'the far end of ' };

export const imageBlurred: Check = {
  code: 'image-blurred',
  severity: 'warning',
  title: 'The image is deeper than its lamp lets it be sharp',
  page: `**What you see.** Near the plate the image is sharp; what stands farther off, behind or before it, is soft or smeared.

**Why.** Each point of a lamp shows an image of its own, a little aside: a lamp of size S at a distance Z smears what stands D from the plate by D · S/Z. Each colour does so too, in the plane in which the reference came: a reflection hologram picks a narrow band out of white light, a transmission hologram sends on all of it. Both add as squares. An eye tells one minute of arc apart; from ${SOFT} it looks soft, from ${BLURRED} blurred.

**What to do.** Where the lamp is wide: a smaller one, or one farther off. Where it has too many colours: one of a narrower band, or for white light a reflection hologram or a rainbow hologram. In any case an image nearer to the plate: a transfer brings its middle into the plate.`,
  example: hangs({ hologram: 'reflection', object: '120 mm', plate: 'reference angle: 45°; reference distance: 1500 mm', lamp: 'distance: 1.5 m; angle: 45°; size: 40 mm', viewer: 'distance: 600 mm' }),
  severityOf: d => (num(d, 'beside') >= BLURRED ? 'warning' : 'note'),
  message: d => `Under ${text(d, 'lamp')} ${PART[text(d, 'part')]!}the image of ${text(d, 'plate')}, ${mm(d, 'place')} off the plate, is blurred by ${mm(d, 'blur')}, ${Math.round(num(d, 'beside'))} times what an eye tells apart there: ${d['by'] === 'lamp' ? 'the lamp is too wide for so deep an image' : 'its light has too many colours for so deep an image'}. ` +
    `Up to ${mm(d, 'sharp')} off the plate it looks sharp. ${d['by'] === 'lamp' ? 'A smaller lamp, one farther off,' : 'Light of a narrower band'} or an image nearer to the plate helps.`,
  run: ({ replay, graph, setup }) => replay.all.flatMap((s): Problem[] => {
    const parts = (s.image?.parts ?? []).flatMap(p => {
      const [blur, unseen, place] = [p.blur, p.unseen, p.place].map(c => c && graph.value(c));
      return blur !== undefined && unseen !== undefined && place !== undefined ? [{ p, blur, place, beside: blur / unseen }] : [];
    }).sort((a, b) => b.beside - a.beside);
    const [worst] = parts;
    if (!worst || worst.beside < SOFT) return [];
    const [lamp, colour] = [worst.p.lampBlur, worst.p.colourBlur].map(c => (c && graph.value(c)) ?? 0) as [number, number];
    return [{
      code: 'image-blurred', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name,
      data: { lamp: s.lamp.id, ...recording(s), part: worst.p.part, place: figure(Math.abs(worst.place)), blur: figure(worst.blur), beside: figure(worst.beside), by: lamp >= colour ? 'lamp' : 'colours', sharp: figure((Math.abs(worst.place) * SOFT) / worst.beside) },
    }];
  }),
};
