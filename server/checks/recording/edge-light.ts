import { percent, show } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { ANGLE, LENGTH } from '../../model/units.ts';
import { EDGE_ON } from '../../results/places/angles.ts';
import { num, text, type Check } from '../check.ts';

export const edgeLight: Check = {
  code: 'edge-light',
  severity: 'note',
  title: 'Light of the reference enters the bare edge of a plate',
  page: `**What you see.** Dark bars that run into the plate from the edge towards the light.

**Why.** A reference that is wider than the plate and comes in at a slant also falls on the edge of the glass. What enters there is kept inside by the faces, and records with the reference that comes through them. The note stands, once in a setup, where the edges that
face the light take at least 3 % of the light on the plate, by its size, the thickness of its glass (2 mm where it is not written), the direction of the light and the width of the beam. Whatever of the holder clasps that edge is not known, and not counted.

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
  message: d => {
    const [n, share] = [Number(d['more'] ?? 0), percent(num(d, 'share'))];
    const also = n > 0 ? ` The same holds of ${text(d, 'others')}.` : '';
    return `The light of ${text(d, 'reference')} comes to ${text(d, 'plate')} at ${show(num(d, 'angle'), ANGLE)} and enters its bare ${d['edge'] === undefined ? 'edge towards the light' : `${text(d, 'edge')} edge`}: ${share} of the light on the plate, with glass of ${show(num(d, 'thickness'), LENGTH)}${d['assumed'] === true ? ' (assumed)' : ''}. `
      + `Dark bars start there. Cover that edge with black tape, and write “edges: masked”.${also}`;
  },
  run: ({ polarization, graph, setup }) => {
    // Light that misses the plate is another finding.
    const edges = polarization.edges.filter(e => Math.abs(graph.value(e.angle) ?? 0) < EDGE_ON);
    const [first] = edges;
    if (!first) return [];
    const { plate, arm, angle, share, edge, thickness } = first;
    const others = [...new Set(edges.map(e => e.plate.id))].filter(id => id !== plate.id);
    return [{ code: 'edge-light', at: plate.at, subject: plate.id, setup: setup.name, data: {
      plate: plate.id, reference: arm.name, angle: Number(Math.abs(graph.value(angle)!).toPrecision(3)), share: Number(share.toPrecision(2)), thickness: graph.value(thickness)!, assumed: thickness.origin === 'assumed',
      ...(edge ? { edge } : {}), ...(others.length > 0 ? { others: others.join(' and '), more: others.length } : {}),
    } } satisfies Problem];
  },
};
