import { percent, show } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { ANGLE } from '../../model/units.ts';
import { num, text, type Check } from '../check.ts';

export const edgeLight: Check = {
  code: 'edge-light',
  severity: 'note',
  title: 'A steep reference enters the bare edge of a plate',
  page: `**What you see.** Dark bars that run into the plate from the edge towards the light.

**Why.** A reference that is wider than the plate and comes in at 40° or more also falls on the edge of the glass. What enters there is kept inside by the faces, and records with the reference that comes through them. The note stands where the edge towards the light gets at least 14 % of the light in the middle, by the width of the beam.

**What to do.** Cover that edge with black tape or paper, and write \`edges: masked\`; or hold the plate in a frame that shades it.`,
  example: `setup "Whelk shell" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    coherence length: 5 m
    beam diameter: 0.8 mm
  }
  splitter S1
  spreader R1 {
    focal length: 4.5 mm
  }
  object whelk
  plate P1 {
    size: 63 x 63 mm
    reference angle: 50°
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> R1: 300 mm
    -> P1: 1200 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
}
`,
  message: d => `The light of ${text(d, 'reference')} comes to ${text(d, 'plate')} at ${show(num(d, 'angle'), ANGLE)} and is wider than it: the edge towards the light gets ${percent(num(d, 'share'))} of the light in the middle, and dark bars start there. Mask that edge, and write “edges: masked”.`,
  run: ({ polarization, graph, setup }) => polarization.edges.map(({ plate, arm, angle, share }): Problem =>
    ({ code: 'edge-light', at: plate.at, subject: plate.id, setup: setup.name, data: { plate: plate.id, reference: arm.name, angle: Number(Math.abs(graph.value(angle)!).toPrecision(3)), share: Number(share.toPrecision(3)) } })),
};
