import type { Range } from '../range.ts';

/** The gain curve of one line of a gas laser. */
export interface GainLine {
  readonly laser: string
  /** Wavelength in air, m. */
  readonly wavelength: number
  /** Full width at half maximum of the gain curve, Hz. */
  readonly width: number
  /** The width is surely in here, Hz: tubes differ in pressure, current, temperature and isotopes. */
  readonly plausible: Range
  readonly source: string
}

/**
 * Gain curves of gas laser lines that holograms are shot with.
 *
 * Validity: all modes free to run; an etalon narrows the curve to one mode. Diode and solid-state lasers are not
 * listed, since their curves hold for one make only.
 * Wavelengths: NIST Atomic Spectra Database, from memory. Widths: see each line.
 */
export const gainLines: readonly GainLine[] = [
  heNe(543.365e-9),
  heNe(594.096e-9),
  heNe(611.802e-9),
  heNe(632.816e-9),
  argon(457.935e-9),
  argon(476.486e-9),
  argon(487.986e-9),
  argon(496.508e-9),
  argon(501.716e-9),
  argon(514.53e-9),
  krypton(530.865e-9),
  krypton(568.188e-9),
  krypton(647.088e-9),
  krypton(676.442e-9),
  {
    laser: 'He-Cd',
    wavelength: 441.563e-9,
    width: 3e9,
    plausible: { from: 1e9, to: 4e9 },
    source: 'common practice; about 1 GHz with a single isotope, several shifted lines with natural cadmium',
  },
];

/**
 * The gain line of a gas laser at a wavelength (in air, m): the nearest listed one within 0.5 nm, so that
 * nominal wavelengths such as 633 nm are found; undefined where none is that near, as for NaN.
 *
 * Source: `gainLines`.
 */
export function gainLineAt(wavelength: number): GainLine | undefined {
  const distance = (line: GainLine): number => Math.abs(line.wavelength - wavelength);
  const near = gainLines.filter((line) => distance(line) <= 0.5e-9);
  return near.reduce<GainLine | undefined>(
    (best, line) => (best !== undefined && distance(best) <= distance(line) ? best : line),
    undefined,
  );
}

/** 1.5 GHz in the red; a Doppler width goes with the frequency, so the other lines follow from it. */
function heNe(wavelength: number): GainLine {
  const scale = 632.816e-9 / wavelength;
  return {
    laser: 'He-Ne',
    wavelength,
    width: 1.5e9 * scale,
    plausible: { from: 1.4e9 * scale, to: 1.6e9 * scale },
    source: 'common practice: 1.4 to 1.5 GHz at 633 nm in laser texts; other lines scaled by frequency (Doppler)',
  };
}

function argon(wavelength: number): GainLine {
  return {
    laser: 'argon ion',
    wavelength,
    width: 5.5e9,
    plausible: { from: 3.5e9, to: 6.5e9 },
    source: 'common practice: 5 to 6 GHz; texts give down to 3.5 GHz, for cooler tubes',
  };
}

/** The figure in use is that of argon. Krypton is heavier: as hot as an argon tube, its Doppler width is only half of it. */
function krypton(wavelength: number): GainLine {
  return {
    laser: 'krypton ion',
    wavelength,
    width: 5e9,
    plausible: { from: 1.8e9, to: 6e9 },
    source: 'common practice: 5 to 6 GHz, as for argon; but the Doppler width at 647 nm is only 2.0 GHz at 3000 K, 2.6 GHz at 5000 K',
  };
}
