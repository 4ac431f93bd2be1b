import { percent } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check } from '../check.ts';

/** Light in the weakest corner as a share of that at the centre. */
const LEAST = 0.35;

export const cornersDark: Check = {
  code: 'corners-dark',
  severity: 'warning',
  title: 'The corners of the plate get much less reference light than its centre',
  page: `**What you see.** The image fades towards the corners of the plate, or is missing there: those who look from the side see it dull.

**Why.** Each spot of the plate records by the light that falls on it. Where the weakest corner gets less than 35 % of the light at the centre, no exposure suits both: a well exposed centre leaves the corner thin. Corners that nobody has metered are judged by the plan, where a \`power\` is written and the width of the beam is known.

**What to do.** Spread the reference more: a spreading lens of shorter focal length, or a longer way from it to the plate. That costs light, so the exposure gets longer. Check too that nothing cuts the beam, and that its middle falls on the middle of the plate.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1
  object whelk
  plate P1
  meter needle {
    head: 8 mm
  }
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
  measured reference at P1: 62 by needle
  measured reference at P1 upper left: 40 by needle
  measured reference at P1 lower right: 14 by needle
}
`,
  message: d => (d['corner'] === undefined
    ? `By the plan the weakest corner of ${text(d, 'plate')} gets ${percent(num(d, 'high'))} at most of the reference light at its centre; below 35 % the image fades there. Spread “${text(d, 'arm')}” more: a lens of shorter focal length, or a longer way from it.`
    : `The weakest corner of ${text(d, 'plate')}, ${text(d, 'corner')}, gets ${percent(num(d, 'share'))} of the reference light at its centre; below 35 % the image fades there. Spread “${text(d, 'arm')}” more, or centre it on the plate.`),
  run: ({ light, graph, setup, published }) => light.plates.flatMap(({ plate, reference, corners }): Problem[] => {
    const planned = corners && !reference?.corners && published.includes(corners) ? graph.value(corners) : undefined;
    if (planned !== undefined && planned < LEAST) {
      const { low, high } = interval(graph, corners!);
      return high < LEAST ? [{ code: 'corners-dark', at: plate.at, subject: plate.id, setup: setup.name, data: { plate: plate.id, arm: corners!.name.slice(plate.id.length + 1, -'.corner light'.length), share: planned, low, high } }] : [];
    }
    const share = reference?.corners && graph.value(reference.corners.cell);
    if (share === undefined || share >= LEAST) return [];
    const weakest = reference!.corners!.spots.reduce((w, s) => (graph.value(s.cell)! < graph.value(w.cell)! ? s : w));
    return [{ code: 'corners-dark', at: weakest.read.reading.at, subject: plate.id, setup: setup.name, data: { plate: plate.id, arm: reference!.name, corner: weakest.spot, share } }];
  }),
};
