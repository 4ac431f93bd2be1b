import { percent } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { num, text, type Check } from '../check.ts';
import { figure, mm } from '../shown-words.ts';

/** On less of a plate nobody looks for it, and fringes of less contrast are not seen. Choices. */
const LEAST = 0.1;
const CONTRAST = 0.1;

export const platesParallel: Check = {
  code: 'plates-parallel',
  severity: 'note',
  title: 'The first hologram stands parallel to the plate and throws the reference back',
  page: `**What you see.** A second, faint image beside or behind the first, or broad stripes over a part of the plate.

**Why.** Of a reflection transfer most of the reference goes through the plate and on to the first hologram. Where both stand parallel within 3° and near to each other, its glass throws a part of that light back, as a mirror does: a tenth of s-polarized light at 45°. That comes to the plate a second time, from the side of the image, makes fringes with the reference and with the image, and is recorded. Once its way is longer than the laser keeps step, it makes none.

**What to do.** Turn the first hologram by a few degrees, and its light with it; stand them farther apart, so that the light passes beside the plate; or lay a black card before what of the first hologram the reference reaches and the image does not need. p-polarized light near 57° is hardly thrown back.`,
  example: `setup "Winkles, close transfer" {
  hologram: reflection
  laser red at (-800, -693) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 50 m
  }
  splitter S1 at (-400, -693) mm
  mirror M1 at (1526, -693) mm
  hologram H1 at (0, 0) mm facing P2 {
    size: 63 x 63 mm
    turned: flipped
    image: real
  }
  plate P2 at (40, 0) mm facing H1 {
    size: 63 x 63 mm
  }
  beam stop BS1 at (200, 346) mm
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P2
  beam master from S1 reflected
    -> H1
  beam image from H1 diffracted
    -> P2
  beam straight-on from H1 through
    -> BS1
}
`,
  message: d => `${text(d, 'hologram')} stands parallel to ${text(d, 'plate')}: its glass throws back the light of ${text(d, 'reference')} that has gone through, onto ${percent(num(d, 'share'))} of ${text(d, 'plate')}, by a way only ${mm(d, 'longer')} longer. Its ghost is recorded. Turn ${text(d, 'hologram')} by a few degrees, or stand them farther apart.`,
  run: ({ strays, graph, setup }) => strays.thrownBack.flatMap(({ pair, hologram, share: part, longer: way }): Problem[] => {
    const [share, longer] = [graph.value(part)!, graph.value(way)!];
    const { coherence, arm: { plate }, reference } = pair;
    const known = coherence?.inputs.map(c => graph.value(c));
    const brightness = known?.every(v => v !== undefined) ? coherence!.rule.compute([longer, ...known]) : 1;
    // So near that its undiffracted light falls on the plate is one slip, with a finding of its own.
    if (strays.straightOn.some(s => s.arm === pair.arm && (graph.value(s.share) ?? 0) > 0) || share < LEAST || Math.sqrt(brightness) < CONTRAST) return [];
    return [{ code: 'plates-parallel', at: hologram.at, subject: `${plate.id}.${hologram.id}`, setup: setup.name, data: { plate: plate.id, hologram: hologram.id, reference: reference.name, share: figure(share), longer: figure(longer) } }];
  }),
};
