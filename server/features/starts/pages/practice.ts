import type { Start } from '../start.ts';

export const practice: Start = {
  name: 'practice',
  title: 'Practice page',
  words: 'One leg is too long: a finding says so, and its fix puts it right',
  text: `setup "Cockle, for practice" {
  // For practice: one leg is too long, and a finding says so. Take its fix, then change
  // lengths, and see what becomes of the cockle.
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
    -> cockle: 468 mm ± 2 mm
    -> P1: 300 mm ± 2 mm
}
`,
};
