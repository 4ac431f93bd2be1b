import type { Start } from '../start.ts';

export const backLit: Start = {
  name: 'back-lit',
  title: 'Transmission, lit from behind',
  words: 'A subject in front of ground glass',
  text: `setup "Leaf, lit from behind" {
  // Change first: the subject, the size of the ground glass behind it, and how far the two
  // stand from the plate.
  hologram: transmission
  table: 1200 x 900 mm

  laser red at (60, 150) mm heading 0° {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1 at (150, 150) mm
  mirror M1 at (150, 550) mm
  spreader R1 on M1 -> GG1 by 60 mm
  ground glass GG1 at (750, 550) mm {
    size: 150 x 150 mm
  }
  object leaf at (930, 550) mm {
    size: 60 x 90 x 20 mm
  }
  mirror M2 at (940, 150) mm
  spreader R2 on M2 -> M3 by 40 mm
  mirror M3 at (822, 262) mm
  plate P1 at (1110, 550) mm facing leaf {
    size: 63 x 63 mm
  }

  beam raw from red
    -> S1
  beam object from S1 reflected
    -> M1
    -> R1
    -> GG1
    -> leaf
    -> P1
  beam reference from S1 through
    -> M2
    -> R2
    -> M3
    -> P1

  expect mismatch < 10 mm
}
`,
};
