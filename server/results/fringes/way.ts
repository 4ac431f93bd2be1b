/** Whether a pair of beams makes a transmission or a reflection hologram: by the sides from which they come, else as written. */
import type { Setup } from '../../model/model.ts';
import type { Cell, Graph } from '../graph.ts';
import type { Pair } from '../paths/pairs.ts';
import { sidesOf, type HologramWay } from '../rules/fringes.ts';

/** From which sides of the plate the beams come, and what is written of the hologram. */
export interface Sides {
  readonly byPlaces: HologramWay;
  readonly written?: HologramWay;
}

/** Product of both cosines below which one of the beams all but grazes the plate, and does not tell its side. */
const GRAZING = 0.01;

/** What is known of both beams by the places: the plate's normal, and in which directions they run. */
export interface Directions { readonly graph: Graph; readonly normal: readonly Cell[]; readonly reference: readonly Cell[]; readonly light: readonly Cell[] }

/** Undefined where neither places nor text tell it. The table is the truth: where both do, the places count. */
export function wayOf(setup: Setup, pair: Pair, by: Directions | undefined): { readonly way: HologramWay; readonly sides?: Sides } | undefined {
  const written = writtenWay(setup);
  if (by) {
    const [normal, reference, light] = [by.normal, by.reference, by.light].map(cells => cells.map(c => by.graph.value(c)!)) as [number[], number[], number[]];
    const sides = sidesOf(normal, reference, light);
    if (Math.abs(sides) >= GRAZING) {
      const byPlaces = sides > 0 ? 'transmission' : 'reflection';
      return { way: byPlaces, sides: { byPlaces, ...(written ? { written } : {}) } };
    }
  }
  // Light that goes through the plate to the object comes back from the other side.
  const way = written ?? (pair.arm.beam === pair.reference.beam ? 'reflection' : undefined);
  return way && { way };
}

/** The same where no places tell it: as written, or by a beam that goes through the plate to the object. */
export const hologramWay = (setup: Setup, pair: Pair): HologramWay | undefined => wayOf(setup, pair, undefined)?.way;

function writtenWay({ facts }: Setup): HologramWay | undefined {
  const word = facts.get('hologram')?.value;
  return word?.kind !== 'words' ? undefined : word.text === 'reflection' ? 'reflection' : 'transmission';
}
