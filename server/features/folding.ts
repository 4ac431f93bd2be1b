/** What can be folded away: blocks, beams with their legs, and runs of notes, of readings and of used files. */
import type { LineTree, Node } from '../../grammar/tree.ts';
import type { Snapshot } from '../analysis.ts';

export interface Fold {
  /** the line that stays */
  readonly from: number;
  /** the last line that is hidden */
  readonly to: number;
  readonly kind?: 'comment' | 'imports';
}

/** Two readings are seen at a glance. */
const READINGS = 3;

export function foldsOf({ tree }: Snapshot): Fold[] {
  const folds: Fold[] = [];
  const add = (from: number, to: number, kind?: Fold['kind']): void => { if (to > from) folds.push({ from, to, ...(kind ? { kind } : {}) }); };
  const walk = (nodes: readonly Node[]): void => {
    for (const n of nodes) {
      // The closing brace stays in sight.
      if (n.line.opens) add(n.at, tree.lines[n.end]?.kind === 'close' && n.end > n.at ? n.end - 1 : n.end);
      else if (n.legs.length > 0) add(n.at, n.legs[n.legs.length - 1]!.at);
      walk(n.children);
    }
  };
  walk(tree.nodes);
  for (const [from, to, kind] of runs(tree.lines)) {
    if (kind !== 'measured') add(from, to, kind === 'use' ? 'imports' : 'comment');
    else if (to - from + 1 >= READINGS) add(from, to);
  }
  return folds.sort((a, b) => a.from - b.from || b.to - a.to);
}

/** Lines in a row that are of one sort. */
function* runs(lines: readonly LineTree[]): Generator<[from: number, to: number, kind: string]> {
  const sort = (l: LineTree | undefined): string | undefined =>
    (l?.kind === 'comment' || l?.kind === 'doc' ? l.kind : l?.head?.text === 'measured' || l?.head?.text === 'use' ? l.head.text : undefined);
  for (let from = 0; from < lines.length;) {
    const kind = sort(lines[from]);
    let next = from + 1;
    while (kind !== undefined && sort(lines[next]) === kind) next++;
    if (kind !== undefined) yield [from, next - 1, kind];
    from = next;
  }
}
