/** The value that the share `p` of the others does not exceed; 0 of nothing. */
export function quantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))] ?? 0;
}

export const median = (values: readonly number[]): number => quantile(values, 0.5);
