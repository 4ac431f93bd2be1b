/** Seeded chance: the same seed makes the same inputs everywhere. */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export interface Random {
  /** a whole number from 0 on, below `n` */
  below(n: number): number;
  of<T>(list: readonly T[]): T;
}

export function randomBy(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  const below = (n: number): number => uniformInt(generator, 0, n - 1);
  return { below, of: list => list[below(list.length)]! };
}
