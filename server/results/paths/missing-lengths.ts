/** Lengths that are nowhere written, with what cannot be told without them. */
import type { Leg, Problem, Setup } from '../../model/model.ts';
import type { LegCells } from '../legs/leg-cells.ts';
import { legWords } from '../legs/legs.ts';
import type { PlateResults } from './pairs.ts';

/** One finding for each beam that lacks lengths, with what cannot be told without them. */
export function missingLengths(plates: readonly PlateResults[], legs: LegCells, setup: Setup): Problem[] {
  const lacking = new Map<string, { legs: Set<Leg>; prevents: Set<string> }>();
  for (const p of plates) {
    for (const l of p.arms) {
      const its = p.pairs.filter(x => x.arm === l.arm || x.reference === l.arm);
      // What was read as a whole, or as a difference, needs no legs.
      if (!l.length.missing || (its.length > 0 && its.every(x => !x.mismatch.missing))) continue;
      for (const leg of l.legs) {
        if (legs.get(leg)!.missing?.code !== 'value-missing') continue;
        const row = lacking.get(leg.beam.id) ?? { legs: new Set(), prevents: new Set() };
        row.legs.add(leg);
        row.prevents.add(`the path of ${l.arm.name}`);
        if (its.some(x => x.mismatch.missing)) row.prevents.add(`the mismatch at ${p.plate.id}`);
        lacking.set(leg.beam.id, row);
      }
    }
  }
  return [...lacking].map(([beam, { legs: which, prevents }]) => {
    const list = [...which];
    return { code: 'value-missing', at: list[0]!.at, subject: beam, setup: setup.name, data: { phrase: 'length', of: `${list.length === 1 ? 'leg' : 'legs'} ${list.map(legWords).join(', ')}`, prevents: [...prevents].join(' and ') } };
  });
}
