import type { Start } from '../start.ts';

export const transmission: Start = {
  name: 'transmission',
  title: 'Transmission, two beams',
  words: 'Object lit from the front, reference from the side; the usual master',
  text: `setup "Whelk, two beams" {
  // Change first: table, laser and the size of the object; then where things stand, by
  // dragging them in the bench plan.
  hologram: transmission
  table: 1200 x 900 mm
  hole spacing: 25 mm

  laser red at (60, 100) mm heading 0° {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1 at (350, 100) mm
  mirror M1 at (1100, 100) mm
  spreader R1 on M1 -> P1 by 60 mm
  mirror M2 at (94, 420) mm
  mirror M3 at (400, 640) mm
  spreader R2 on M3 -> whelk by 30 mm
  object whelk at (700, 400) mm {
    size: 40 x 60 x 35 mm
  }
  plate P1 at (700, 700) mm facing whelk {
    size: 63 x 63 mm
  }

  beam raw from red
    -> S1
  beam reference from S1 through
    -> M1
    -> R1
    -> P1
  beam object from S1 reflected
    -> M2
    -> M3
    -> R2
    -> whelk
    -> P1

  expect mismatch < 10 mm
}
`,
};
