import { inverse, Matrix, solve } from 'ml-matrix';

export interface Fit {
  readonly values: readonly number[];
  /** sum of the squares of the residuals */
  readonly cost: number;
  /** inverse of JᵀJ at the end: times the variance of one residual it is the covariance of the values */
  readonly cofactors: Matrix;
  readonly converged: boolean;
}

export interface FitOptions {
  /** of each value the step by which its derivative is taken */
  readonly steps: readonly number[];
  readonly most?: number;
}

/**
 * The values with the least sum of squared residuals, from a start near them (Levenberg and Marquardt; derivatives by
 * differences). Residuals are in units of their own standard deviation, or all of one.
 *
 * Source: K. Madsen, H. B. Nielsen, O. Tingleff, Methods for Non-Linear Least Squares Problems, 2004, 3.2, from memory.
 * `converged` says whether the last step was below 1e-4 of the derivative steps' size times 100, not only that time ran out.
 */
export function leastSquares(
  residuals: (values: readonly number[]) => Float64Array,
  start: readonly number[],
  { steps, most = 30 }: FitOptions,
): Fit {
  let values = [...start];
  let now = residuals(values);
  let cost = squares(now);
  let damping = 1e-3;
  let converged = false;
  let normal = normalOf(residuals, values, now, steps);
  for (let i = 0; i < most && !converged; i += 1) {
    const step = dampedStep(normal, damping);
    const next = values.map((value, k) => value + step[k]!);
    const there = residuals(next);
    const costThere = squares(there);
    if (!(costThere <= cost)) {
      damping *= 8;
      if (damping > 1e10) break;
      continue;
    }
    converged = step.every((size, k) => Math.abs(size) < 0.1 * steps[k]!);
    [values, now, cost] = [next, there, costThere];
    damping = Math.max(1e-9, damping / 5);
    normal = normalOf(residuals, values, now, steps);
  }
  return { values, cost, cofactors: inverse(damped(normal.jtj, 1e-12)), converged };
}

const squares = (residuals: Float64Array) => {
  let sum = 0;
  for (const r of residuals) sum += r * r;
  return sum;
};

interface Normal {
  readonly jtj: Matrix;
  readonly jtr: readonly number[];
}

function normalOf(
  residuals: (values: readonly number[]) => Float64Array,
  values: readonly number[],
  now: Float64Array,
  steps: readonly number[],
): Normal {
  const n = values.length;
  const columns = values.map((value, k) => {
    const moved = [...values];
    moved[k] = value + steps[k]!;
    const there = residuals(moved);
    return there.map((r, i) => (r - now[i]!) / steps[k]!);
  });
  const jtj = Matrix.zeros(n, n);
  const jtr = columns.map((column) => dot(column, now));
  for (let i = 0; i < n; i += 1)
    for (let k = 0; k <= i; k += 1) {
      const value = dot(columns[i]!, columns[k]!);
      jtj.set(i, k, value);
      jtj.set(k, i, value);
    }
  return { jtj, jtr };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i]! * b[i]!;
  return sum;
}

function damped(jtj: Matrix, damping: number): Matrix {
  const out = jtj.clone();
  for (let k = 0; k < out.rows; k += 1) out.set(k, k, out.get(k, k) * (1 + damping) + 1e-300);
  return out;
}

const dampedStep = ({ jtj, jtr }: Normal, damping: number): number[] =>
  solve(damped(jtj, damping), Matrix.columnVector(jtr.map((r) => -r))).to1DArray();
