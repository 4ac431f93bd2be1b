import type { Start } from '../start.ts';

export const reflectionTransfer: Start = {
  name: 'reflection-transfer',
  title: 'Transfer to a reflection hologram',
  words: 'The real image of a master, in the plane of a second plate',
  text: `setup "Winkles, transfer" {
  // Change first: what stands in H1, your master: its size, and how far before it the
  // image comes together. Then the places.
  hologram: reflection
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
  hologram H1 at (704, 573) mm facing P2 {
    size: 63 x 63 mm
    image: real
    image distance: 250 mm ± 2 mm
  }
  /// Takes what passes the master straight on.
  beam stop BS1 at (585, 585.5) mm

  mirror M2 at (1050, 100) mm
  mirror M3 at (60, 719) mm
  spreader R2 on M3 -> P2 by 40 mm
  plate P2 at (547, 767) mm facing H1 {
    size: 63 x 63 mm
  }

  beam raw from red
    -> S1
  beam master from S1 reflected
    -> M1
    -> R1
    -> CM1
    -> H1
  beam image from H1 diffracted
    -> P2
  beam straight-on from H1 through
    -> BS1
  beam reference from S1 through
    -> M2
    -> M3
    -> R2
    -> P2

  expect mismatch < 10 mm
}
`,
};
