import type { Problem } from '../../model/model.ts';
import { show } from '../../model/show.ts';
import { ANGLE } from '../../model/units.ts';
import { num, text, type Check } from '../check.ts';

/** What rounding to five degrees leaves, rad. */
const SLACK = (2.5 * Math.PI) / 180;

export const twoAngles: Check = {
  code: 'two-angles',
  severity: 'warning',
  title: 'An angle is written that differs from what the places say',
  page: `**What you see.** The computed figures rest on one of two angles that contradict each other.

**Why.** The angle of the light on an object (\`lit at\`), or of the reference at a plate (\`reference angle\`), is written, and the places of the things on that beam give another: by more than both are unsure and by more than 2.5°. The written angle is used.

**What to do.** Delete the written angle where the places are right; else correct the places.`,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0° {
    coherence length: 20 m
  }
  splitter S1 at (300, 0) mm
  mirror M1 at (800, 0) mm
  mirror M2 at (300, 400) mm
  object whelk at (600, 400) mm {
    depth: 20 mm
    lit at: 20°
  }
  plate P1 at (600, 100) mm facing whelk
  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> P1
  beam object from S1 reflected
    -> M2
    -> whelk
    -> P1
}
`,
  message: d => `“${text(d, 'what')}” is written as ${show(num(d, 'written'), ANGLE, num(d, 'u'))}, and by the places it is ${show(num(d, 'places'), ANGLE, num(d, 'uPlaces'))}. The written angle is used; delete it, or correct the places.`,
  run: ({ setup, plates, graph }) => {
    const problems: Problem[] = [];
    for (const angle of plates.flatMap(p => [...p.arms.map(a => a.angle), ...p.pairs.map(x => x.litAt)])) {
      if (!angle?.written?.at || !angle.byPlaces) continue;
      const [written, places] = [graph.value(angle.written), graph.value(angle.byPlaces)];
      if (written === undefined || places === undefined) continue;
      const [u, uPlaces] = [graph.uncertainty(angle.written), graph.uncertainty(angle.byPlaces)];
      if (Math.abs(Math.abs(written) - places) <= Math.max(3 * Math.hypot(u, uPlaces), SLACK)) continue;
      problems.push({ code: 'two-angles', at: angle.written.at, subject: angle.written.name, setup: setup.name, data: { what: angle.written.name, written, u, places, uPlaces } });
    }
    return problems;
  },
};
