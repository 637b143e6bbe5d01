import { GaugeError, requireFinite } from './error.js';

export interface Repeats {
  readonly count: number;
  readonly mean: number;
  /** sample standard deviation; 0 for a single reading, which says nothing about scatter */
  readonly sd: number;
  readonly degreesOfFreedom: number;
  /** type A standard uncertainty of the mean: sd/√count */
  readonly u: number;
}

/**
 * Mean and scatter of repeats of one measurement.
 *
 * Source: JCGM 100:2008, 4.2.1–4.2.3. Method: two passes, so that close readings keep their digits.
 * Error: rounding only. Special case: one reading has scatter 0 and no degrees of freedom.
 * Example: 2, 4, 6 → mean 4, sd 2, u 1.1547, 2 degrees of freedom.
 */
export function repeats(readings: readonly number[]): Repeats {
  const count = readings.length;
  if (count === 0) throw new GaugeError('At least one reading is needed.', 'readings', 0);
  for (const reading of readings) requireFinite(reading, 'readings');
  const first = readings[0]!;
  const mean = first + sum(readings.map((reading) => reading - first)) / count;
  const sd = count > 1 ? Math.sqrt(sum(readings.map((reading) => (reading - mean) ** 2)) / (count - 1)) : 0;
  return { count, mean, sd, degreesOfFreedom: count - 1, u: sd / Math.sqrt(count) };
}

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/**
 * Whether repeats scatter more than the instrument accounts for (range against 95 % of two readings, √2·U): then a
 * third reading is due, and dirt, place and technique come before arithmetic. Source: common practice; ISO 5725-6 has
 * the 2.8-fold repeatability limit (from memory).
 */
export function scattersTooMuch(readings: readonly number[], expandedU: number): boolean {
  return Math.max(...readings) - Math.min(...readings) > Math.SQRT2 * expandedU;
}
