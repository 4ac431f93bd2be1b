import type { Problem } from '../../model/model.ts';
import { show } from '../../model/show.ts';
import { ANGLE } from '../../model/units.ts';
import { EDGE_ON } from '../../results/places/angles.ts';
import { num, text, type Check } from '../check.ts';
import { quoted } from '../words.ts';

export const plateMissed: Check = {
  code: 'plate-missed',
  severity: 'warning',
  title: 'A beam runs along a plate and misses it',
  page: `**What you see.** Nothing: the plate stays blank, or has bars that come in from its edge.

**Why.** By the places, or by the angle that is written, the light arrives within 4° of the plane of the plate. It runs along the glass, and what enters does so by the edge. Its light on the plate, and what rests on that, is not told then.

**What to do.** Turn the plate, \`facing\` the object or with a \`heading\`, or bring the beam in at a smaller angle from its normal.

\`\`\`plate
setup "Whelk shell" {
  laser red at (0, 0) mm heading 0° {
    coherence length: 20 m
  }
  object whelk at (530, 0) mm {
    depth: 20 mm
  }
  plate P1 at (500, 0) mm heading 180°
  beam all from red
    -> P1 through
    -> whelk
    -> P1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0° {
    coherence length: 20 m
  }
  splitter S1 at (100, 0) mm
  mirror M1 at (100, 300) mm
  object whelk at (500, 300) mm {
    depth: 20 mm
  }
  plate P1 at (500, 0) mm facing whelk
  beam raw from red
    -> S1
  beam reference from S1 through
    -> P1
  beam object from S1 reflected
    -> M1
    -> whelk
    -> P1
}
`,
  message: d => `${quoted(d, 'arm')} arrives at ${text(d, 'plate')} at ${show(num(d, 'angle'), ANGLE)} from its normal: it runs along the plate, and misses it. Turn ${text(d, 'plate')}, or bring the beam in from nearer to its front.`,
  run: ({ plates, setup, graph }) => plates.flatMap(({ plate, arms }) => arms.flatMap(({ arm, angle }): Problem[] => {
    const value = angle && graph.value(angle.cell);
    if (value === undefined || Math.abs(value) < EDGE_ON) return [];
    return [{ code: 'plate-missed', at: plate.at, subject: `${plate.id}.${arm.name}`, setup: setup.name, data: { plate: plate.id, arm: arm.name, angle: value } }];
  })),
};
