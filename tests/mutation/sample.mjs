/** Which lines of a file a sample changes. */
import { readFileSync } from 'node:fs';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/**
 * A share of the lines of a file that hold code, in percent, each as Stryker names it (`FILE:LINE-LINE`); at least one line of each file, and the same ones for the same seed.
 * A change that takes away a block of several lines is in no sample, since it lies on no single one.
 */
export function sampleOf(file, percent, seed) {
  const lines = readFileSync(file, 'utf8').split('\n').flatMap((text, i) => (/^\s*(\/\/|\/?\*|import\b|[\])};,]*$)/.test(text) ? [] : [i + 1]));
  const random = xoroshiro128plus(seed);
  const wanted = Math.max(1, Math.round((lines.length * percent) / 100));
  // The first few of a shuffle, in the order of the file.
  for (let i = 0; i < Math.min(wanted, lines.length); i++) {
    const j = uniformInt(random, i, lines.length - 1);
    [lines[i], lines[j]] = [lines[j], lines[i]];
  }
  return lines.slice(0, wanted).toSorted((a, b) => a - b).map(line => `${file}:${line}-${line}`);
}
