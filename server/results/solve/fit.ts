/** A line through many readings: unknowns by weighted least squares, and which of them, or which sums of them, the readings tell at all. */
import { Matrix, pseudoInverse } from 'ml-matrix';

export interface Row {
  /** by which unknown how much goes into what was read */
  readonly by: readonly number[];
  readonly value: number;
  /** standard uncertainty, above zero */
  readonly u: number;
}

export interface Fit {
  /** A sum of unknowns with its standard uncertainty; undefined where the readings leave it open. */
  readonly told: (by: readonly number[]) => { readonly value: number; readonly u: number } | undefined;
  /** what is left over, in squares of standard uncertainties, and how many readings there are beyond what the unknowns need */
  readonly left: number;
  readonly spare: number;
}

/** Of the largest singular value: below that a direction is open. Incidences are 0 and 1, so that what is not zero is far above. */
const FLAT = 1e-9;

/**
 * Rows weighted by 1/u, solved by the pseudoinverse of Moore and Penrose: x = (WA)⁺Wb, covariance (WA)⁺(WA)⁺ᵀ. A sum cᵀx is told where c lies in the space of the rows, c(WA)⁺(WA) = c.
 * Source: JCGM 102:2011 for the covariance of a linear model; estimable functions as in textbooks of linear models.
 */
export function fit(rows: readonly Row[]): Fit {
  const n = rows[0]?.by.length ?? 0;
  if (n === 0) return { told: () => undefined, left: 0, spare: 0 };
  const A = new Matrix(rows.map(r => r.by.map(v => v / r.u)));
  const inverse = pseudoInverse(A, FLAT);
  const x = inverse.mmul(Matrix.columnVector(rows.map(r => r.value / r.u)));
  const onto = inverse.mmul(A);
  const rank = Math.round(onto.trace());
  const left = rows.reduce((s, r) => s + ((r.by.reduce((t, v, k) => t + v * x.get(k, 0), 0) - r.value) / r.u) ** 2, 0);
  const told: Fit['told'] = by => {
    const c = Matrix.rowVector([...by]);
    const open = Matrix.sub(c, c.mmul(onto)).norm('frobenius') > 1e-6 * Math.max(1, c.norm('frobenius'));
    return open ? undefined : { value: c.mmul(x).get(0, 0), u: c.mmul(inverse).norm('frobenius') };
  };
  return { told, left, spare: rows.length - rank };
}
