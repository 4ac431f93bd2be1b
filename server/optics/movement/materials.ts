import type { Range } from '../range.ts';

/** A coefficient of linear expansion as tables have it, 1/K. */
export interface Expansion {
  /** What to reckon with. */
  readonly usual: number
  /** From the least to the most that the tables give; both ends the same where they agree. */
  readonly band: Range
  readonly source: string
}

const PER_MILLION = 1e-6;
const of = (usual: number, source: string, from = usual, to = usual): Expansion => ({ usual: usual * PER_MILLION, band: { from: from * PER_MILLION, to: to * PER_MILLION }, source });

const CALLISTER = 'Callister, Materials Science and Engineering, appendix B';
const OPENSTAX = 'OpenStax, University Physics vol. 2, table 1.2';
const TABLES = 'engineering tables';

/**
 * Coefficients of linear expansion of what optics stand on and are made of, about 20 °C, 1/K.
 *
 * Validity: solid pieces. A table top of several materials follows none of them; wood moves far more with humidity than with warmth.
 */
export const thermalExpansion = {
  aluminium: of(23.6, `6061: ${CALLISTER}; pure 23.1 in encyclopaedia tables, 25 in ${OPENSTAX}`, 23.1, 25),
  steel: of(11.7, `mild steel; 10.8 to 13 in ${TABLES}, 12 in ${OPENSTAX}`, 10.8, 13),
  'stainless steel': of(17.3, `type 304: ${TABLES}`),
  'cast iron': of(10.8, `grey: ${TABLES}`),
  brass: of(19, TABLES),
  granite: of(7.9, `${TABLES}; 5 to 9 in the literature`, 5, 9),
  concrete: of(12, `9.8 to 14.5 in ${TABLES}; about their middle`, 9.8, 14.5),
  'plate glass': of(9, TABLES),
  'borosilicate crown': of(7.1, 'manufacturer data sheet (2017), in the refractiveindex.info database (CC0)'),
  'borosilicate glass': of(3.3, TABLES),
  'fused silica': of(0.5, `0.5 to 0.59 in ${TABLES}`, 0.5, 0.59),
  invar: of(1.2, `0.9 in ${OPENSTAX}, 1.6 in ${CALLISTER}; about their middle`, 0.9, 1.6),
  'super invar': of(0.72, CALLISTER),
  'wood along the grain': of(3.5, TABLES),
  'wood across the grain': of(40, `27 to 54 in ${TABLES}; about their middle`, 27, 54),
  acrylic: of(72, `70 to 75 in ${TABLES}; about their middle`, 70, 75),
} as const satisfies Readonly<Record<string, Expansion>>;
