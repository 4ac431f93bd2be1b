import type { Problem } from '../../model/model.ts';
import { interval } from '../../results/sampling.ts';
import { text, type Check } from '../check.ts';
import { capital } from '../words.ts';
import { angleOff } from './lamp-angle-off.ts';
import { colourWord, degrees, figure, hangs, middle, mm, nm, recording, where } from '../shown-words.ts';

/** Nearer than that to an image before the plate no eye is sharp, m; common practice. */
export const NEAREST = 0.25;

export const viewerOutside: Check = {
  code: 'viewer-outside',
  severity: 'warning',
  title: 'The viewer stands where no image is seen',
  page: `**What you see.** From there a bare plate, or a coloured shimmer; the image comes only as one steps aside, or back.

**Why.** One looks at an image through the plate as through a window: the line from the eye to the image has to cross the plate. An image before the plate has to stand before the eyes. White light that goes through a transmission hologram comes to each angle in another colour, and to some in none that an eye sees.

**What to do.** Write the \`angle\` at which the viewer really stands, hang the plate higher or lower, or turn it. Before it is shot: bring the object to the line of sight (\`platewright hang\` tells its angle).`,
  example: hangs({ plate: 'size: 63 x 63 mm; reference angle: 45°; reference distance: 1500 mm', lamp: 'distance: 1500 mm; angle: 45°; laser: red', viewer: 'distance: 600 mm; angle: 30°' }),
  message: d => (d['why'] === 'colour' ? `To ${text(d, 'viewer')} the image of ${text(d, 'plate')} comes at ${nm(d, 'colour')}, which no eye sees well: at ${degrees(d, 'image')} it has the colour of the laser.`
    : d['why'] === 'behind the eyes' ? `The image of ${text(d, 'plate')} stands ${where(d, 'place')}, and ${text(d, 'viewer')} looks from ${mm(d, 'distance')}: it is at the eyes or behind them. Step back.`
    : `${capital(text(d, 'viewer'))} looks past ${text(d, 'plate')}: the line from there to the image crosses its plane ${mm(d, 'at')} from its middle, and it ends at ${mm(d, 'half')}. Under ${text(d, 'lamp')} the image is seen from about ${degrees(d, 'image')}, and ${text(d, 'viewer')} stands at ${degrees(d, 'angle')}.`),
  run: r => r.replay.all.flatMap((s): Problem[] => {
    const { graph, setup } = r;
    const { viewer, meets, distance, angle } = s.view;
    if (!s.image || !viewer || angleOff(s, r)) return [];
    const [place, away, image, colour] = [middle(s)?.place, distance, s.image.angle, s.image.colour].map(c => c && graph.value(c));
    const found = (data: Problem['data']): Problem[] => [{ code: 'viewer-outside', at: viewer.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name, data: { viewer: viewer.id, ...recording(s), lamp: s.lamp.id, image: figure(-(image ?? 0)), ...data } }];
    if (s.image.colourBy === 'viewer' && colour !== undefined && colourWord(colour) === undefined) return found({ why: 'colour', colour: figure(colour), image: figure(-graph.value(s.image.object)!) });
    if (place !== undefined && away !== undefined && place < 0 && -place >= away) return found({ why: 'behind the eyes', place: figure(place), distance: figure(away) });
    if (!meets) return [];
    const { low, high } = interval(graph, meets.at);
    return low > meets.half || high < -meets.half ? found({ why: 'past the plate', at: figure(Math.abs(graph.value(meets.at)!)), half: figure(meets.half), angle: figure(graph.value(angle!)!) }) : [];
  }),
};
