/** A setup of two paths with readings, for the tests of what they correct. Lengths in mm; a leg that is left out has none. */
import { read, type Read } from './read.ts';

export interface Paths {
  /** S1 → M1 and M1 → P1, of the reference */
  readonly reference?: readonly [string, string];
  /** S1 → M2, M2 → whelk and whelk → P1, of the object */
  readonly object?: readonly [string, string, string];
  /** instruments, `let` values, `moved` */
  readonly more?: readonly string[];
  readonly laser?: string;
  readonly depth?: string;
}

export function pathsText(readings: readonly string[], { reference = ['750 mm', '720 mm'], object = ['400 mm', '770 mm', '300 mm'], more = [], laser = 'coherence length: 5 m', depth }: Paths = {}): string {
  const length = (l: string): string => (l === '' ? '' : `: ${l}`);
  return `setup "Whelk shell" {
  hologram: transmission
  laser red {
    ${laser}
  }
  splitter S1
  mirror M1
  mirror M2
  object whelk${depth === undefined ? '' : ` {\n    depth: ${depth}\n  }`}
  plate P1
  beam raw from red
    -> S1: 350 mm ± 20 mm
  beam reference from S1 through
    -> M1${length(reference[0])}
    -> P1${length(reference[1])}
  beam object from S1 reflected
    -> M2${length(object[0])}
    -> whelk${length(object[1])}
    -> P1${length(object[2])}
${[...more, ...readings].map(l => `  ${l}\n`).join('')}}
`;
}

export const withReadings = (readings: readonly string[], paths: Paths = {}): Read => read(pathsText(readings, paths));
