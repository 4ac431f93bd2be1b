/** Complex numbers: the size and phase of a wave that goes as exp(−iωt), so that a later phase counts positive. */
export type Complex = readonly [re: number, im: number];

export const times = (a: Complex, b: Complex): Complex => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
export const plus = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
/** Not for a divisor of 0. */
export const over = (a: Complex, b: Complex): Complex => {
  const d = squared(b);
  return [(a[0] * b[0] + a[1] * b[1]) / d, (a[1] * b[0] - a[0] * b[1]) / d];
};
/** Square of the size: the share of light that goes with an amplitude. */
export const squared = (a: Complex): number => a[0] ** 2 + a[1] ** 2;
/** Phase, rad, −π to π; 0 for 0. */
export const phase = (a: Complex): number => Math.atan2(a[1], a[0]);
/** Of size 1 and this phase, rad. */
export const turn = (angle: number): Complex => [Math.cos(angle), Math.sin(angle)];
