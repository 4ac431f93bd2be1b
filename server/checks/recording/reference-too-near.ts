import { plain } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';

export const referenceTooNear: Check = {
  code: 'reference-too-near',
  severity: 'note',
  title: 'The reference stands so near to the object that a halo reaches into the image',
  page: `**What you see.** A veil of scattered light over the image, more of it the stronger the object light was.

**Why.** All points of the object make fringes with each other as well, and those send light about the replay beam, twice as far as the object is wide. The image keeps clear of it where the sines of reference and object lie three times as far apart as half of the object is wide in that direction: sin θ_ref ≥ 3 sin θ_obj for an object straight before the plate. Of a slit that lies across the way of the reference only its width counts. A thick layer sends less into this halo, and so does a weak object beam.

**What to do.** Bring the reference in at a larger angle, stand the object farther from the plate, or make the reference stronger beside the object light.`,
  example: `setup "Tray of winkles" {
  hologram: transmission
  laser red at (0, 0) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (300, 0) mm
  mirror M1 at (500, 0) mm
  object winkles at (300, 400) mm {
    size: 150 x 60 mm
  }
  plate P1 at (700, 400) mm facing winkles
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> M2
    -> P1
  beam object from S1 reflected
    -> winkles
    -> P1
  mirror M2 at (400, 300) mm
}
`,
  message: d => `The reference at ${text(d, 'plate')} comes in too near to ${text(d, 'object')}, at ${plain(num(d, 'share'), 2)} times what keeps the object’s own halo out of its image (sin θ_ref ≥ 3 sin θ_obj): expect a veil over it. A larger reference angle, more distance or a weaker object beam helps.`,
  run: ({ fringes, graph, setup }) => fringes.pairs.flatMap((f): Problem[] => {
    // Of a slit that lies the wrong way that is the finding.
    if (f.slit === 'along' || !f.separation || f.separation.missing || graph.value(f.separation)! >= 1) return [];
    if (interval(graph, f.separation).low >= 1) return [];
    return [{ code: 'reference-too-near', at: f.plate.at, subject: `${f.plate.id}.${f.pair.arm.name}`, setup: setup.name, data: { plate: f.plate.id, object: f.pair.arm.object!.id, share: Number(graph.value(f.separation)!.toPrecision(2)) } }];
  }),
};
