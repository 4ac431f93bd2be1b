/** The table that a setup stands on. */
import type { Setup } from './model.ts';

/** Length and width of the table in m; undefined where they are not written. */
export function tableSize({ facts }: Pick<Setup, 'facts'>): readonly [number, number] | undefined {
  const table = facts.get('table')?.value;
  const [length, width] = table?.kind === 'sizes' ? table.parts.map(p => p.value) : [];
  return length === undefined || width === undefined ? undefined : [length, width];
}
