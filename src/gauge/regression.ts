import { Matrix, QrDecomposition } from 'ml-matrix';
import { GaugeError, requireFinite } from './error.js';

export interface Fit {
  /** in the order of the design's columns */
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  readonly residuals: readonly number[];
  readonly degreesOfFreedom: number;
  /** standard deviation of the residuals; 0 when as many columns as rows leave none */
  readonly residualSd: number;
  /** (XᵀX)⁻¹: times the variance of one reading it is the covariance of the coefficients */
  readonly inverseGram: readonly (readonly number[])[];
}

/**
 * Linear least squares: the coefficients that bring design·coefficients closest to y.
 *
 * Source: Matrix Computations, 5.3 (from memory).
 * Method: columns scaled to unit length, Householder QR, one step of refinement on the residuals.
 * Error: at least 12 digits on NIST StRD Norris and 10 on Longley (the tests state what is reached).
 * Special cases: an intercept is a column of ones the caller puts in.
 * Throws GaugeError when rows are fewer than columns, uneven or not finite, or when columns depend on each other.
 * Example: rows (1,0) (1,1) (1,2), y 1, 3, 5 → coefficients 1, 2.
 */
export function fitLinear(design: readonly (readonly number[])[], y: readonly number[]): Fit {
  const columns = requireTable(design, y);
  const lengths = columnLengths(design, columns);
  const x = new Matrix(design.map((row) => row.map((value, j) => value / lengths[j]!)));
  const qr = new QrDecomposition(x);
  requireIndependent(qr.upperTriangularMatrix);
  const scaled = refined(x, qr, Matrix.columnVector([...y]));
  const residuals = Matrix.sub(Matrix.columnVector([...y]), x.mmul(scaled)).to1DArray();
  const degreesOfFreedom = design.length - columns;
  const residualSd = degreesOfFreedom > 0 ? norm(residuals) / Math.sqrt(degreesOfFreedom) : 0;
  const inverseGram = gramInverse(qr.upperTriangularMatrix, lengths);
  return {
    coefficients: scaled.to1DArray().map((value, j) => value / lengths[j]!),
    standardErrors: inverseGram.map((row, j) => residualSd * Math.sqrt(row[j]!)),
    residuals,
    degreesOfFreedom,
    residualSd,
    inverseGram,
  };
}

function refined(x: Matrix, qr: QrDecomposition, y: Matrix): Matrix {
  const first = qr.solve(y);
  return Matrix.add(first, qr.solve(Matrix.sub(y, x.mmul(first))));
}

function requireTable(design: readonly (readonly number[])[], y: readonly number[]): number {
  const columns = design[0]?.length ?? 0;
  if (columns === 0 || design.length !== y.length)
    throw new GaugeError(
      `design has ${design.length} rows for ${y.length} values of y.`,
      'design',
      design.length,
    );
  if (design.length < columns)
    throw new GaugeError(
      `${design.length} readings cannot fix ${columns} unknowns; take at least ${columns}.`,
      'design',
      design.length,
    );
  if (design.some((row) => row.length !== columns))
    throw new GaugeError('the rows of design differ in length.', 'design');
  for (const value of [...design.flat(), ...y]) requireFinite(value, 'design and y');
  return columns;
}

function columnLengths(design: readonly (readonly number[])[], columns: number): number[] {
  return Array.from({ length: columns }, (_, j) => norm(design.map((row) => row[j]!)) || 1);
}

const norm = (values: readonly number[]) => Math.hypot(...values);

/** Below 1e-11 of the largest pivot the columns are the same to rounding, and coefficients would be noise. */
function requireIndependent(r: Matrix): void {
  const pivots = r.diagonal().map(Math.abs);
  const weakest = Math.min(...pivots);
  if (!(weakest > 1e-11 * Math.max(...pivots)))
    throw new GaugeError(
      'the readings do not tell the unknowns apart: two columns say the same.',
      'design',
      pivots.indexOf(weakest),
    );
}

function gramInverse(r: Matrix, lengths: readonly number[]): number[][] {
  const inverse = upperInverse(r);
  return inverse
    .mmul(inverse.transpose())
    .to2DArray()
    .map((row, i) => row.map((value, j) => value / (lengths[i]! * lengths[j]!)));
}

function upperInverse(r: Matrix): Matrix {
  return new QrDecomposition(r).solve(Matrix.eye(r.rows));
}
