import type { Problem } from '../../model/model.ts';
import { num, text, type Check } from '../check.ts';
import { capital } from '../words.ts';
import { figure, hangs, middle, mm, recording, times, where } from '../shown-words.ts';

/** An image wider or narrower than its object by more than this is seen to be; common practice. */
const NOTED = 1.2;
const STRETCHED = 1.5;

export const lampDistanceOff: Check = {
  code: 'lamp-distance-off',
  severity: 'warning',
  title: 'The lamp is too near or too far, so that the image is moved and stretched',
  page: `**What you see.** Under a lamp that is too near the image shrinks and comes nearer to the plate; under one that is too far it grows and moves off, in depth more than in width: twice as wide is four times as deep. What stood farther off changes more. It blurs toward its edges.

**Why.** Of light with another curvature than the reference the hologram makes another image: 1/R_image = m μ (1/R_object − 1/R_reference) + 1/R_lamp. Another colour moves it as well.

**What to do.** Hang the lamp as far off as the message says. Before the plate is shot: let the reference spread from as far as the lamp will be (\`platewright hang\` tells from where), or bring the object nearer to the plate, where all this matters less.`,
  example: hangs({ plate: 'reference angle: 45°; reference distance: 1000 mm', lamp: 'distance: 500 mm; angle: 45°; laser: red' }),
  severityOf: d => (Math.max(num(d, 'size'), 1 / num(d, 'size')) >= STRETCHED ? 'warning' : 'note'),
  message: d => `Under ${text(d, 'lamp')} the image of ${text(d, 'plate')} stands ${where(d, 'place')} and not ${mm(d, 'object')}, ${times(d, 'size')} as wide as it was and ${times(d, 'depth')} as deep: the lamp is ${text(d, 'off')}. ` +
    (d['fits'] === undefined ? `${capital(text(d, 'lamp'))} shows it rightly only with converging light; farther off it does less harm.` : `At ${mm(d, 'fits')} it would show it as wide as it was.`),
  run: ({ replay, graph, setup }) => replay.all.flatMap((s): Problem[] => {
    const [size, place] = [s.image && graph.value(s.image.size), middle(s) && graph.value(middle(s)!.place)];
    if (!s.image || size === undefined || place === undefined || spreadsMaster(s.hung.order, s.pair.pair.arm.object?.kind.light === 'diffracts', s.light.beam) || !isStretched(size)) return [];
    const [reference, ratio, lamp] = [graph.value(s.image.curvature)!, s.image.ratio ? graph.value(s.image.ratio)! : 1, graph.value(s.light.curvature)!];
    const fits = s.hung.order * ratio * reference;
    const object = Math.abs((place * s.hung.order * ratio) / size);
    return [{
      code: 'lamp-distance-off', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name,
      data: {
        lamp: s.lamp.id, ...recording(s), size: figure(Math.abs(size)), depth: figure(Math.abs(graph.value(s.image.depth)!)), place: figure(place), object: figure(object), off: lamp > fits ? 'too near' : 'too far',
        ...(fits > 1e-3 ? { fits: figure(1 / fits) } : {}),
      },
    }];
  }),
};

/** Whether an image is so much wider or narrower than its object that it is said to be. */
export const isStretched = (size: number): boolean => Math.max(Math.abs(size), 1 / Math.abs(size)) >= NOTED;

/** A master that is flipped in spreading light has a finding of its own. */
export const spreadsMaster = (order: 1 | -1, transfer: boolean, beam: string): boolean => order === -1 && !transfer && beam === 'diverging';
