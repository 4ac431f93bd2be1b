/** Figures shown in the text: lengths that follow from places, how long an arm is, and by how much the arms differ. */
import type { LineTree } from '../../grammar/tree.ts';
import type { Snapshot } from '../analysis.ts';
import type { Place } from '../model/model.ts';
import type { ArmLength } from '../results/paths/arm-lengths.ts';
import type { Cell } from '../results/graph.ts';
import type { Results } from '../results/plan.ts';
import { showCell } from './chain.ts';
import type { HintKinds } from './hint-kinds.ts';
import { figureWords } from './hover/chain.ts';

export interface Hint {
  readonly line: number;
  readonly character: number;
  readonly parts: readonly { readonly text: string; readonly to?: Place }[];
  /** the line of its setup and the name of the result, by which its chain of numbers is found: see {@link hintWords} */
  readonly setup: number;
  readonly result: string;
}

/** Editors cut hints that are longer than some 40 characters. */
const LONGEST = 31;

/** The hints of the lines `from` to `to`, in the order of the text. */
export function hintsOf(snapshot: Snapshot, wanted: HintKinds, from = 0, to = Infinity): Hint[] {
  const hints: Hint[] = [];
  for (const r of snapshot.results) {
    if (r.setup.node.at > to || r.setup.node.end < from) continue;
    const add = (node: { at: number; line: LineTree }, cell: Cell, parts: Hint['parts']): void => {
      hints.push({ line: node.at, character: endOf(node.line), parts, setup: r.setup.node.at, result: cell.name });
    };
    const shown = ({ at }: { at: number }): boolean => at >= from && at <= to;
    if (wanted.legLengths) {
      for (const [leg, cell] of r.legs) {
        if (shown(leg.node) && !leg.lengthAt && !leg.node.line.issue && !cell.missing) add(leg.node, cell, [{ text: fitting(showCell(r.graph, cell).text) }]);
      }
    }
    for (const p of r.plates) {
      if (wanted.armTotals) {
        for (const a of p.arms) {
          const { node } = a.arm.beam;
          if (shown(node) && !a.length.missing && a.legs.length > 0) add(node, a.length, [{ text: fitting(`${prefix(a, r)}in all ${showCell(r.graph, a.length).text}`, `in all ${showCell(r.graph, a.length).text}`, showCell(r.graph, a.length).text) }]);
        }
      }
      if (!wanted.mismatch) continue;
      for (const { arm, reference, mismatch } of p.pairs) {
        const { node } = arm.path[arm.path.length - 1]!;
        if (!shown(node) || mismatch.missing) continue;
        // The dot keeps it apart from a length before it.
        add(node, mismatch, [{ text: '· ' }, { text: 'mismatch', to: reference.beam.at }, { text: fitting(` ${showCell(r.graph, mismatch).text}`) }]);
      }
    }
  }
  return hints.sort((a, b) => a.line - b.line);
}

/** The chain of numbers behind a hint, in Markdown. */
export function hintWords({ results }: Snapshot, setup: number, result: string): string | undefined {
  const r = results.find(x => x.setup.node.at === setup);
  const cell = r?.graph.find(result);
  return cell && figureWords(r!.graph, cell);
}

/** Says which arm it is, where a beam makes several. */
function prefix({ arm }: ArmLength, { plates }: Results): string {
  const same = plates.flatMap(p => p.arms).filter(a => a.arm.beam === arm.beam);
  return same.length < 2 ? '' : same.every(a => a.arm.plate === arm.plate) ? `${arm.name} ` : `${arm.plate.id} `;
}

/** The first of some texts that is short enough; else the last one, cut. */
const fitting = (...texts: readonly string[]): string => texts.find(t => t.length <= LONGEST) ?? `${texts[texts.length - 1]!.slice(0, LONGEST - 1).replace(/[\ud800-\udbff]$/, '')}…`;

const endOf = ({ text, comment }: LineTree): number => text.slice(0, comment?.start).trimEnd().length;
