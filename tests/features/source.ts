/** Ordinary source text with a cursor in it, and the notebook's whelk. */
import { alone, analyse, type Library, type Snapshot } from '../../server/analysis.ts';

export const FILE = 'file:///saltmarsh/whelk.plate';

/** Last winter's whelk. Legs: reference 750 + 721 = 1471 mm, object 410 + 377 + 468 + 300 = 1555 mm, so that the object arm is 84 mm too long. */
export const whelk = `/// Last winter's whelk, from the notebook.
setup "Whelk shell" {
  hologram: transmission
  laser red {
    wavelength: 632.8 nm
    tube length: 350 mm
  }
  splitter S1
  mirror M1
  mirror M2
  mirror M3
  object whelk {
    depth: 35 mm
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
    -> whelk: 468 mm ± 3 mm
    -> P1: 300 mm ± 3 mm
}
`;

/** The whelk with one piece of it written differently. */
export function but(from: string, to: string, text = whelk): string {
  if (text.split(from).length !== 2) throw new Error(`“${from}” does not stand there once`);
  return text.replace(from, () => to);
}

export interface Marked {
  readonly snapshot: Snapshot;
  readonly line: number;
  readonly character: number;
}

/** Takes the mark `|` out of the text; it is where the cursor stands. */
export function marked(source: string, library: Library = alone): Marked {
  const [before, after, ...more] = source.split('|');
  if (before === undefined || after === undefined || more.length > 0) throw new Error('one cursor mark is wanted');
  const lines = before.split('\n');
  return { snapshot: analyse(FILE, before + after, library), line: lines.length - 1, character: lines[lines.length - 1]!.length };
}
