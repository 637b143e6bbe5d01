/** The value that the share `p` of the others does not exceed; 0 of nothing. */
export function quantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))] ?? 0;
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** The value with `rank` smaller ones before it; the values change places (Hoare’s selection). */
export function smallest(values: Float64Array, rank: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = values[rank]!;
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i]! < pivot) i += 1;
      while (values[j]! > pivot) j -= 1;
      if (i <= j) {
        const kept = values[i]!;
        values[i] = values[j]!;
        values[j] = kept;
        i += 1;
        j -= 1;
      }
    }
    if (j < rank) low = i;
    if (i > rank) high = j;
  }
  return values[rank]!;
}
