/** A share in percent: "12 %", "12.3 %" with one decimal. */
export const inPercent = (share: number, decimals = 0): string => `${(100 * share).toFixed(decimals)} %`;

/** A probability: "93 %"; "under 1 %" and "over 99 %" for what is not certain, 0 and 100 only for what is. */
export function percent(p: number, decimals = 0): string {
  const least = 10 ** -(2 + decimals);
  if (p > 0 && p < least) return `under ${Number((100 * least).toFixed(decimals))} %`;
  if (p < 1 && p > 1 - least) return `over ${(100 * (1 - least)).toFixed(decimals)} %`;
  return `${Number((100 * p).toFixed(decimals))} %`;
}
