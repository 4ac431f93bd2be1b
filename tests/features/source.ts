/** Ordinary source text with a cursor in it, and the notebook's whelk. */
import { alone, analyse, type Library, type Snapshot } from '../../server/analysis.ts';
import { WHELK } from '../checks/library.ts';

export const FILE = 'file:///saltmarsh/whelk.plate';

/** Last winter's whelk. Legs: reference 750 + 721 = 1471 mm, object 410 + 377 + 468 + 300 = 1555 mm, so that the object arm is 84 mm too long. */
export const whelk = WHELK.replace('384 mm', '468 mm');

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
