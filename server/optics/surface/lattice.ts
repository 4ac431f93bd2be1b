/** How a number of patches is laid over lengths. */

/**
 * How many along each of some lengths, so that they are about `count` in all and about as far apart one way as the other. The shortest is settled first: what is
 * too short for two leaves its share to the others. Along a length of 0 there is one.
 */
export function lattice(lengths: readonly number[], count: number): number[] {
  const counts = lengths.map(() => 1);
  const longerLast = lengths.map((length, i) => ({ length, i })).filter(({ length }) => length > 0).sort((a, b) => a.length - b.length);
  let left = Math.max(1, count);
  longerLast.forEach(({ length, i }, k) => {
    // A product of single ratios does not overflow or vanish where a product of lengths would.
    const rest = longerLast.slice(k);
    const share = rest.reduce((product, other) => product * (length / other.length) ** (1 / rest.length), left ** (1 / rest.length));
    counts[i] = Math.max(1, Math.round(share));
    left = Math.max(1, left / counts[i]);
  });
  return counts;
}

/** The middles of `n` even parts of the length from −1 to 1. */
export function along(n: number): number[] {
  return Array.from({ length: n }, (_, i) => (2 * i + 1) / n - 1);
}

/** An even number near this, 2 or more. */
export function evenCount(n: number): number {
  return 2 * Math.max(1, Math.round(n / 2));
}
