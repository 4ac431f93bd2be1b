import type { Problem } from '../../model/model.ts';
import { placedFrom } from '../../results/places/angles.ts';
import { text, type Check } from '../check.ts';

export const referenceFromDisagrees: Check = {
  code: 'reference-from-disagrees',
  severity: 'warning',
  title: 'It is written that the reference comes from another side than the places say',
  page: `**What you see.** The figures are those of the places, whatever \`reference from\` says.

**Why.** \`reference from\` tells of a setup that names distances only how its reference comes: level, from above or from below. Where the plate and the last thing on the reference have places, those tell it, and they tell something else here.

**What to do.** Delete \`reference from\` where the places are right; else give the last mirror of the reference its height (\`at (x, y, z)\`), or correct the plate’s tilt.`,
  example: `setup "Whelk shell" {
  laser red at (0, 0) mm heading 0° {
    coherence length: 20 m
  }
  splitter S1 at (300, 0) mm
  mirror M1 at (800, 0) mm
  mirror M2 at (300, 400) mm
  object whelk at (600, 400) mm
  plate P1 at (600, 100) mm facing whelk {
    reference from: above
  }
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
  message: d => `“reference from: ${text(d, 'written')}” is written of ${text(d, 'plate')}, and by the places “${text(d, 'arm')}” comes from ${text(d, 'places')}. The places are used; delete it, or correct the places.`,
  run: ({ setup, plates, values }) => plates.flatMap(({ plate, arms }): Problem[] => {
    const fact = plate.facts.get('reference from');
    const arm = arms.find(a => a.arm.role === 'reference');
    const places = arm?.angle && placedFrom(arm.angle, values);
    if (!fact || !arm) return [];
    const written = values.words(plate, 'reference from');
    return places !== undefined && written !== undefined && places !== written
      ? [{ code: 'reference-from-disagrees', at: fact.at, subject: `${plate.id}.reference from`, setup: setup.name, data: { plate: plate.id, arm: arm.arm.name, written, places } }] : [];
  }),
};
