/**
 * The word of the list that was most likely meant, if one is near: at most a third of its letters, and at least one,
 * may differ (optimal string alignment distance: two swapped letters are one slip; leven 4.1.0 counts two, so it is own).
 */
export function nearest(word: string, among: readonly string[]): string | undefined {
  const ranked = among
    .map((candidate) => ({ candidate, away: distance(word.toLowerCase(), candidate) }))
    .filter(({ candidate, away }) => away <= Math.max(1, Math.floor(candidate.length / 3)))
    .sort((a, b) => a.away - b.away);
  return ranked[0]?.candidate;
}

/** “Did you mean …?”, or nothing. */
export function suggestion(word: string, among: readonly string[]): string {
  const near = nearest(word, among);
  return near === undefined ? '' : ` Did you mean “${near}”?`;
}

/** Letters to insert, leave out, replace or swap with their neighbor to get from one word to the other. */
function distance(a: string, b: string): number {
  const rows = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      const steps = [rows[i - 1]![j]! + 1, row[j - 1]! + 1, rows[i - 1]![j - 1]! + (same ? 0 : 1)];
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) steps.push(rows[i - 2]![j - 2]! + 1);
      row.push(Math.min(...steps));
    }
    rows.push(row);
  }
  return rows[a.length]![b.length]!;
}
