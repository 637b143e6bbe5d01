import { type From, limitAnswer, type Shop } from '../../job/index.js';
import type { Sign, Verdict } from './section.js';

/**
 * Whether a reading keeps its limit as far as its instrument can tell, as a sign and a word. The decision is the
 * gauge room's; here it only gets its words.
 * Special cases: no limit gives no verdict; a reading without a known instrument is compared as read (the table
 * says so beside the instrument).
 */
export function judge(reading: From<'measurement'>, shop: Shop): Verdict | undefined {
  const { decision } = limitAnswer(reading, shop);
  return decision && { sign: decision.verdict, word: verdictWord(decision.verdict, reading) };
}

function verdictWord(sign: Sign, { value, limit }: From<'measurement'>): string {
  if (sign === 'pass') return 'within';
  if (sign === 'cannot-decide') return 'too close to call';
  return limit?.max && value.si > limit.max.si ? 'over the limit' : 'under the limit';
}

const severity: Readonly<Record<Sign, number>> = { pass: 0, 'cannot-decide': 1, fail: 2 };

/** Of several verdicts the one that weighs most. */
export function worst(verdicts: readonly (Verdict | undefined)[]): Verdict | undefined {
  const given = verdicts.filter((verdict) => verdict !== undefined);
  return given.sort((a, b) => severity[b.sign] - severity[a.sign])[0];
}
