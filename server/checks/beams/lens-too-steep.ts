import type { Problem } from '../../model/model.ts';
import { show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import { num, text, type Check } from '../check.ts';

export const lensTooSteep: Check = {
  code: 'lens-too-steep',
  severity: 'warning',
  title: 'A focal length is shorter than the beam on the lens is wide',
  page: `**What you see.** Everything that needs the width of the beam behind this lens or mirror is missing: light at the plate, ratio, exposure, corners.

**Why.** A lens spreads a beam by the slope of its radius to the focal length. From a slope of 1 on, the light would leave by more than 45°, where the formulas of a beam (Kogelnik & Li 1966) do not hold, and hardly any lens is made. Mostly the unit is a slip.

**What to do.** Correct the focal length: objectives that spread a beam have 2.9 to 16 mm. Where it is right, the beam on the lens must be narrower: see the \`beam diameter\` of the laser and the lenses before this one.`,
  example: `setup "Cockle, single beam" {
  hologram: reflection
  laser red {
    wavelength: 632.8 nm
    coherence length: 20 m
    power: 12 mW
    beam diameter: 0.8 mm
  }
  spreader R1 {
    focal length: 4.5 µm
  }
  plate P1 {
    size: 63 x 63 mm
  }
  object cockle {
    size: 30 x 40 x 20 mm
  }
  beam all from red
    -> R1: 400 mm
    -> P1 through: 900 mm
    -> cockle: 12 mm
    -> P1: 12 mm
}
`,
  message: d => `The focal length of ${text(d, 'thing')}, ${show(num(d, 'f'), LENGTH)}, is shorter than the beam on it is wide (radius ${show(Number(num(d, 'radius').toPrecision(2)), LENGTH)}): nothing bends light that steeply, and the light behind it cannot be told. Check its unit, or the width of the beam before it.`,
  run: ({ beams, setup }) => beams.tooSteep.map(({ thing, radius, focalLength }): Problem => ({ code: 'lens-too-steep', at: thing.facts.get('focal length')?.at ?? thing.at, subject: thing.id, setup: setup.name, data: { thing: thing.id, f: focalLength, radius } })),
};
