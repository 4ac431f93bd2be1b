/** A line above a setup and above each beam that ends an arm: what somebody wants to know before an exposure. */
import type { Snapshot } from '../analysis.ts';
import type { Cell } from '../results/graph.ts';
import type { Results } from '../results/plan.ts';
import { showCell } from './chain.ts';

/** Which lines are wanted, and which figures of them: those that hints in the text tell are not said again. */
export interface LensKinds {
  readonly setups: boolean;
  readonly arms: boolean;
  readonly lengths: boolean;
  readonly mismatch: boolean;
}

export interface Lens {
  readonly line: number;
  readonly text: string;
}

export function lensesOf({ results }: Snapshot, wanted: LensKinds): Lens[] {
  return results.flatMap(r => [...(wanted.setups ? setupLens(r, wanted) : []), ...(wanted.arms ? armLenses(r, wanted) : [])]).sort((a, b) => a.line - b.line);
}

function setupLens(r: Results, { mismatch }: LensKinds): Lens[] {
  const figures = r.plates.flatMap(({ plate, pairs }) => {
    const lights = r.light.plates.filter(p => p.plate === plate);
    const worst = mismatch ? pairs.map(p => p.mismatch).filter(m => !m.missing).sort((a, b) => size(b, r) - size(a, r))[0] : undefined;
    const told = [...said('mismatch', worst, r), ...lights.flatMap(p => said(`beam ratio${p.laser ? ` of ${p.laser.id}` : ''}`, p.ratio, r)), ...said('exposure', lights[0]?.exposure, r)];
    return told.length === 0 ? [] : [`${r.plates.length > 1 ? `${plate.id}: ` : ''}${told.join(', ')}`];
  });
  return figures.length === 0 ? [] : [{ line: r.setup.node.at, text: figures.join(' · ') }];
}

/** A beam that makes several arms has one line for all of them. */
function armLenses(r: Results, { lengths }: LensKinds): Lens[] {
  const lines = new Map<number, string[]>();
  for (const { plate, arms } of r.plates) {
    for (const { arm, length } of arms) {
      const light = r.light.plates.find(p => p.plate === plate && (!p.laser || p.laser === arm.laser));
      const alone = arms.filter(a => a.arm.role === 'object' && a.arm.laser === arm.laser).length === 1;
      // Of one of several object beams there is a cell where it was read.
      const cell = arm.role === 'reference' ? light?.referenceLight : alone ? light?.objectLight : r.graph.find(`${plate.id}.${arm.name}.light`);
      const told = [...(lengths ? said(arm.name, length, r) : []), ...said(`light at ${plate.id}`, cell, r)];
      if (told.length > 0) lines.set(arm.beam.node.at, [...lines.get(arm.beam.node.at) ?? [], told.join(', ')]);
    }
  }
  return [...lines].map(([line, told]) => ({ line, text: told.join(' · ') }));
}

const said = (label: string, cell: Cell | undefined, r: Results): string[] => (cell && !cell.missing && r.graph.value(cell) !== undefined ? [`${label} ${showCell(r.graph, cell).text}`] : []);
const size = (cell: Cell, { graph }: Results): number => Math.abs(graph.value(cell) ?? 0);
