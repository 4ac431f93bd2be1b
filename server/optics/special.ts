/** Special functions to double precision, from series and integrals whose convergence is plain rather than from tables of coefficients. */
import { nearestWithin, type Range } from './range.ts';

/** Arguments of the functions here, 1. */
export const specialArguments: Range = { from: -1e9, to: 1e9 };

/** From here on the error function differs from 1 by less than the last bit. */
const ERF_IS_ONE = 6;
/** Below it the series of the error function is short and exact; above it the continued fraction is. */
const ERF_SERIES_TO = 2;
/** Steps of the continued fraction that exhaust a double at `ERF_SERIES_TO`. */
const FRACTION_STEPS = 60;
/** Up to here the Bessel function is summed over its integral; beyond it the asymptotic series reaches the last bit. */
const BESSEL_INTEGRAL_TO = 20;
/** Samples of a quarter turn: the error of the sum is 2 J₆₄(20), below 10⁻²⁴. */
const BESSEL_SAMPLES = 16;

/**
 * Bessel function of the first kind and order 0, J₀(x), 1. Even; 1 at 0; first zero at 2.404826.
 *
 * @param x see `specialArguments`
 *
 * Validity: absolute error below 10⁻¹⁵ over the whole range; close to a zero the relative error is larger accordingly.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 9.1.18 and 9.2.5 (from memory).
 */
export function besselJ0(x: number): number {
  const distance = Math.abs(nearestWithin(specialArguments, x));
  return distance <= BESSEL_INTEGRAL_TO ? besselIntegral(distance) : besselFarOut(distance);
}

/**
 * Error function erf(x) = 2/√π ∫₀ˣ exp(−t²) dt, 1. Odd, −1 to 1.
 *
 * @param x see `specialArguments`
 *
 * Validity: error below 2·10⁻¹⁵ of the value over the whole range.
 * Source: Abramowitz & Stegun (1964), 7.1.6 and 7.1.14 (from memory).
 */
export function erf(x: number): number {
  const argument = nearestWithin(specialArguments, x);
  const size = Math.abs(argument);
  const value = size >= ERF_IS_ONE ? 1 : size <= ERF_SERIES_TO ? erfSeries(size) : 1 - erfcFraction(size);
  return argument < 0 ? -value : value;
}

/** Mean of cos(x sin θ) over a quarter turn: the rule of midpoints converges faster than any power, as the integrand is periodic. */
function besselIntegral(x: number): number {
  let sum = 0;
  for (let k = 0; k < BESSEL_SAMPLES; k++) sum += Math.cos(x * Math.sin((Math.PI * (k + 0.5)) / (2 * BESSEL_SAMPLES)));
  return sum / BESSEL_SAMPLES;
}

/** √(2/πx) (P cos χ − Q sin χ) with χ = x − π/4, written by sines and cosines of x so that no digit is lost in the difference. */
function besselFarOut(x: number): number {
  let [even, odd, term] = [0, 0, 1];
  // The terms shrink until k ≈ 2 x, at 20 down to 5·10⁻¹⁹, far beyond the last bit.
  for (let k = 0; Math.abs(term) > Number.EPSILON / 8; k++) {
    const sign = k % 4 < 2 ? 1 : -1;
    if (k % 2 === 0) even += sign * term;
    else odd += sign * term;
    term *= -((2 * k + 1) ** 2) / (8 * (k + 1) * x);
  }
  const [cos, sin] = [Math.cos(x), Math.sin(x)];
  return (even * (cos + sin) - odd * (sin - cos)) / Math.sqrt(Math.PI * x);
}

/** All terms are positive: nothing cancels. */
function erfSeries(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; term > sum * Number.EPSILON * 0.1; n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}

/** 1 − erf(x), x > 0, by its continued fraction from the far end. */
function erfcFraction(x: number): number {
  let tail = x;
  for (let k = FRACTION_STEPS; k > 0; k--) tail = x + k / 2 / tail;
  return Math.exp(-x * x) / (Math.sqrt(Math.PI) * tail);
}
