import type { RawEntry } from './entry.js';

/**
 * One text for one line, wherever it lies: JSON without blanks, the fields of every object in the order of their names,
 * what is `undefined` left out. A database, a device and a bundle may each give the fields in another order; digests are
 * made over this.
 */
export function canonicalLine({ id, job, at, rank, spoken, by, kind, v, body }: RawEntry): string {
  return canonical({ id, job, at, rank, spoken, by, kind, v, body });
}

export function canonical(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map((each) => canonical(each ?? null)).join(',')}]`;
  const object = value as Record<string, unknown>;
  const names = Object.keys(object).filter((name) => object[name] !== undefined);
  return `{${names
    .sort()
    .map((name) => `${JSON.stringify(name)}:${canonical(object[name])}`)
    .join(',')}}`;
}
