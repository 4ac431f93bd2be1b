import { millimetres, percentBand } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';
import { figure } from '../shown-words.ts';
import { DARK, NOTE, WARN } from './arms-mismatched.ts';

export const viewDull: Check = {
  code: 'view-dull',
  severity: 'warning',
  title: 'From one side the image of the transfer will be dull: the paths over both plates differ too much',
  page: `**What you see.** The finished transfer is bright to who looks squarely at it, and dull or dark to who steps aside, although the middle of both paths matches.

**Why.** Each point of the first hologram is a place from which the finished one is looked at. The light reaches one side of that hologram sooner than the other, and so does the reference the plate: over a width W a slant of θ makes W · sin θ of path. Both add up for one corner of the plate as seen through the far corner of the hologram, whichever sides the light comes from; there they differ by more than the laser keeps step.

**What to do.** Mask the first hologram to what the view needs; bring the reference in at a smaller angle; match the paths for what is looked through most; or use a laser with a longer coherence. For the next master a smaller angle of its reference helps too.`,
  example: `setup "Winkles, transfer" {
  hologram: reflection
  laser red at (-300, -900) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 60 mm
  }
  splitter S1 at (0, -900) mm
  mirror M1 at (900, -900) mm
  mirror M2 at (-682.6, -682.6) mm
  hologram H1 at (0, 0) mm facing P2 {
    size: 200 x 100 mm
    turned: flipped
    image: real
    image distance: 300 mm
  }
  plate P2 at (300, 0) mm facing H1 {
    size: 102 x 127 mm
  }
  beam stop BS1 at (220, 220) mm
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P2
  beam master from S1 reflected
    -> M2
    -> H1
  beam image from H1 diffracted
    -> P2
  beam straight-on from H1 through
    -> BS1
}
`,
  severityOf: d => (num(d, 'low') < WARN ? 'warning' : 'note'),
  message: d => `From the side of ${text(d, 'hologram')} that records worst, the image on ${text(d, 'plate')} has ${percentBand(num(d, 'low'), num(d, 'high'))} of full brightness${num(d, 'high') < DARK ? ' and is dark' : ''}: over both plates the paths differ by up to ${millimetres(num(d, 'mismatch'))}, too much for ${text(d, 'laser')}. Mask ${text(d, 'hologram')} to what the view needs, bring the reference in at a smaller angle, or use a laser with a longer coherence.`,
  run: ({ plates, maps, graph, setup }) => plates.flatMap(p => p.pairs).flatMap((pair): Problem[] => {
    const found = maps.of(pair)?.found;
    const [darkest, middle] = [found?.darkestBrightness, pair.parts.find(x => x.part === 'middle')?.brightness];
    const { object, laser, plate, name } = pair.arm;
    // Where the middle is dull as well, the arms are what differs.
    if (object?.kind.light !== 'diffracts' || !darkest || darkest.missing || graph.value(darkest)! > 0.95 || (middle && !middle.missing && interval(graph, middle).low < NOTE)) return [];
    const { low, high } = interval(graph, darkest);
    return low >= NOTE ? [] : [{ code: 'view-dull', at: object.at, subject: `${plate.id}.${name}`, setup: setup.name, data: { plate: plate.id, hologram: object.id, laser: laser.id, low, high, mismatch: figure(Math.abs(graph.value(found!.largestMismatch) ?? 0)) } }];
  }),
};
