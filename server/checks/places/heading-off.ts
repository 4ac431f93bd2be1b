import type { Problem } from '../../model/model.ts';
import { millimetres, show } from '../../model/show.ts';
import { ANGLE, LENGTH } from '../../model/units.ts';
import { BETWEEN } from '../../results/rules/geometry.ts';
import { DISTANCE } from '../../results/rules/lengths.ts';
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
  run: ({ setup, places, graph }) => {
    const problems: Problem[] = [];
    const seen = new Set<string>();
    for (const beam of setup.beams.values()) {
      const [laser, thing] = [beam.from, beam.legs[0]?.target];
      if (laser?.kind.light !== 'source' || !thing || seen.has(`${laser.id} ${thing.id}`)) continue;
      seen.add(`${laser.id} ${thing.id}`);
      const p = places.own(laser).placement;
      const aim = p?.heading ?? (p?.facing === 'beam' ? undefined : p?.facing);
      const [points, leads] = [aim && places.directions.facing(places.own(laser)), aim && places.directions.between(places.own(laser), places.own(thing))];
      if (!aim || !points || !leads) continue;
      const off = graph.derive(`${laser.id}.off ${thing.id}`, BETWEEN, [...points, ...leads], ANGLE, `angle by which ${laser.id} points past ${thing.id}`);
      const [angle, u] = [graph.value(off), graph.uncertainty(off)];
      if (angle === undefined || !isAimedOff(angle, u)) continue;
      const away = graph.derive(`${laser.id} → ${thing.id}`, DISTANCE, [...places.of(places.own(laser))!, ...places.of(places.own(thing))!], LENGTH, `distance of ${laser.id} and ${thing.id}`);
      const miss = graph.value(away)! * Math.sin(Math.min(angle, Math.PI / 2));
      problems.push({ code: 'heading-off', at: aim.at, subject: laser.id, setup: setup.name, data: { laser: laser.id, thing: thing.id, angle, u, miss } });
    }
    return problems;
  },
};
