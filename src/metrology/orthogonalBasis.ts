import { add, exact, multiply, negated, type DoubleDouble } from './doubleDouble';

/**
 * Polynomials p0 … pm in t, orthogonal over weighted points, by their recurrence
 * p0 = 1, p(k+1) = (t − α(k))·p(k) − β(k)·p(k−1).
 * Source: G. E. Forsythe, "Generation and use of orthogonal polynomials for data-fitting with a digital computer", J. SIAM 5
 * (1957), from memory.
 */
export interface OrthogonalBasis {
  readonly alpha: readonly number[];
  readonly beta: readonly number[];
  /** Σ w·p(k)² over the points. */
  readonly norms: readonly number[];
}

/**
 * Basis up to a degree over points t in [−1, 1] with weights. Undefined if the points lie too close together to tell that
 * degree from a lower one.
 */
export function orthogonalBasis(t: readonly number[], weights: readonly number[], degree: number): OrthogonalBasis | undefined {
  const alpha: number[] = [];
  const beta: number[] = [];
  const norms: number[] = [];
  let before: number[] = t.map(() => 0);
  let values: number[] = t.map(() => 1);
  for (let k = 0; k <= degree; k += 1) {
    let norm = 0;
    let moment = 0;
    for (let i = 0; i < t.length; i += 1) {
      const weighted = weights[i] * values[i] * values[i];
      norm += weighted;
      moment += weighted * t[i];
    }
    if (!(norm > (norms[0] ?? 0) * 1e-28) || !Number.isFinite(norm)) return undefined;
    norms.push(norm);
    alpha.push(moment / norm);
    beta.push(k === 0 ? 0 : norm / norms[k - 1]);
    const [a, b, older] = [alpha[k], beta[k], before];
    before = values;
    values = values.map((value, i) => (t[i] - a) * value - b * older[i]);
  }
  return { alpha, beta, norms };
}

/** p0(t) … pm(t). */
export function basisValues({ alpha, beta, norms }: OrthogonalBasis, t: number): number[] {
  const values = [1];
  for (let k = 0; k < norms.length - 1; k += 1) {
    values.push((t - alpha[k]) * values[k] - (k === 0 ? 0 : beta[k] * values[k - 1]));
  }
  return values;
}

/** p0(t) … pm(t) in double-double arithmetic. */
export function exactBasisValues({ alpha, beta, norms }: OrthogonalBasis, t: DoubleDouble): DoubleDouble[] {
  const values: DoubleDouble[] = [exact(1)];
  for (let k = 0; k < norms.length - 1; k += 1) {
    const next = multiply(add(t, exact(-alpha[k])), values[k]);
    values.push(k === 0 ? next : add(next, negated(multiply(exact(beta[k]), values[k - 1]))));
  }
  return values;
}

/** Coefficients of each p(k) in powers of t, constant first, in double-double arithmetic. */
export function basisPowers({ alpha, beta, norms }: OrthogonalBasis): DoubleDouble[][] {
  const rows: DoubleDouble[][] = [[exact(1)]];
  for (let k = 0; k < norms.length - 1; k += 1) {
    const current = rows[k];
    const older = rows[k - 1] ?? [];
    rows.push(Array.from({ length: k + 2 }, (_, power) => {
      const shifted = current[power - 1] ?? exact(0);
      const own = multiply(exact(-alpha[k]), current[power] ?? exact(0));
      const last = multiply(exact(-beta[k]), older[power] ?? exact(0));
      return add(add(shifted, own), last);
    }));
  }
  return rows;
}
