import type { Problem } from '../../model/model.ts';
import type { Results } from '../../results/plan.ts';
import { num, text, type Check } from '../check.ts';
import { capital } from '../words.ts';
import { spreadsMaster } from './lamp-distance-off.ts';
import { figure, hangs, middle, mm, recording, times } from '../shown-words.ts';

/** Below this nobody sees it. */
const NOTED = 1.1;
const STRETCHED = 1.5;

export const masterInDivergingBeam: Check = {
  code: 'master-in-diverging-beam',
  severity: 'warning',
  title: 'A master is flipped in a beam that spreads, so that its real image is blown up',
  page: `**What you see.** The real image is two or three times too large, several times too deep, far from where the object stood, and it swims as the head moves. On the transfer it never gets sharp.

**Why.** Flipped, a master needs its reference run backwards. A reference that spread from a point has to run together in that point; a parallel one stays parallel. In light that spreads instead, 1/R_image = −(1/R_object − 1/R_reference) + 1/R_lamp.

**What to do.** Record masters with parallel light (\`collimator\`, or a curved \`mirror\`), which plays them back too. Else bring the light together by a large lens or curved mirror (\`beam: converging\` in the lamp), or let it spread from as far away as the room allows.`,
  example: hangs({ name: 'Limpet, master', plate: 'reference angle: 45°; reference distance: 1000 mm', lamp: 'distance: 1000 mm; angle: 45°; laser: red; hung: flipped' }),
  severityOf: d => (num(d, 'size') >= STRETCHED ? 'warning' : 'note'),
  message: d => `${capital(text(d, 'plate'))}, flipped, is lit by light that spreads from ${mm(d, 'spreads')}: its real image ${d['none'] === true ? 'never comes to a focus' : `stands ${d['atLeast'] === true ? 'at least ' : ''}${mm(d, 'place')} before it and not ${mm(d, 'object')}, ${times(d, 'size')} as wide and ${times(d, 'depth')} as deep as it should be`}. ` +
    (d['together'] === undefined ? 'Its light has to be parallel, as a parallel reference is, or to run together.' : `The light has to run together at ${mm(d, 'together')} behind it, where its reference spread from; a master by a parallel reference takes parallel light.`),
  run: r => [...underLamps(r), ...inTransfers(r)],
};

function underLamps({ replay, graph, setup }: Results): Problem[] {
  return replay.all.flatMap((s): Problem[] => {
    const [size, place, lamp] = [s.image && graph.value(s.image.size), middle(s) && graph.value(middle(s)!.place), graph.value(s.light.curvature)];
    if (!s.image || size === undefined || place === undefined || lamp === undefined || !spreadsMaster(s.hung.order, s.pair.pair.arm.object?.kind.light === 'diffracts', s.light.beam) || (size > 0 && size < NOTED)) return [];
    const ratio = s.image.ratio ? graph.value(s.image.ratio)! : 1;
    const together = ratio * graph.value(s.image.curvature)!;
    return [{
      code: 'master-in-diverging-beam', at: s.lamp.at, subject: `${s.plate.id}.${s.lamp.id}`, setup: setup.name,
      data: {
        ...recording(s), spreads: figure(1 / lamp), size: figure(Math.abs(size)), depth: figure(Math.abs(graph.value(s.image.depth)!)), place: figure(Math.abs(place)), object: figure(Math.abs((place * ratio) / size)), none: size < 0, ...(together > 1e-3 ? { together: figure(1 / together) } : {}),
      },
    }];
  });
}

/** The same on the page of the transfer: the beam that lights a flipped master spreads. Its image was not read there: what a card shows, counts. */
function inTransfers({ setup, graph, light, replay }: Results): Problem[] {
  return replay.masters.flatMap(({ master, image: written, curvature: spread, reference }): Problem[] => {
    const [image, curvature] = [graph.value(written), graph.value(spread)];
    if (image === undefined || curvature === undefined || curvature <= 0 || light.images.some(i => i.hologram === master && i.read)) return [];
    // A reference that is not known was parallel at best.
    const size = 1 / (1 - image * (curvature + (reference ?? 0)));
    if (size > 0 && size < NOTED) return [];
    return [{
      code: 'master-in-diverging-beam', at: master.at, subject: master.id, setup: setup.name,
      data: { plate: master.id, spreads: figure(1 / curvature), size: figure(Math.abs(size)), depth: figure(size ** 2), place: figure(Math.abs(image * size)), object: figure(image), none: size < 0, ...(reference === undefined ? { atLeast: true } : reference > 1e-3 ? { together: figure(1 / reference) } : {}) },
    }];
  });
}
