/** What turns one row of numbers into another: at most one piece that is replaced, as an edit of a text mostly does with what is made of it. */
export interface NumberEdit {
  /** where the piece begins */
  readonly start: number;
  readonly deleteCount: number;
  readonly data: readonly number[];
}

export function numberEdits(before: readonly number[], after: readonly number[]): NumberEdit[] {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) start++;
  let same = 0;
  while (same < shorter - start && before[before.length - 1 - same] === after[after.length - 1 - same]) same++;
  const [deleteCount, data] = [before.length - start - same, after.slice(start, after.length - same)];
  return deleteCount === 0 && data.length === 0 ? [] : [{ start, deleteCount, data }];
}
