import type { Problem } from '../../model/model.ts';
import { show } from '../../model/show.ts';
import { ANGLE } from '../../model/units.ts';
import { num, text, type Check } from '../check.ts';

export const mirrorInLine: Check = {
  code: 'mirror-in-line',
  severity: 'warning',
  title: 'A mirror turns nothing',
  page: `**What you see.** There is no way to set the mirror: turned so that light goes where it is to go, it stands along the beam, and next to nothing falls on it.

**Why.** By the places the light goes straight on behind the mirror, or is turned by less than 4°. It would meet the mirror within 2° of its plane; one of 50 mm is then less than 2 mm wide for the beam.

**What to do.** Correct the place that is a slip. Else take the mirror out of the beam, or put it beside the line, so that it turns the light by 20° or more.`,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0°
  mirror M1 at (500, 0) mm
  beam stop B1 at (900, 0) mm
  beam raw from red
    -> M1
    -> B1
}
`,
  message: d => `${text(d, 'mirror')} turns the light by ${show(num(d, 'by'), ANGLE)} only: ${text(d, 'from')}, ${text(d, 'mirror')} and ${text(d, 'to')} stand in one line, and a mirror there would stand along the beam and catch next to nothing. Put ${text(d, 'mirror')} beside that line, or take it out of the beam.`,
  run: ({ table, setup }) => table.look.straight.map((s): Problem => ({ code: 'mirror-in-line', at: s.mirror.at, subject: s.mirror.id, setup: setup.name, data: { mirror: s.mirror.id, from: s.from.id, to: s.to.id, by: Number(s.by.toPrecision(3)) } })),
};
