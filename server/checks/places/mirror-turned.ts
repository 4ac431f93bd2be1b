import type { Problem } from '../../model/model.ts';
import { show } from '../../model/show.ts';
import { ANGLE } from '../../model/units.ts';
import { alignmentOf } from '../../results/alignment.ts';
import { num, text, type Check } from '../check.ts';
import { isAimedOff } from '../aim.ts';
import { quoted } from '../words.ts';

export const mirrorTurned: Check = {
  code: 'mirror-turned',
  severity: 'warning',
  title: 'A mirror faces otherwise than its beam needs',
  page: `**What you see.** On the table the light leaves the mirror in another direction, by twice the angle of the message, and misses what the next leg leads to. Lengths and angles are computed as if it went there.

**Why.** A mirror faces half-way between where its light comes from and where it goes. The heading that is written, or what it is said to face, differs from that by more than 1° and by more than both are unsure.

**What to do.** Take the heading out: the mirror then stands as its beam needs. Or write another heading, or lead the beam to where the mirror sends it.

\`\`\`plate
setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  mirror M1 at (500, 0) mm
  beam stop B1 at (500, 400) mm
  beam raw from red
    -> M1
    -> B1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  mirror M1 at (500, 0) mm heading 90°
  beam stop B1 at (500, 400) mm
  beam raw from red
    -> M1
    -> B1
}
`,
  message: d => `The ${text(d, 'kind')} ${text(d, 'mirror')} is written to face ${show(num(d, 'angle'), ANGLE, num(d, 'u'))} away from half-way between ${text(d, 'from')} and ${text(d, 'to')}, so that ${quoted(d, 'beam')} misses ${text(d, 'to')}. Take that out of its line, and it faces as the beam needs, heading ${show(num(d, 'heading'), ANGLE)}; or lead the beam elsewhere.`,
  run: r => alignmentOf(r).mirrors.flatMap(({ mirror, at, passage, needed, off }): Problem[] => {
    const { graph, places, setup } = r;
    const [angle, u] = [graph.value(off), graph.uncertainty(off)];
    if (angle === undefined || !isAimedOff(angle, u)) return [];
    const heading = Math.atan2(graph.value(needed[1])!, graph.value(needed[0])!);
    return [{ code: 'mirror-turned', at, subject: mirror.id, setup: setup.name, data: { mirror: mirror.id, kind: mirror.kind.word, angle, u, heading, beam: passage.leaving.beam.id, from: places.directions.startOf(passage.arriving)?.id ?? '', to: passage.leaving.to } }];
  }),
};
