import { placeOf, type RawEntry, rankAfter } from '../../job/index.js';

/** By log, the greatest place of the lines that this device has seen: what it writes next stands after it. */
const seen = new Map<string, number>();

export function see(log: string, lines: readonly RawEntry[]): void {
  let greatest = seen.get(log) ?? Number.NEGATIVE_INFINITY;
  for (const line of lines) greatest = Math.max(greatest, placeOf(line));
  seen.set(log, greatest);
}

/** The rank that a line written now must carry, if any. */
export function rankHere(log: string, at: string): { readonly rank?: number } {
  const rank = rankAfter(at, seen.get(log) ?? Number.NEGATIVE_INFINITY);
  return rank === undefined ? {} : { rank };
}
