/** Results by their names. */
import type { Cell, Graph } from './graph.ts';

/** The cell of a canonical name, or of an alias as long as that means one thing. */
export function resultNamed(graph: Graph, aliases: ReadonlyMap<string, readonly Cell[]>, name: string): Cell | undefined {
  const among = aliases.get(name);
  return graph.find(name) ?? (among?.length === 1 ? among[0] : undefined);
}

/** The shortest name that means only this cell. */
export function shortName(cell: Cell, r: { readonly aliases: ReadonlyMap<string, readonly Cell[]> }): string {
  const names = [...r.aliases].filter(([, among]) => among.length === 1 && among[0] === cell).map(([name]) => name);
  return names.reduce((best, n) => (n.length < best.length ? n : best), cell.name);
}
