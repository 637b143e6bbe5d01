/** A repair that may be the right one: how likely, and what trying it costs. */
export interface Attempt {
  readonly probability: number;
  readonly cost: number;
}

/**
 * What it costs on average to try repairs in this order until the machine runs.
 *
 * Method: the cost of an attempt is paid when none before it was the right one,
 * Σ cost_i · (1 − Σ of the probabilities before i) (Commun. ACM 38(3), 1995, p. 49).
 * Validity: just one fault, repairs that succeed, costs that do not depend on the order. A neglected engine has
 * several faults at once; this is the yardstick for the special case.
 * @throws RangeError for a probability outside 0 … 1, probabilities above 1 in sum, or a cost below 0
 * @example expectedCost([{ probability: 0.5, cost: 10 }, { probability: 0.5, cost: 20 }]) = 20
 */
export function expectedCost(order: readonly Attempt[]): number {
  checkAttempts(order);
  let before = 0;
  let cost = 0;
  for (const attempt of order) {
    cost += attempt.cost * (1 - before);
    before += attempt.probability;
  }
  return cost;
}

/** The order with the least expected cost under the same assumptions: probability over cost, falling. Ties keep their order. */
export function byProbabilityPerCost<T extends Attempt>(attempts: readonly T[]): T[] {
  checkAttempts(attempts);
  return [...attempts].sort((a, b) => b.probability * a.cost - a.probability * b.cost);
}

function checkAttempts(attempts: readonly Attempt[]): void {
  let sum = 0;
  for (const { probability, cost } of attempts) {
    if (!(probability >= 0 && probability <= 1))
      throw new RangeError(`probability ${probability} is not within 0 … 1`);
    if (!(cost >= 0 && Number.isFinite(cost)))
      throw new RangeError(`cost ${cost} is not a finite number from 0 up`);
    sum += probability;
  }
  if (sum > 1 + 1e-9)
    throw new RangeError(`probabilities sum to ${sum}, above 1; only one fault is allowed for here`);
}
