/** The arms of each plate as strips of legs, from where they part: what string would measure, laid out straight. */
import { fixed, type Place } from '../../model/place.ts';
import { millimetres, percentBand, show } from '../../model/show.ts';
import { LENGTH } from '../../model/units.ts';
import type { Leg } from '../../model/model.ts';
import type { Cell } from '../../results/graph.ts';
import { legStart, legWords } from '../../results/legs/legs.ts';
import type { PlateResults } from '../../results/paths/pairs.ts';
import type { Results } from '../../results/plan.ts';
import { sample } from '../../results/sampling.ts';

export interface StripLeg {
  readonly id: string;
  readonly words: string;
  readonly written: Place;
  /** where it begins and how long it is, m */
  readonly from: number;
  readonly length: number;
  readonly text: string;
  /** what it ends at */
  readonly to: string;
}

export interface Strip {
  readonly name: string;
  readonly role: 'reference' | 'object';
  readonly legs: readonly StripLeg[];
  /** the sum of its legs as drawn, m */
  readonly end: number;
  /** as it is measured in all: `1471 ± 3 mm` */
  readonly total: string;
  /** of an object arm: how much longer it is than the reference, m, and in words; what of the object records how brightly */
  readonly off?: { readonly by: number; readonly text: string; readonly records: readonly string[] };
}

export interface PlateStrips {
  readonly plate: string;
  /** where the arms part */
  readonly start: string;
  /** the reference first */
  readonly strips: readonly Strip[];
}

/** Plates of which at least two arms have lengths on all of their legs. */
export function stripsOf(r: Results): PlateStrips[] {
  return r.plates.flatMap(p => {
    const strips = p.arms.flatMap(a => stripOf(a, p, r) ?? []).sort((a, b) => Number(a.role === 'object') - Number(b.role === 'object'));
    return strips.length < 2 ? [] : [{ plate: p.plate.id, start: p.arms[0]!.partsAt?.id ?? '', strips }];
  });
}

function stripOf({ arm, legs, length }: PlateResults['arms'][number], { pairs }: PlateResults, r: Results): Strip | undefined {
  const { graph } = r;
  let from = 0;
  const parts: StripLeg[] = [];
  for (const leg of legs) {
    const value = lengthOf(leg, r);
    if (value === undefined) return undefined;
    parts.push({ id: leg.id, words: legWords(leg), written: fixed(leg.at), from, length: value, text: millimetres(value), to: leg.target?.id ?? '' });
    from += value;
  }
  const total = graph.value(length);
  if (parts.length === 0 || total === undefined) return undefined;
  const pair = pairs.find(p => p.arm === arm);
  const by = pair && graph.value(pair.mismatch);
  const shown = (cell: Cell): string => { const [v, u] = [graph.value(cell)!, graph.uncertainty(cell)]; return u > 0 ? show(v, LENGTH, u) : millimetres(v); };
  return {
    name: arm.name, role: arm.role, legs: parts, end: from, total: shown(length),
    ...(by === undefined ? {} : { off: { by, text: shown(pair!.mismatch), records: pair!.parts.filter(p => p.part === 'middle' || p.part === 'darkest').flatMap(p => recordsOf(p.brightness, r)) } }),
  };
}

const lengthOf = (leg: Leg, r: Results): number | undefined => (legStart(leg) ? r.graph.value(r.legs.get(leg)!) : undefined);

function recordsOf(cell: Cell | undefined, { graph }: Results): string[] {
  const band = cell && !cell.missing ? sample(graph, cell) : undefined;
  return band ? [`${cell!.words.replace(/^brightness of the /, '')} ${percentBand(band.low, band.high)}`] : [];
}
