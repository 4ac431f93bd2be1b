/** Steps of keys over the net of figures of a map, and what is told there. Knows nothing of a browser. */
import type { Probe } from '../../../server/lsp/protocol.ts';

export interface Net {
  readonly column: number;
  /** from the top */
  readonly row: number;
}

const WAYS: ReadonlyMap<string, readonly [number, number]> = new Map([['ArrowLeft', [-1, 0]], ['ArrowRight', [1, 0]], ['ArrowUp', [0, -1]], ['ArrowDown', [0, 1]]]);

export const inTheMiddle = ({ columns, rows }: Probe): Net => ({ column: Math.floor((columns - 1) / 2), row: Math.floor((rows - 1) / 2) });

/** @param far to the edge @returns undefined for other keys */
export function stepped(probe: Probe, { column, row }: Net, key: string, far: boolean): Net | undefined {
  if (key === 'Home') return inTheMiddle(probe);
  const way = WAYS.get(key);
  if (!way) return undefined;
  const within = (at: number, by: number, count: number): number => Math.max(0, Math.min(count - 1, at + by * (far ? count : 1)));
  return { column: within(column, way[0], probe.columns), row: within(row, way[1], probe.rows) };
}

/** `light at P1: 12 µW/cm²`, and where that is: `from the middle 25 mm to the left and 10 mm up`. */
export function wordsAt({ words, texts, columns, across, down }: Probe, { column, row }: Net): { readonly figure: string; readonly place: string } {
  const away = [across[column]!, down[row]!].filter(Boolean).join(' and ');
  return { figure: `${words}: ${texts[row * columns + column]!}`, place: away === '' ? 'in the middle' : `from the middle ${away}` };
}
