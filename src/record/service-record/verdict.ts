import { decisionOf, type Limit, type ReadingGroup } from '../../job/index.js';
import type { Sign, Verdict } from './section.js';

/**
 * Whether a reading, or the mean of its repeats, keeps its limit as far as its instrument can tell, as a sign and a
 * word. The decision is the gauge room's; here it only gets its words.
 * Special cases: no limit gives no verdict; a reading without a known instrument is compared as read (the table
 * says so beside the instrument).
 */
export function judge(group: ReadingGroup, limit: Limit | undefined): Verdict | undefined {
  const decision = decisionOf(group, limit);
  return (
    decision && { sign: decision.verdict, word: verdictWord(decision.verdict, group.quantity.si, limit) }
  );
}

export function verdictWord(
  sign: Sign,
  si: number,
  limit: { readonly max?: { readonly si: number } | undefined } | undefined,
): string {
  if (sign === 'pass') return 'within';
  if (sign === 'cannot-decide') return 'too close to call';
  return limit?.max && si > limit.max.si ? 'over the limit' : 'under the limit';
}

const severity: Readonly<Record<Sign, number>> = { pass: 0, 'cannot-decide': 1, fail: 2 };

/** Of several verdicts the one that weighs most. */
export function worst(verdicts: readonly (Verdict | undefined)[]): Verdict | undefined {
  const given = verdicts.filter((verdict) => verdict !== undefined);
  return given.sort((a, b) => severity[b.sign] - severity[a.sign])[0];
}
