import type { Problem } from '../../model/model.ts';
import type { Dark } from '../../results/light/dark.ts';
import { text, type Check } from '../check.ts';

export const noLight: Check = {
  code: 'no-light',
  severity: 'warning',
  title: 'A beam brings no light to its plate',
  page: `**What you see.** Without a reference, or without object light, nothing records: the plate comes out blank, or evenly dark. Where one of several object beams brings none, what it should light stays dark.

**Why.** Something on the way of the beam passes no light by what is written of it: a splitter that reflects all or none, a loss of 100 %, an object that gives nothing back, a polarizer across the light. Or a reading at the plate says that there is none. Then there is no beam ratio and no exposure, and all of the brightness is lost, whatever the paths and the depth say.

**What to do.** Correct the line, if it does not say what is on the table: a share that is not known yet is written \`?\`. Else let a part of the light go that way. A card in the place of the plate shows which beam is there.`,
  example: `setup "Whelk shell" {
  laser red {
    coherence length: 5 m
  }
  splitter S1 {
    reflects: 100%
  }
  object whelk
  plate P1
  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> P1: 1500 mm
  beam object from S1 reflected
    -> whelk: 1200 mm
    -> P1: 300 mm
}
`,
  message: d => `No light reaches ${text(d, 'ways')}: ${text(d, 'why')}. ${text(d, 'seen')} Correct the line if the table says otherwise; else let a part of the light go this way.`,
  run: r => {
    const all = r.arms.arms.flatMap(a => r.light.darkOf(a) ?? []);
    // What stops several arms is one slip.
    const causes = [...new Set(all.map(d => d.cell))].map(cell => all.filter(d => d.cell === cell) as [Dark, ...Dark[]]);
    return causes.map((dark): Problem => {
      const [{ thing, at, why }] = dark;
      const whole = dark.some(d => d.arm.role === 'reference' || r.arms.arms.filter(a => a.plate === d.arm.plate && a.role === 'object').every(a => all.some(x => x.arm === a)));
      const plates = [...new Set(dark.map(d => d.arm.plate.id))];
      return {
        code: 'no-light', at, subject: thing.id, setup: r.setup.name,
        data: {
          thing: thing.id, why, plates: plates.join(', '), ways: plates.map(p => `${p} by ${dark.filter(d => d.arm.plate.id === p).map(d => `“${d.arm.name}”`).join(' and ')}`).join(', nor '),
          seen: whole ? `Nothing records on ${plates.join(' and ')} without it.` : 'What it should light stays dark.',
        },
      };
    });
  },
};
