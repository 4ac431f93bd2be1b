import { percent, plain } from '../../model/show.ts';
import type { Problem } from '../../model/model.ts';
import { num, text, type Check } from '../check.ts';

/** Shares that are said to be exact are rounded: closer than this they agree. */
const LEAST = 0.01;

export const wheelDisagrees: Check = {
  code: 'wheel-disagrees',
  severity: 'warning',
  title: 'What a splitter is said to reflect, and the mark of its wheel, contradict each other',
  page: `**What you see.** Power and ratio rest on one of two figures that cannot both be right.

**Why.** The share at a mark lies on the straight line between the two neighbouring marks that were metered. It differs from the share that is written by more than three times the uncertainty of both. Where the wheel was read it counts, else the written share does.

**What to do.** Read the wheel again, meter the splitter at that mark, and correct the wrong figure. Take \`reflects\` out where the wheel is to tell.`,
  example: `setup "Whelk shell" {
  splitter S1 {
    reflects: 70% ± 2 points
    wheel: 4.5
    mark 4: 84% ± 2 points
    mark 5: 92% ± 2 points
  }
  laser red
  beam stop B1
  beam stop B2
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> B1: 1500 mm
  beam object from S1 reflected
    -> B2: 1200 mm
}
`,
  message: d => `${text(d, 'splitter')} is said to reflect ${percent(num(d, 'written'))}, but its wheel at mark ${plain(num(d, 'mark'))} reflects ${percent(num(d, 'wheel'))}. ${d['read'] === true ? 'The wheel was read, and counts' : 'The written share counts'}; correct the wrong one of the two.`,
  run: ({ light, graph, setup }) => light.wheels.flatMap((w): Problem[] => {
    const [written, wheel] = [w.written && graph.value(w.written), w.byWheel && graph.value(w.byWheel)];
    if (written === undefined || wheel === undefined) return [];
    if (Math.abs(written - wheel) <= Math.max(3 * Math.hypot(graph.uncertainty(w.written!), graph.uncertainty(w.byWheel!)), LEAST)) return [];
    return [{
      code: 'wheel-disagrees', at: w.splitter.facts.get('reflects')!.at, subject: w.splitter.id, setup: setup.name,
      data: { splitter: w.splitter.id, written, wheel, mark: graph.value(w.byWheel!.inputs[0]!)!, read: w.reflects === w.byWheel },
    }];
  }),
};
