import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformInt } from 'pure-rand/distribution/uniformInt';

/** Chance that is the same on every machine. */
export class Dice {
  private readonly source;
  constructor(seed: number) { this.source = xoroshiro128plus(seed); }
  below(n: number): number { return uniformInt(this.source, 0, n - 1); }
  of<T>(all: readonly T[]): T { return all[this.below(all.length)]!; }
}
