/** A probability as a mechanic says it. */
export function likelihoodWords(p: number): string {
  if (p >= 0.95) return 'almost certain';
  if (p >= 0.8) return 'very likely';
  if (p >= 0.5) return 'likely';
  if (p >= 0.2) return 'possible';
  if (p >= 0.05) return 'not likely';
  return 'hardly there';
}

/** "93 %", and never 0 or 100 for what is not certain. */
export function percent(p: number): string {
  if (p <= 0) return '0 %';
  if (p >= 1) return '100 %';
  if (p < 0.01) return 'under 1 %';
  return p > 0.99 ? 'over 99 %' : `${Math.round(100 * p)} %`;
}

const numbers = ['No', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten'];
export const countWord = (n: number): string => numbers[n] ?? String(n);

export const lowerFirst = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

/** "a, b and c" */
export function listed(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
