/** Results by their names. */
import type { Cell, Graph } from './graph.ts';

/** The cell of a canonical name, or of an alias as long as that means one thing. */
export function resultNamed(graph: Graph, aliases: ReadonlyMap<string, readonly Cell[]>, name: string): Cell | undefined {
  const among = aliases.get(name);
  return graph.find(name) ?? (among?.length === 1 ? among[0] : undefined);
}

/** The shortest name that means only this cell. */
export function shortName(cell: Cell, r: { readonly aliases: ReadonlyMap<string, readonly Cell[]> }): string {
  let best = cell.name;
  r.aliases.forEach((among, name) => { if (among.length === 1 && among[0] === cell && name.length < best.length) best = name; });
  return best;
}
