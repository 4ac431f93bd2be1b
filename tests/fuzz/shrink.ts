/** Cuts an input down as long as what is wrong with it stays wrong: whole lines first, then ever smaller pieces. */

/** More tries than that no input is worth. */
const TRIES = 600;

export async function shrink(input: string, isWrong: (input: string) => Promise<boolean>): Promise<string> {
  let [best, tries] = [input, TRIES];
  for (const parts of [(t: string) => t.split(/(?<=\n)/), (t: string) => t.match(/[\p{L}\p{N}_.-]+|\s+|[^\s\p{L}\p{N}]/gu) ?? [], (t: string) => t.split('')]) {
    let pieces: readonly string[] = parts(best);
    for (let size = Math.ceil(pieces.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2)) {
      for (let at = 0; at < pieces.length;) {
        const fewer = pieces.toSpliced(at, size);
        if (tries-- <= 0) return best;
        if (await isWrong(fewer.join(''))) {
          pieces = fewer;
          best = pieces.join('');
        } else at += size;
      }
    }
  }
  return best;
}
