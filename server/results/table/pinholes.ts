/** Pinholes beside those that their lens and their beam want. */
import type { Leg, Thing } from '../../model/model.ts';
import { LENGTH, NUMBER, parseUnit } from '../../model/units.ts';
import { pinholeShare } from '../beams/pinhole-share.ts';
import type { Cell } from '../graph.ts';
import { PINHOLE_FIT, PINHOLE_TO_CHOOSE } from '../rules/table.ts';
import type { TableContext } from './context.ts';

export interface Pinhole {
  readonly thing: Thing;
  /** as a multiple of the one to choose */
  readonly fit: Cell;
  readonly choose: Cell;
  /** share of a clean beam that it lets through; none where the lens has no focus */
  readonly share?: Cell;
  readonly pinhole: Cell;
  readonly focalLength: Cell;
}

const UM = parseUnit('µm')!;

/** Spatial filters that a beam meets whose width can be told. */
export function pinholesOf({ setup, places, values, beams, graph, arms }: TableContext): Pinhole[] {
  return [...setup.things.values()].flatMap(thing => {
    if (thing.kind.word !== 'spreader' || !thing.facts.has('pinhole') || !thing.facts.has('focal length')) return [];
    const leg = places.ways.to(thing).find((l: Leg) => arms.arms.some(a => a.path.includes(l)));
    const [d, f] = [values.fact(thing, 'pinhole'), values.fact(thing, 'focal length')];
    if (!leg || !d || !f || d.missing || f.missing) return [];
    const wavelength = beams.at(leg).wavelength;
    const radius = beams.radius(leg);
    if (wavelength.missing || radius.missing) return [];
    const fit = graph.derive(`${thing.id}.pinhole fit`, PINHOLE_FIT, [d, wavelength, f, radius], NUMBER, `pinhole of ${thing.id} as a multiple of the one to choose`);
    const choose = graph.derive(`${thing.id}.pinhole to choose`, PINHOLE_TO_CHOOSE, [wavelength, f, radius], LENGTH, `pinhole to choose for ${thing.id}`, { unit: UM });
    const share = pinholeShare(thing, leg, values, beams);
    return fit.missing || choose.missing ? [] : [{ ...(share && !share.missing ? { share } : {}), thing, fit, choose, pinhole: d, focalLength: f }];
  });
}
