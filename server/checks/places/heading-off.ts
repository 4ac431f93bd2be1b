import type { Problem } from '../../model/model.ts';
import { millimetres, show } from '../../model/show.ts';
import { ANGLE } from '../../model/units.ts';
import { alignmentOf } from '../../results/alignment.ts';
import { num, text, type Check } from '../check.ts';
import { isAimedOff } from '../aim.ts';

export const headingOff: Check = {
  code: 'heading-off',
  severity: 'warning',
  title: 'A laser does not point at what its beam meets first',
  page: `**What you see.** On the table the beam passes beside the thing, as far as the message says. Lengths and angles are computed as if it met it.

**Why.** The laser's heading, or what it faces, leads elsewhere than from its place to the place of the first thing on its beam, by more than both are unsure and by more than 1°.

**What to do.** Turn the laser, or move the thing into the beam.

\`\`\`plate
setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  beam stop B1 at (500, 0) mm
  beam raw from red
    -> B1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  beam stop B1 at (500, 100) mm
  beam raw from red
    -> B1
}
`,
  message: d => `The laser ${text(d, 'laser')} points ${show(num(d, 'angle'), ANGLE, num(d, 'u'))} past ${text(d, 'thing')}: its beam passes ${millimetres(num(d, 'miss'))} beside it. Turn the laser, or move ${text(d, 'thing')} into the beam.`,
  run: r => alignmentOf(r).lasers.flatMap(({ laser, thing, at, off, distance }): Problem[] => {
    const [angle, u] = [r.graph.value(off), r.graph.uncertainty(off)];
    if (angle === undefined || !isAimedOff(angle, u)) return [];
    const miss = r.graph.value(distance)! * Math.sin(Math.min(angle, Math.PI / 2));
    return [{ code: 'heading-off', at, subject: laser.id, setup: r.setup.name, data: { laser: laser.id, thing: thing.id, angle, u, miss } }];
  }),
};
