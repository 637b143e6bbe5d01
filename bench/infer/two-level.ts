import { faultCauses, type Network } from '../../src/infer/index.js';

/** A network of faults and two-outcome signs without links, as plain arrays. */
export interface TwoLevel {
  readonly prior: readonly number[];
  /** by abnormal finding: leak and, by fault, the chance that it shows */
  readonly positive: readonly Sign[];
  readonly negative: readonly Sign[];
}
interface Sign {
  readonly leak: number;
  readonly q: readonly number[];
}

export function twoLevel(network: Network): TwoLevel {
  const at = new Map(network.faults.map((f, i) => [f.id, i]));
  const sides: { positive: Sign[]; negative: Sign[] } = { positive: [], negative: [] };
  for (const reading of network.seen) {
    const sign = network.signs.find((s) => s.id === reading.sign)!;
    if (sign.outcomes.length !== 2 || network.links.length > 0 || !('outcome' in reading))
      throw new Error('not two-level');
    const q = network.faults.map(() => 0);
    for (const c of faultCauses(sign)) q[at.get(c.fault)!] = c.outcome[1]!;
    sides[reading.outcome === 'o0' ? 'negative' : 'positive'].push({ leak: sign.leak[1]!, q });
  }
  return { prior: network.faults.map((f) => f.prior), ...sides };
}

/**
 * Probability of the evidence by the alternating sum over subsets of the abnormal findings (the Quickscore form,
 * Proc. 5th Conf. Uncertainty in Artificial Intelligence, 1989), in doubles.
 */
export function alternatingSum({ prior, positive, negative }: TwoLevel): number {
  const absent = prior.map((_, i) => negative.reduce((p, s) => p * (1 - s.q[i]!), 1));
  const leaks = negative.reduce((p, s) => p * (1 - s.leak), 1);
  let sum = 0;
  const take = (n: number, sign: number, leak: number, factors: readonly number[]): void => {
    if (n === positive.length) {
      sum += sign * leak * factors.reduce((p, f, i) => p * (prior[i]! * f + 1 - prior[i]!), 1);
      return;
    }
    const { leak: own, q } = positive[n]!;
    take(n + 1, sign, leak, factors);
    take(
      n + 1,
      -sign,
      leak * (1 - own),
      factors.map((f, i) => f * (1 - q[i]!)),
    );
  };
  take(0, 1, leaks, absent);
  return sum;
}

/** The same sum in whole thousandths, where nothing is rounded; for reference. */
export function alternatingSumExactly({ prior, positive, negative }: TwoLevel): number {
  const unit = 1000n;
  const whole = (p: number): bigint => BigInt(Math.round(p * 1000));
  const used = (s: Sign): number[] => s.q.flatMap((q, i) => (q > 0 ? [i] : []));
  let sum = 0n;
  const shrink = (factors: readonly bigint[], s: Sign, taken: boolean): bigint[] => {
    const next = [...factors];
    for (const i of used(s)) next[i]! *= taken ? unit - whole(s.q[i]!) : unit;
    return next;
  };
  const depth = prior.map((_, i) => [...positive, ...negative].filter((s) => s.q[i]! > 0).length);
  const take = (n: number, sign: bigint, leak: bigint, factors: readonly bigint[]): void => {
    if (n === positive.length) {
      const terms = factors.map(
        (f, i) => whole(prior[i]!) * f + (unit - whole(prior[i]!)) * unit ** BigInt(depth[i]!),
      );
      sum += sign * terms.reduce((p, t) => p * t, leak);
      return;
    }
    const s = positive[n]!;
    take(n + 1, sign, leak * unit, shrink(factors, s, false));
    take(n + 1, -sign, leak * (unit - whole(s.leak)), shrink(factors, s, true));
  };
  const start = negative.reduce<readonly bigint[]>(
    (f, s) => shrink(f, s, true),
    prior.map(() => 1n),
  );
  take(
    0,
    1n,
    negative.reduce((p, s) => p * (unit - whole(s.leak)), 1n),
    start,
  );
  const scale =
    unit ** BigInt(positive.length + negative.length + prior.length + depth.reduce((a, b) => a + b, 0));
  return Number(`${(sum * 10n ** 60n * 10n ** 60n) / scale}e-120`);
}

/** Probability of the evidence by counting every state, in doubles. */
export function everyState({ prior, positive, negative }: TwoLevel): number {
  let sum = 0;
  const take = (i: number, p: number, up: readonly number[]): void => {
    if (i === prior.length) {
      sum += up.reduce((product, u) => product * (1 - u), p);
      return;
    }
    take(i + 1, p * (1 - prior[i]!), up);
    const clear = negative.reduce((product, s) => product * (1 - s.q[i]!), 1);
    take(
      i + 1,
      p * prior[i]! * clear,
      up.map((u, n) => u * (1 - positive[n]!.q[i]!)),
    );
  };
  take(
    0,
    negative.reduce((product, s) => product * (1 - s.leak), 1),
    positive.map((s) => 1 - s.leak),
  );
  return sum;
}
