/** A probability as a mechanic says it. */
export function likelihoodWords(p: number): string {
  if (p >= 0.95) return 'almost certain';
  if (p >= 0.8) return 'very likely';
  if (p >= 0.5) return 'likely';
  if (p >= 0.2) return 'possible';
  if (p >= 0.05) return 'not likely';
  return 'hardly there';
}
