import type { Problem, Thing } from '../../model/model.ts';
import { millimetres, show } from '../../model/show.ts';
import { ANGLE } from '../../model/units.ts';
import { alignmentOf } from '../../results/alignment.ts';
import { legStart, type Passage } from '../../results/places/light-ways.ts';
import type { Results } from '../../results/plan.ts';
import { num, text, type Check } from '../check.ts';
import { isAimedOff } from '../aim.ts';
import { quoted } from '../words.ts';

/** A thing that stands this near to the line does not miss the beam, m: some raw beams are as wide. */
const BESIDE = 0.002;

export const lightBends: Check = {
  code: 'light-bends',
  severity: 'warning',
  title: 'Light is to turn at a thing that it goes straight through',
  page: `**What you see.** On the table the light goes on straight, and misses what the next leg leads to. Lengths and angles are computed as if it went there.

**Why.** A shutter, a lens, a polarizer or a splitter's \`through\` turns no light. By their places the thing before it, the thing itself and the thing behind it do not stand in one line: by more than 1°, by more than 2 mm, and by more than they are unsure.

**What to do.** Move one of the three into line, or name the mirror that turns the light as a leg of its own. At a splitter, \`reflected\` turns it.

\`\`\`plate
setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  shutter gate at (200, 0) mm
  beam stop B1 at (500, 0) mm
  beam raw from red
    -> gate
    -> B1
}
\`\`\``,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  shutter gate at (200, 0) mm
  beam stop B1 at (500, 100) mm
  beam raw from red
    -> gate
    -> B1
}
`,
  message: d => `Light goes straight through ${text(d, 'thing')}, but ${quoted(d, 'beam')} is to turn by ${show(num(d, 'angle'), ANGLE, num(d, 'u'))} there: ${text(d, 'thing')} stands ${millimetres(num(d, 'beside'))} beside the straight way from ${text(d, 'from')} to ${text(d, 'to')}. Move one of them, or name the mirror that turns the light.`,
  run: r => alignmentOf(r).straight.flatMap(({ thing, passage: p, turn }): Problem[] => {
    const [angle, u] = [r.graph.value(turn), r.graph.uncertainty(turn)];
    const beside = distanceFromLine(p, thing, r);
    if (angle === undefined || beside === undefined || !isAimedOff(angle, u) || beside <= BESIDE) return [];
    return [{ code: 'light-bends', at: p.leaving.at, subject: thing.id, setup: r.setup.name, data: { thing: thing.id, beam: p.leaving.beam.id, angle, u, beside, from: legStart(p.arriving)!.id, to: p.leaving.to } }];
  }),
};

/** How far the thing stands from the line between its neighbours, m. */
function distanceFromLine({ arriving, leaving }: Passage, thing: Thing, { places, graph }: Results): number | undefined {
  const [a, b, c] = [legStart(arriving), thing, leaving.target].map(t => t && places.of(places.own(t))?.map(x => graph.value(x)));
  if (!a || !b || !c || [...a, ...b, ...c].includes(undefined)) return undefined;
  const minus = (p: readonly (number | undefined)[]): [number, number, number] => [p[0]! - a[0]!, p[1]! - a[1]!, p[2]! - a[2]!];
  const [v, w] = [minus(b), minus(c)];
  const length = Math.hypot(...w);
  const across = Math.hypot(v[1] * w[2] - v[2] * w[1], v[2] * w[0] - v[0] * w[2], v[0] * w[1] - v[1] * w[0]);
  // Where the light is to come back, the thing stands beyond one end of that line.
  const along = length < 1e-9 ? 0 : (v[0] * w[0] + v[1] * w[1] + v[2] * w[2]) / length;
  return Math.hypot(length < 1e-9 ? Math.hypot(...v) : across / length, along - Math.min(Math.max(along, 0), length));
}
