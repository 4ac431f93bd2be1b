import type { Start } from '../start.ts';

export const byString: Start = {
  name: 'by-string',
  title: 'Two beams, by string',
  words: 'Lengths and no places: the quickest way to see whether two beams match',
  text: `setup "Cockle, by string" {
  // Change first: the four names and lengths of your own table, from the splitter to the
  // plate, and the tube length of your laser.
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1
  mirror M1
  mirror M2
  mirror M3
  object cockle {
    depth: 20 mm
  }
  plate P1

  beam raw from red
    -> S1: 350 mm
  beam reference from S1 through
    -> M1: 750 mm ± 2 mm
    -> P1: 721 mm ± 2 mm
  beam object from S1 reflected
    -> M2: 410 mm ± 2 mm
    -> M3: 377 mm ± 2 mm
    -> cockle: 384 mm ± 2 mm
    -> P1: 300 mm ± 2 mm

  expect mismatch < 10 mm
}
`,
};
