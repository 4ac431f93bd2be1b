import { percent } from '../../model/show.ts';
import type { Arm } from '../../model/arms.ts';
import type { Problem, Thing } from '../../model/model.ts';
import { interval } from '../../results/sampling.ts';
import { num, text, type Check, type Data } from '../check.ts';

/** What widens a beam depends on what shapes it last: behind what makes it run side by side a longer way does nothing. */
function spreadMore(d: Data): string {
  const more = `Spread “${text(d, 'arm')}” more: `;
  if (d['shapedBy'] === undefined) return `${more}put a spreading lens into it.`;
  return d['spreads'] === true ? `${more}a lens of shorter focal length, or a longer way from it.`
    : `${more}a spreading lens of shorter focal length before ${text(d, 'shapedBy')}, or in the place of ${text(d, 'shapedBy')} one of longer focal length, that much farther from the spreading lens. A longer way behind ${text(d, 'shapedBy')} hardly helps.`;
}

/** The thing that shapes the reference last, and whether that is what spreads it. */
function shaped(arm: Arm | undefined): Data {
  const last = arm?.path.findLast(l => l.target !== undefined && l.target !== arm.plate && (l.target.kind.word === 'spreader' || l.target.kind.word === 'collimator' || l.target.facts.has('focal length')))?.target;
  return last ? { shapedBy: last.id, spreads: last.kind.word === 'spreader' || !before(arm, last) } : {};
}
const before = (arm: Arm, thing: Thing): boolean => arm.path.slice(0, arm.path.findIndex(l => l.target === thing)).some(l => l.target?.kind.word === 'spreader' || l.target?.facts.has('focal length') === true);

/** Light in the weakest corner as a share of that at the centre. */
export const LEAST = 0.35;

export const cornersDark: Check = {
  code: 'corners-dark',
  severity: 'warning',
  title: 'The corners of the plate get much less reference light than its centre',
  page: `**What you see.** The image fades towards the corners of the plate, or is missing there: those who look from the side see it dull.

**Why.** Each spot of the plate records by the light that falls on it. Where the weakest corner gets less than 35 % of the light at the centre, no exposure suits both: a well exposed centre leaves the corner thin. Corners that nobody has metered are judged by the plan, where a \`power\` is written and the width of the beam is known.

**What to do.** Spread the reference more: a spreading lens of shorter focal length, or a longer way from it to the plate. Behind a collimator or a mirror with a focal length the light runs side by side, and a longer way spreads it no more: there a spreading lens of shorter focal length helps, or a collimator of longer focal length, that much farther from the spreading lens. That costs light, so the exposure gets longer. Check too that nothing cuts the beam, and that its middle falls on the middle of the plate.`,
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
    ? `By the plan the weakest corner of ${text(d, 'plate')} gets ${percent(num(d, 'high'))} at most of the reference light at its centre; below 35 % the image fades there. ${spreadMore(d)}`
    : `The weakest corner of ${text(d, 'plate')}, ${text(d, 'corner')}, gets ${percent(num(d, 'share'))} of the reference light at its centre; below 35 % the image fades there. ${spreadMore(d)} Look first whether its middle falls on the middle of the plate.`),
  run: ({ light, arms, graph, setup, published }) => light.plates.flatMap(({ plate, name, reference, corners }): Problem[] => {
    const by = (arm: string): Data => shaped(arms.arms.find(a => a.plate === plate && a.name === arm));
    const planned = corners && !reference?.corners && published.includes(corners) ? graph.value(corners) : undefined;
    if (planned !== undefined && planned < LEAST) {
      const { low, high } = interval(graph, corners!);
      const arm = corners!.name.slice(plate.id.length + 1, -'.corner light'.length);
      return high < LEAST ? [{ code: 'corners-dark', at: plate.at, subject: name, setup: setup.name, data: { plate: plate.id, arm, ...by(arm), share: planned, low, high } }] : [];
    }
    const share = reference?.corners && graph.value(reference.corners.cell);
    if (share === undefined || share >= LEAST) return [];
    const weakest = reference!.corners!.spots.reduce((w, s) => (graph.value(s.cell)! < graph.value(w.cell)! ? s : w));
    return [{ code: 'corners-dark', at: weakest.read.reading.at, subject: name, setup: setup.name, data: { plate: plate.id, arm: reference!.name, ...by(reference!.name), corner: weakest.spot, share } }];
  }),
};
