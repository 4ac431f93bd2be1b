/**
 * A second evaluation of whole setups: each figure as one closed form of what the text says, by textbooks. Nothing here is taken from the program, and nothing is shared with it. Lengths in metres.
 */
export type V = readonly [number, number, number];

const minus = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const times = (k: number, a: V): V => [k * a[0], k * a[1], k * a[2]];
const plus = (a: V, b: V): V => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const size = (a: V): number => Math.sqrt(dot(a, a));
const unit = (a: V): V => times(1 / size(a), a);
export const distance = (a: V, b: V): number => size(minus(b, a));
export const direction = (a: V, b: V): V => unit(minus(b, a));
export const along = (a: V, b: V, by: number): V => plus(a, times(by, direction(a, b)));
/** Heading in the plan counter-clockwise from the right, tipped up out of it. */
export const heading = (turned: number, up: number): V => [Math.cos(up) * Math.cos(turned), Math.cos(up) * Math.sin(turned), Math.sin(up)];

/** Between light and the normal of a plate, from whichever side. tan φ = |d × n| / |d · n| keeps its digits near 0. */
export const fromNormal = (d: V, n: V): number => Math.atan2(size([d[1] * n[2] - d[2] * n[1], d[2] * n[0] - d[0] * n[2], d[0] * n[1] - d[1] * n[0]]), Math.abs(dot(d, n)));
/** Of a mirror that sends light from one direction into another: |d₁ − d₂| = 2 cos α, |d₁ + d₂| = 2 sin α. */
export const incidence = (arriving: V, leaving: V): number => Math.atan2(size(plus(arriving, leaving)), size(minus(leaving, arriving)));
/** Fringes for each metre that a mirror moves along its normal: 2 cos α / λ. Collier, Burckhardt & Lin, Optical Holography, on stability (from memory). */
export const fringesPerMove = (alpha: number, wavelength: number): number => (2 * Math.cos(alpha)) / wavelength;

/**
 * Radius to 1/e² of a beam that leaves its waist w₀, goes a way, through a thin lens, and another way: by the product of ray matrices ((1 b)(0 1)) ((1 0)(−1/f 1)) ((1 a)(0 1)) = ((A B)(C D)) and
 * w² = w₀² (A² + (B/z)²), z = π w₀² / (M² λ). Siegman, Lasers (1986), ch. 20 (from memory).
 */
export function radiusBehind(waist: number, quality: number, wavelength: number, before: number, lens?: { readonly focalLength: number; readonly behind: number }): number {
  const z = (Math.PI * waist ** 2) / (quality * wavelength);
  if (!lens) return waist * Math.hypot(1, before / z);
  const A = 1 - lens.behind / lens.focalLength;
  const B = before + lens.behind - (before * lens.behind) / lens.focalLength;
  return waist * Math.hypot(A, B / z);
}
/** Middle of a round Gaussian beam on a plane that it meets at an angle: 2P cos θ / (π w²). Siegman, Lasers (1986), ch. 17 (from memory). */
export const lightInTheMiddle = (power: number, radius: number, angle: number): number => (2 * power * Math.cos(angle)) / (Math.PI * radius ** 2);

const C = 299_792_458;
export type Line =
  | { readonly by: 'linewidth'; readonly width: number; readonly shape: 'gaussian' | 'lorentzian' | 'rectangular' }
  | { readonly by: 'length'; readonly length: number; readonly contrast: number; readonly shape: 'gaussian' | 'lorentzian' }
  | { readonly by: 'modes'; readonly tube: number; readonly modes: number };

/** |γ|² at a path difference: the share of brightness that is left. Goodman, Statistical Optics (1985), 5.1; equal modes: the sum of a geometric series (Collier, Burckhardt & Lin, ch. 7; from memory). */
export function brightness(line: Line, difference: number): number {
  const d = Math.abs(difference);
  if (line.by === 'linewidth') {
    const x = (d * line.width) / C;
    if (line.shape === 'gaussian') return Math.exp(-((Math.PI * x) ** 2) / (2 * Math.LN2));
    if (line.shape === 'lorentzian') return Math.exp(-2 * Math.PI * x);
    return x === 0 ? 1 : (Math.sin(Math.PI * x) / (Math.PI * x)) ** 2;
  }
  if (line.by === 'length') return line.contrast ** (2 * (d / line.length) ** (line.shape === 'gaussian' ? 2 : 1));
  // The sum itself, mode by mode.
  let [re, im] = [0, 0];
  for (let k = 0; k < line.modes; k++) { re += Math.cos((Math.PI * k * d) / line.tube); im += Math.sin((Math.PI * k * d) / line.tube); }
  return (re * re + im * im) / line.modes ** 2;
}

/**
 * Fringes for each metre where two plane waves of these directions meet a layer. Of a transmission hologram along the surface, |(d₁ − d₂) along it| / λ; of a reflection hologram across their planes in
 * the layer, n |e₁ − e₂| / λ, e the directions in it by Snell's law. Collier, Burckhardt & Lin, ch. 1 to 3 (from memory).
 */
export function fringes(d1: V, d2: V, normal: V, wavelength: number, index: number): { readonly per: number; readonly perInLayer: number; readonly tilt: number; readonly reflection: boolean } {
  const flat = (d: V): V => minus(d, times(dot(d, normal), normal));
  const reflection = dot(d1, normal) * dot(d2, normal) < 0;
  const inside = (d: V): V => { const t = times(1 / index, flat(d)); return plus(t, times(Math.sign(dot(d, normal)) * Math.sqrt(1 - dot(t, t)), normal)); };
  const K = times(index / wavelength, minus(inside(d1), inside(d2)));
  // The planes lie across K: their tilt out of the surface is that of K out of the normal.
  return { reflection, perInLayer: size(K), per: reflection ? size(K) : size(minus(flat(d1), flat(d2))) / wavelength, tilt: fromNormal(K, normal) };
}
/** Q = 2π λ d / (n Λ²): Klein & Cook, IEEE Trans. Sonics Ultrason. SU-14, 123 (1967) (from memory). */
export const volumeParameter = (wavelength: number, layer: number, index: number, perMetre: number): number => (2 * Math.PI * wavelength * layer * perMetre ** 2) / index;
/** Share of the full contrast that a beam ratio K leaves, squared: V = 2√K/(1 + K) (Collier, Burckhardt & Lin, ch. 1). */
export const ratioShare = (K: number): number => (4 * K) / (1 + K) ** 2;
/** What a steady drift of so many fringes leaves: sin²(πm)/(πm)² (the mean of e^{2πi m t} over the exposure, squared). */
export const driftShare = (m: number): number => (m === 0 ? 1 : (Math.sin(Math.PI * m) / (Math.PI * m)) ** 2);
export const share = (...losses: readonly number[]): number => losses.reduce((p, l) => p * (1 - l), 1);
/** (1 − s)/s for each share s: a ratio R₀ that was there at s₀ is R at s. */
export const splitFor = (ratio: number, had: number, at: number): number => (had * at) / (had * at + ratio * (1 - at));
