/** sin(πx), exactly 0 at whole x and accurate for large x, where sin(Math.PI * x) is not. */
export function sinOfPi(x: number): number {
  const turn = x - 2 * Math.round(x / 2);
  // Folding to a quarter turn keeps the zero at ±1 exact.
  if (turn > 0.5) return Math.sin(Math.PI * (1 - turn));
  if (turn < -0.5) return -Math.sin(Math.PI * (1 + turn));
  return Math.sin(Math.PI * turn);
}

/** cos(πx), exactly 0 at odd multiples of 1/2 and accurate for large x. */
export function cosOfPi(x: number): number {
  return sinOfPi(0.5 - Math.abs(x - 2 * Math.round(x / 2)));
}

/**
 * The point between `from` and `to` where `before` turns from true to false, to the last bit.
 * `before` must be true from `from` on and false up to `to`, and turn once.
 */
export function bisect(from: number, to: number, before: (x: number) => boolean): number {
  let [low, high] = [from, to];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (before(middle)) low = middle;
    else high = middle;
  }
}
