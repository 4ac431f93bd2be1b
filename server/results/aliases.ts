/** Short names of results. */
import { isKnown } from './places/angles.ts';
import type { Cell, Graph } from './graph.ts';
import type { Pair, PlateResults } from './paths/pairs.ts';

/** Lets a short name mean a cell, besides what it means already. */
export function addAlias(aliases: Map<string, Cell[]>, alias: string, cell: Cell): void {
  const among = aliases.get(alias);
  if (!among) aliases.set(alias, [cell]);
  else if (!among.includes(cell)) among.push(cell);
}

/** Aliases hold as long as they mean one thing; the plate's `mismatch` is the largest in size. */
export function nameShort(plates: readonly PlateResults[], aliases: Map<string, Cell[]>, graph: Graph): void {
  const add = (alias: string, cell: Cell): void => addAlias(aliases, alias, cell);
  for (const p of plates) {
    const size = (c: Cell): number => Math.abs(graph.value(c) ?? -1);
    const worst = p.pairs.reduce<Pair | undefined>((w, x) => (!w || size(x.mismatch) > size(w.mismatch) ? x : w), undefined);
    if (worst) { add('mismatch', worst.mismatch); add(`${p.plate.id}.mismatch`, worst.mismatch); }
    for (const l of p.arms) {
      if (p.arms.filter(o => o.arm.role === l.arm.role).length > 1) continue;
      for (const [what, cell] of [['length', l.length], ['coherence path', l.coherencePath], ['angle', l.angle?.cell]] as const) {
        if (!cell) continue;
        add(`${l.arm.role} ${what}`, cell);
        add(`${p.plate.id}.${l.arm.role}.${what}`, cell);
      }
    }
    for (const x of p.pairs) {
      if (x.litAt && isKnown(x.litAt)) for (const head of ['', `${p.plate.id}.${x.arm.name}.`, `${p.plate.id}.`, `${x.arm.object!.id}.`, `${p.plate.id}.${x.arm.object!.id}.`]) add(`${head}lighting angle`, x.litAt.cell);
      for (const part of x.parts) {
        if (!part.brightness) continue;
        const tail = part.part === 'middle' ? '' : `${part.part}.`;
        for (const head of ['', `${p.plate.id}.`, `${p.plate.id}.${x.arm.object!.id}.`, `${x.arm.object!.id}.`]) add(`${head}${tail}brightness`, part.brightness);
        if (part.part !== 'middle') add(`${p.plate.id}.${x.arm.object!.id}.${tail}mismatch`, part.mismatch);
      }
    }
  }
}
