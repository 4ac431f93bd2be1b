import type { Start } from '../start.ts';

export const singleBeam: Start = {
  name: 'single-beam',
  title: 'Reflection, one beam',
  words: 'Light passes the plate, lights the object behind it and comes back',
  text: `setup "Oyster, one beam" {
  // Change first: laser, plate and the size of the object. There is nothing to match here,
  // and everything to hold still.
  hologram: reflection
  table: 1200 x 900 mm
  hole spacing: 25 mm

  laser red at (60, 750) mm heading 0° {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  mirror M1 at (603, 750) mm
  spreader R1 on M1 -> P1 by 60 mm
  plate P1 at (900, 300) mm heading 180° {
    size: 102 x 127 mm
  }
  object oyster at (912, 300) mm {
    size: 80 x 60 x 20 mm
  }

  beam all from red
    -> M1
    -> R1
    -> P1 through
    -> oyster
    -> P1
}
`,
};
