import { withinSentence } from '../../phrase/index.js';

/** A probability as a mechanic says it. */
export function likelihoodWords(p: number): string {
  if (p >= 0.95) return 'almost certain';
  if (p >= 0.8) return 'very likely';
  if (p >= 0.5) return 'likely';
  if (p >= 0.2) return 'possible';
  if (p >= 0.05) return 'not likely';
  return 'hardly there';
}

/** Names of faults have commas of their own. */
export function namesOf(faults: readonly { readonly name: string }[], last: 'and' | 'or' = 'and'): string {
  const names = faults.map((f) => withinSentence(f.name));
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join('; ')}; ${last} ${names.at(-1)}`;
}
