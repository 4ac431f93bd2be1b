/** What stands at a place of the text. */
import type { LineTree, Node, Span, TokenSpan, Tree } from '../../grammar/tree.ts';
import type { Snapshot } from '../analysis.ts';
import type { Let, Place, Reference, Thing } from '../model/model.ts';
import type { Results } from '../results/plan.ts';

/** True where a cursor is in a range or at its end. */
export const covers = (span: Span, character: number): boolean => character >= span.start && character <= span.end;

/** The token at a cursor; between two that touch, the one that begins there. */
export function tokenAt(line: LineTree, character: number): TokenSpan | undefined {
  const touching = line.tokens.filter(t => covers(t, character));
  return touching[touching.length - 1];
}

/** The statement or leg of a line. */
export function nodeAt(tree: Tree, line: number): Node | undefined {
  const within = (nodes: readonly Node[]): Node | undefined => {
    const n = lastUpTo(nodes, line);
    return n === undefined || n.at === line ? n : line <= n.end ? within(n.legs) ?? within(n.children) : undefined;
  };
  return within(tree.nodes);
}

/** The last one that begins at a line or above it; they stand in the order of the text. */
function lastUpTo(nodes: readonly Node[], line: number): Node | undefined {
  let [from, to] = [0, nodes.length];
  while (from < to) {
    const half = (from + to) >> 1;
    if (nodes[half]!.at <= line) from = half + 1;
    else to = half;
  }
  return nodes[from - 1];
}

/** The setup that a line is in. */
export const setupAt = (snapshot: Snapshot, line: number): Results | undefined =>
  snapshot.results.find(({ setup }) => line >= setup.node.at && line <= setup.node.end);

/** The name at a cursor that refers to something, and what it refers to. */
export const referenceAt = (snapshot: Snapshot, line: number, character: number): Reference | undefined =>
  snapshot.model.references.find(r => r.at.line === line && covers(r.at, character));

/** The thing that is declared at a place: of this file, or of an inventory that a setup of this file draws on. */
export function thingDeclaredAt(snapshot: Snapshot, at: Thing['at']): Thing | undefined {
  const same = (t: Thing): boolean => t.at.line === at.line && t.at.start === at.start && t.at.uri === at.uri;
  return thingWhere(snapshot, same) ?? thingWhere(snapshot, t => t.item !== undefined && same(t.item))?.item;
}

/** The first thing of this file for which it holds. */
export function thingWhere({ model }: Snapshot, holds: (t: Thing) => boolean): Thing | undefined {
  for (const { things } of [...model.setups, ...model.inventories]) for (const t of things.values()) if (holds(t)) return t;
  return undefined;
}

/** The name of a `let` at a cursor, where it is declared or used. */
export function letAt(snapshot: Snapshot, line: number, character: number): { readonly let: Let; readonly at: Place } | undefined {
  const setup = setupAt(snapshot, line)?.setup;
  const tree = snapshot.tree.lines[line];
  const token = tree && tokenAt(tree, character);
  if (!setup || token?.type !== 'word') return undefined;
  const found = setup.lets.get(tree!.text.slice(token.start, token.end));
  const inValue = token.start >= Math.min(tree!.colon ?? Infinity, tree!.equals?.start ?? Infinity, tree!.clauses[0]?.start ?? Infinity, tree!.compare?.start ?? Infinity);
  const at = { uri: snapshot.uri, line, start: token.start, end: token.end };
  return found && (inValue || (found.at.line === line && found.at.start === token.start)) ? { let: found, at } : undefined;
}
