/** How a number is spread over machines like this one. */
export interface Spread {
  readonly p05: number;
  readonly p25: number;
  readonly p50: number;
  readonly p75: number;
  readonly p95: number;
  readonly mean: number;
}

/** Undefined for no values. */
export function spreadOf(values: Float64Array): Spread | undefined {
  if (values.length === 0) return undefined;
  const sorted = values.toSorted();
  return {
    p05: quantile(sorted, 0.05),
    p25: quantile(sorted, 0.25),
    p50: quantile(sorted, 0.5),
    p75: quantile(sorted, 0.75),
    p95: quantile(sorted, 0.95),
    mean: values.reduce((a, b) => a + b, 0) / values.length,
  };
}

/**
 * A quantile by straight lines between the sorted values, the lowest at 0 and the highest at 1
 * (Hyndman & Fan, "Sample quantiles in statistical packages", Am. Stat. 50(4), 1996, definition 7).
 * @example quantile([1, 2, 4], 0.75) = 3
 */
export function quantile(sorted: ArrayLike<number>, p: number): number {
  const place = p * (sorted.length - 1);
  const below = Math.floor(place);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (high - low) * (place - below);
}

/**
 * Where the true median lies, 95 times in 100: between the sorted values n/2 ± 0.98 √n places along (the number of
 * values below the median is binomial; normal approximation).
 */
export function medianBounds(sorted: ArrayLike<number>): readonly [number, number] {
  const n = sorted.length;
  const reach = 0.98 * Math.sqrt(n);
  const at = (place: number): number => sorted[Math.min(n - 1, Math.max(0, place))]!;
  return [at(Math.floor(n / 2 - reach)), at(Math.ceil(n / 2 + reach))];
}
