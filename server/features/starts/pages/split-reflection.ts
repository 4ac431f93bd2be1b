import type { Start } from '../start.ts';

export const splitReflection: Start = {
  name: 'split-reflection',
  title: 'Reflection, two beams',
  words: 'The object has a light of its own, past the edge of the plate',
  text: `setup "Shard, two beams" {
  // Change first: laser, plate and the size of the object, then the angles at which the
  // two beams arrive.
  hologram: reflection
  table: 1200 x 900 mm
  hole spacing: 25 mm

  laser red at (60, 150) mm heading 0° {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1 at (390, 150) mm
  mirror M1 at (320, 560) mm
  mirror M2 at (480, 260) mm
  spreader R1 on M2 -> P1 by 60 mm
  mirror M3 at (550, 150) mm
  mirror M4 at (660, 700) mm
  spreader R2 on M4 -> shard by 30 mm
  object shard at (790, 480) mm {
    size: 55 x 40 x 15 mm
  }
  plate P1 at (700, 480) mm heading 180° {
    size: 63 x 63 mm
  }

  beam raw from red
    -> S1
  beam reference from S1 reflected
    -> M1
    -> M2
    -> R1
    -> P1
  beam object from S1 through
    -> M3
    -> M4
    -> R2
    -> shard
    -> P1

  expect mismatch < 10 mm
}
`,
};
