/** Where along a sweep something holds. */

/** Rows, both among them. */
export interface Stretch { readonly from: number; readonly to: number }

/** The stretches of `count` rows on which something holds. */
export function stretchesOf(count: number, holds: (row: number) => boolean): Stretch[] {
  const found: Stretch[] = [];
  for (let i = 0; i < count; i++) {
    if (!holds(i)) continue;
    const last = found.at(-1);
    if (last?.to === i - 1) found[found.length - 1] = { from: last.from, to: i };
    else found.push({ from: i, to: i });
  }
  return found;
}

/** `from 40 mm on`, `up to 30 mm`, `from 40 mm to 60 mm`, `at 50 mm`, `throughout`: of values in their order. */
export function stretchWords(stretches: readonly Stretch[], texts: readonly string[]): string {
  const last = texts.length - 1;
  return stretches.map(({ from, to }) => (
    from === 0 && to === last ? 'throughout' : from === to ? `at ${texts[from]!}` : from === 0 ? `up to ${texts[to]!}` : to === last ? `from ${texts[from]!} on` : `from ${texts[from]!} to ${texts[to]!}`
  )).join(' and ');
}
