import { millimetres, percentBand } from '../../model/show.ts';
import { sample } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';
import { clearlyBright, DARK, NOTE, WARN } from './arms-mismatched.ts';

export const objectTooDeep: Check = {
  code: 'object-too-deep',
  severity: 'warning',
  title: 'Even with matched paths the object is too deep for this laser',
  page: `**What you see.** The middle of the object is bright, its nearest and farthest parts are dull or dark.

**Why.** A part that lies z behind the middle changes the path by z·(1 + cos ψ), ψ the angle between the light and the line of sight: nearly twice the depth when the object is lit from the front. With this laser
that is more than its fringes bear, however well the middle is matched.

**What to do.** Turn the object so that it is less deep, light it more from the side, match the paths to the part that matters most, or use a laser with a longer coherence.`,
  example: `setup "Tall jug" {
  laser red {
    wavelength: 632.8 nm
    coherence length: 100 mm
  }
  splitter S1
  object jug {
    depth: 140 mm
    lit at: 30°
  }
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> jug: 1200 mm
    -> P1: 300 mm
}
`,
  severityOf: d => (num(d, 'low') < WARN ? 'warning' : 'note'),
  message: d => `With both paths matched the ends of ${text(d, 'object')}, ${millimetres(num(d, 'depth'))} deep, still record at ${percentBand(num(d, 'low'), num(d, 'high'))} of full brightness at ${text(d, 'plate')}` +
    `${num(d, 'high') < DARK ? ' and will be dark' : ''}: the depth is too much for ${text(d, 'laser')}. Turn the object, light it more from the side, or use a laser with a longer coherence.`,
  run: ({ plates, graph, setup }) => plates.flatMap(p => p.pairs.flatMap(pair => {
    const far = pair.parts.find(x => x.part === 'far');
    if (!far?.brightness || far.brightness.missing || !pair.depth) return [];
    const none = new Map([[pair.mismatch, 0]]);
    if (clearlyBright(graph, pair, 0)) return [];
    const band = sample(graph, far.brightness, none)!;
    if (band.low >= NOTE) return [];
    return [{ code: 'object-too-deep', at: pair.arm.object!.at, subject: `${p.plate.id}.${pair.arm.object!.id}`, setup: setup.name, data: { plate: p.plate.id, object: pair.arm.object!.id, laser: pair.arm.laser.id, depth: graph.value(pair.depth)!, low: band.low, high: band.high } }];
  })),
};
