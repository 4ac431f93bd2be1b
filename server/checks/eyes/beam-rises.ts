import { show } from '../../model/show.ts';
import type { Leg, Problem, Thing } from '../../model/model.ts';
import { ANGLE } from '../../model/units.ts';
import { legStart, legWords } from '../../results/legs/legs.ts';
import type { Results } from '../../results/plan.ts';
import { num, text, type Check } from '../check.ts';
import { quoted } from '../words.ts';
import { DECIDES, passesLimit } from '../eye-limits.ts';

/** Below this, rad, things only stand unevenly. */
const LEAST = (2 * Math.PI) / 180;

export const beamRises: Check = {
  code: 'beam-rises',
  severity: 'note',
  title: 'A beam leaves the plane of the table',
  page: `**What you see.** Nothing on the plate. It is a caution: a beam that slants up or down may cross the height at which somebody has their eyes, and goes on beyond what it should meet.

**Why.** By the places, a leg of the beam slants by 2° or more. What an object scatters is not counted, nor a laser whose written power and class stay below the published limit for a glance; the figures are an estimate, not a hazard assessment.

**What to do.** Where the slant is wanted, as for a reference from above, end the beam on a stop behind the plate, screen its way, and see that nobody leans into it. Accept the finding with that as the reason. Else write the third coordinate of the things, or bring them to one height. Local rules and the person responsible for laser safety decide.`,
  example: `setup "Whelk shell" {
  laser red at (0, 0, 150) mm
  mirror M1 at (600, 0, 150) mm
  beam stop B1 at (600, 300, 400) mm
  beam raw from red
    -> M1
    -> B1
}
`,
  message: d => `The beam ${quoted(d, 'beam')} slants ${d['up'] === true ? 'up' : 'down'} by ${show(num(d, 'angle'), ANGLE)} on its leg ${text(d, 'leg')}, and leaves the plane of the table. End it on a stop behind what it meets, and screen its way from eyes. ${DECIDES}`,
  run: r => (r.places.none ? [] : [...r.setup.beams.values()].flatMap((beam): Problem[] => {
    for (const leg of beamLegs(beam.legs)) {
      const slant = slantOf(leg, r);
      if (slant === undefined || Math.abs(slant) < LEAST) continue;
      const laser = r.arms.arms.find(a => a.path.includes(leg))?.laser ?? (beam.from?.kind.light === 'source' ? beam.from : undefined);
      if (laser && passesLimit(laser, r) === false) continue;
      return [{ code: 'beam-rises', at: leg.at, subject: beam.id, setup: r.setup.name, data: { beam: beam.id, leg: legWords(leg), angle: Math.abs(slant), up: slant > 0 } }];
    }
    return [];
  })),
};

/** The legs on which there is a beam still: not behind what scatters it. */
function* beamLegs(legs: readonly Leg[]): Iterable<Leg> {
  if (scatters(legs[0]?.beam.from)) return;
  for (const leg of legs) {
    yield leg;
    if (scatters(leg.target)) return;
  }
}
const scatters = (t: Thing | undefined): boolean => t?.kind.light === 'scatters' || t?.kind.light === 'diffracts' || t?.kind.word === 'fill card';

/** By how much a leg slants up, rad; undefined where its ends have no places, or their heights are not surer than the slant. */
function slantOf(leg: Leg, { places, graph }: Results): number | undefined {
  const from = legStart(leg);
  const [a, b] = [from && places.of(from), leg.target && places.of(leg.target)];
  if (!a || !b || [...a, ...b].some(c => c.missing)) return undefined;
  const [dx, dy, dz] = [0, 1, 2].map(i => graph.value(b[i]!)! - graph.value(a[i]!)!) as [number, number, number];
  if (a[2] === b[2] || Math.abs(dz) <= 2 * Math.hypot(graph.uncertainty(a[2]), graph.uncertainty(b[2]))) return undefined;
  return Math.atan2(dz, Math.hypot(dx, dy));
}
