/** The length of each leg, as a cell. */
import type { Beam, Leg } from '../../model/model.ts';
import type { Cell } from '../graph.ts';

/** Kept in one list for each beam: a table of all legs would be the largest thing of a long page. */
export class LegCells {
  private readonly beams = new Map<Beam, readonly Cell[]>();

  constructor(beams: Iterable<Beam>, length: (leg: Leg) => Cell) {
    for (const beam of beams) this.beams.set(beam, beam.legs.map(length));
  }

  /** Undefined for a leg of another setup. */
  get(leg: Leg): Cell | undefined {
    return this.beams.get(leg.beam)?.[leg.n - 1];
  }

  /** All legs with their cells, in the order of the text. */
  *[Symbol.iterator](): Generator<[Leg, Cell]> {
    for (const [beam, cells] of this.beams) for (const leg of beam.legs) yield [leg, cells[leg.n - 1]!];
  }
}
