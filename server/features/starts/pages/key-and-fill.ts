import type { Start } from '../start.ts';

export const keyAndFill: Start = {
  name: 'key-and-fill',
  title: 'Transmission, key and fill',
  words: 'Two lights for the object; each has to match the one reference',
  text: `setup "Jug, key and fill" {
  // Change first: the size of the object and from where key and fill come. Each of the two
  // has to match the one reference.
  hologram: transmission
  table: 1200 x 900 mm

  laser red at (60, 100) mm heading 0° {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1 at (640, 100) mm
  splitter S2 at (920, 100) mm

  mirror M1 at (180, 626) mm
  mirror M2 at (370, 200) mm
  spreader R1 on M2 -> P1 by 60 mm

  mirror M3 at (1110, 100) mm
  mirror M4 at (1070, 690) mm
  spreader R2 on M4 -> jug by 30 mm

  mirror M5 at (400, 540) mm
  mirror M6 at (500, 670) mm
  spreader R3 on M6 -> jug by 30 mm
  /// Keeps what the fill spreads sideways off the plate.
  black card BC1 at (640, 690) mm {
    size: 60 x 150 mm
  }

  object jug at (750, 400) mm {
    size: 50 x 60 x 45 mm
  }
  plate P1 at (750, 700) mm facing jug {
    size: 63 x 63 mm
  }

  beam raw from red
    -> S1
  beam reference from S1 reflected
    -> M1
    -> M2
    -> R1
    -> P1
  beam lights from S1 through
    -> S2
  beam key from S2 through
    -> M3
    -> M4
    -> R2
    -> jug
    -> P1
  beam fill from S2 reflected
    -> M5
    -> M6
    -> R3
    -> jug
    -> P1

  expect P1.key.mismatch < 10 mm
  expect P1.fill.mismatch < 10 mm
}
`,
};
