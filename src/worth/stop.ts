/** Why the stop point is where it is. */
export type StopRule =
  /** going on past it costs more on average than it brings */
  | 'most-left'
  /** going on would still pay, but the machine would cost more than it is worth */
  | 'value'
  /** the owner’s limit comes first */
  | 'limit'
  /** no amount leaves anything on average: not worth starting */
  | 'not-worth-starting'
  /** no value is known: four machines in five are made right below it */
  | 'four-in-five';

export interface Stop {
  /** "call above this": counted from now, what is spent already left out */
  readonly amount: number;
  readonly rule: StopRule;
  /** chance that the machine is made right without reaching it */
  readonly chanceWithin: number;
  /** with a value: what is left on average when work is stopped there, over stopping now */
  readonly leftOnAverage?: number;
}

/** A machine’s cost, whether it ends as scrap, cheapest first. */
export interface Ending {
  readonly cost: number;
  readonly scrap: boolean;
}

/** A lower stop is taken for one that leaves this part of the value more: the top of the curve is flat. */
const flat = 0.005;

/**
 * The amount to write down before starting: at it the owner is called, whatever has been found.
 *
 * Rule. With a stop at X, a machine that is made right for C ≤ X leaves its value less C; one that would take more
 * has cost X for nothing; scrap has cost what it took to find it, or X. The best stop is the least amount that comes
 * within half a percent of the value of the most that any X leaves on average. What is written down is never above the
 * value, nor above the owner’s limit. When no X leaves more than that half percent, it is 0. Without a value: the
 * owner’s limit, else the cost that four in five of the machines that can be made right stay below.
 *
 * Validity: when nothing is learned on the way but that it is not done yet, every way of stopping is some X, and this
 * is the best of them. A person who stops earlier because of what is found does better.
 */
export function stopPoint(
  endings: readonly Ending[],
  value: number | undefined,
  limit: number | undefined,
): Stop | undefined {
  const sorted = [...endings].sort((a, b) => a.cost - b.cost);
  const within = (x: number): number => sorted.filter((e) => !e.scrap && e.cost <= x).length / sorted.length;
  if (value === undefined) return withoutValue(sorted, limit, within);
  const curve = leftByStop(sorted, value);
  const most = Math.max(...curve.map((c) => c.left));
  if (most <= flat * value)
    return { amount: 0, rule: 'not-worth-starting', chanceWithin: within(0), leftOnAverage: 0 };
  const best = curve.find((c) => c.left >= most - flat * value)!;
  const amount = Math.min(best.stop, value, limit ?? value);
  const left = curve.findLast((c) => c.stop <= amount)?.left ?? 0;
  return {
    amount,
    rule: ruleAt(amount, best.stop, value),
    chanceWithin: within(amount),
    leftOnAverage: left,
  };
}

function ruleAt(amount: number, best: number, value: number): StopRule {
  if (amount === best) return 'most-left';
  return amount === value ? 'value' : 'limit';
}

function withoutValue(
  sorted: readonly Ending[],
  limit: number | undefined,
  within: (x: number) => number,
): Stop | undefined {
  if (limit !== undefined) return { amount: limit, rule: 'limit', chanceWithin: within(limit) };
  const right = sorted.filter((e) => !e.scrap);
  const fourInFive = right[Math.ceil(0.8 * right.length) - 1];
  if (!fourInFive) return undefined;
  return { amount: fourInFive.cost, rule: 'four-in-five', chanceWithin: within(fourInFive.cost) };
}

/** What is left on average for each stop that makes a difference. */
function leftByStop(sorted: readonly Ending[], value: number): { stop: number; left: number }[] {
  const n = sorted.length;
  let won = 0;
  let paid = 0;
  const curve: { stop: number; left: number }[] = [];
  for (const [i, { cost, scrap }] of sorted.entries()) {
    if (!scrap) won += value;
    paid += cost;
    if (cost === sorted[i + 1]?.cost) continue;
    curve.push({ stop: cost, left: (won - paid - cost * (n - 1 - i)) / n });
  }
  return curve;
}
