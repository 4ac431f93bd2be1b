/** Holes of a table. */
import type { Setup } from './model.ts';

/** From one hole to the next, m; undefined where it is not written as a plain length. */
export function holeSpacing({ facts }: Pick<Setup, 'facts'>): number | undefined {
  const value = facts.get('hole spacing')?.value;
  return value?.kind === 'quantity' && value.quantity.value > 0 ? value.quantity.value : undefined;
}
