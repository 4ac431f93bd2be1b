import type { Start } from '../start.ts';

export const parallelReference: Start = {
  name: 'parallel-reference',
  title: 'Transmission, parallel reference',
  words: 'A curved mirror makes the reference parallel; a master for transfers',
  text: `setup "Winkles, parallel reference" {
  // Change first: the focal length of the curved mirror CM1, then where R1 stands: its
  // pinhole belongs in the focus.
  hologram: transmission
  table: 1500 x 1000 mm
  hole spacing: 25 mm

  laser red at (60, 100) mm heading 0° {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1 at (320, 100) mm

  mirror M1 at (256, 380) mm
  spreader R1 on M1 -> CM1 by 400 mm
  mirror CM1 at (1400, 500) mm {
    focal length: 750 mm
    diameter: 200 mm
  }

  mirror M2 at (1310, 100) mm
  mirror M3 at (900, 280) mm
  spreader R2 on M3 -> winkles by 30 mm

  object winkles at (898, 730) mm {
    size: 60 x 40 x 50 mm
  }
  plate P1 at (704, 573) mm facing winkles {
    size: 63 x 63 mm
  }

  beam raw from red
    -> S1
  beam reference from S1 reflected
    -> M1
    -> R1
    -> CM1
    -> P1
  beam object from S1 through
    -> M2
    -> M3
    -> R2
    -> winkles
    -> P1

  expect mismatch < 10 mm
}
`,
};
