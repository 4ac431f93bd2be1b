import { percent, plain } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import type { StraightOn } from '../../results/masters/straight-on.ts';
import type { Results } from '../../results/plan.ts';
import { num, text, type Check } from '../check.ts';
import { figure } from '../shown-words.ts';

/** Of the plate, and of that light past a stop; less is a matter of setting it. A choice. */
const LEAST = 0.02;

export const undiffractedOnPlate: Check = {
  code: 'undiffracted-on-plate',
  severity: 'warning',
  title: 'Light that the first hologram does not bend falls on the plate of the transfer',
  page: `**What you see.** A grey or black region at one side of the plate, with no image or a dull one in it, and a second, faint image in another place.

**Why.** A hologram sends a tenth to a third of its light into its image; most of the rest goes straight on, as wide as the hologram is lit. Where both plates stand near to each other, or the light comes to the first at a small angle, it has not left the second by the time that it gets there. There it fogs, and is a second reference.

**What to do.** Put a black card between the plates, on the side to which that light goes and out of the image’s; or a greater distance between them: at an angle θ of the light on the first hologram it takes (W₁ + W₂)/2 divided by tan θ, W the widths of both. Masking of the first hologram to what the image needs helps as well.`,
  example: `setup "Winkles, close transfer" {
  hologram: reflection
  laser red at (-900, -600) mm heading 0° {
    wavelength: 632.8 nm
    coherence length: 5 m
  }
  splitter S1 at (-600, -600) mm
  mirror M1 at (500, -600) mm
  hologram H1 at (0, 0) mm facing P2 {
    size: 63 x 63 mm
    turned: flipped
    image: real
  }
  plate P2 at (50, 0) mm facing H1 {
    size: 63 x 63 mm
  }
  beam stop BS1 at (400, 400) mm
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
  message: d => `What goes straight through ${text(d, 'hologram')} falls on ${percent(num(d, 'share'))} of ${text(d, 'plate')}${d['times'] === undefined ? '' : `, about ${plain(num(d, 'times'), 2)} times as much light as goes into the image`}${d['stop'] === undefined ? '' : `: ${text(d, 'stop')} takes up ${percent(num(d, 'taken'))} of it`}. It fogs that side, and is a second reference. Put a black card before ${text(d, 'plate')} on that side, or both plates farther apart.`,
  run: r => r.strays.straightOn.flatMap((s): Problem[] => {
    const [share, taken] = [r.graph.value(s.share) ?? 0, (s.stop && r.graph.value(s.stop.share)) ?? 0];
    if (share < LEAST || taken > 1 - LEAST || isTold(s, r)) return [];
    const efficiency = s.hologram.facts.get('efficiency')?.value;
    const eta = efficiency?.kind === 'quantity' ? efficiency.quantity.value : undefined;
    return [{
      code: 'undiffracted-on-plate', at: s.hologram.at, subject: `${s.arm.plate.id}.${s.arm.name}`, setup: r.setup.name,
      data: { hologram: s.hologram.id, plate: s.arm.plate.id, share: figure(share), ...(eta !== undefined && eta > 0 && eta < 1 ? { times: figure((1 - eta) / eta) } : {}), ...(s.stop && taken > 0 ? { stop: s.stop.thing.id, taken: figure(taken) } : {}) },
    }];
  }),
};

/** Where its axis meets the plate that is told already: of an output that no beam uses, or of a leg that the plate is in the way of. */
const isTold = ({ hologram, arm }: StraightOn, { table: { look } }: Results): boolean => look.unused.some(u => u.thing === hologram && u.on === arm.plate) || look.blocked.some(b => b.thing === arm.plate && b.leg.beam.from === hologram);
