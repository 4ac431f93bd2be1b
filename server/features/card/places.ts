/** Where things stand on the table, in the numbers that somebody looks for on a ruler. */
import type { Thing } from '../../model/model.ts';
import { plain } from '../../model/show.ts';
import type { Cell } from '../../results/graph.ts';
import type { Results } from '../../results/plan.ts';
import { showCell } from '../chain.ts';
import { listed } from '../blocks/facts.ts';

/** `(1100, 100) mm`; empty where nothing tells. */
export function placeWords(thing: Thing, r: Results): string {
  const at = positionOf(thing, r);
  return at ? `(${at.slice(0, 2).map(c => coordinate(c, r)).join(', ')}) mm` : '';
}

function positionOf(thing: Thing, { places, graph }: Results): readonly Cell[] | undefined {
  const at = places.of(places.own(thing));
  return at?.every(c => graph.value(c) !== undefined) ? at : undefined;
}

/** In mm, to a tenth: finer no ruler tells. */
const coordinate = (c: Cell, { graph }: Results): string => (graph.uncertainty(c) > 0 ? showCell(graph, c).text.replace(/ mm$/, '') : plain(Math.round(graph.value(c)! * 1e4) / 10 + 0, 6));

/** Further than that from the others a thing is said to stand higher or lower, m. */
const LEVEL = 0.002;

/** The things that stand at another height than is written for the beams. */
export function heightWords(r: Results): string {
  const height = r.values.setupFact('beam height');
  const level = height && r.graph.value(height);
  if (level === undefined) return '';
  const off = [...r.setup.things.values()].flatMap(t => {
    const z = positionOf(t, r)?.[2];
    return z !== undefined && Math.abs(r.graph.value(z)! - level) > LEVEL ? [`${t.id} at ${coordinate(z, r)} mm`] : [];
  });
  return off.length === 0 ? '' : `But ${listed(off)}.`;
}
