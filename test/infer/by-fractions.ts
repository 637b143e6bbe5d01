import type { Network } from '../../src/infer/index.js';

/**
 * Every state of every fault, in whole numbers: nothing is rounded. Shares no code with the product. All
 * probabilities must be whole thousandths; a state's weight is then a whole number over one common power of 1000.
 */
const unit = 1000n;
const whole = (p: number): bigint => {
  const n = Math.round(p * 1000);
  if (Math.abs(n / 1000 - p) > 1e-12) throw new Error(`${p} is no whole number of thousandths`);
  return BigInt(n);
};

export interface Enumerated {
  /** probability of everything seen and known */
  readonly evidence: number;
  /** by fault id */
  readonly posterior: Record<string, number>;
  /** by finding: that no present fault reaches what was seen */
  readonly unexplained: number[];
  /** by finding: for a plain reading beyond the normal outcome, that the fault is present and reaches it */
  readonly reachedBy: Record<string, number>[];
  /** joint posterior of every state, by the ids of the faults present, sorted and joined with spaces */
  readonly joint: Map<string, number>;
}

/** @param details whether to work out `unexplained`, `reachedBy` and `joint` too, which takes longer */
export function byFractions(network: Network, details = true): Enumerated {
  const sums = new Sums(network, details);
  sums.decide(0);
  return sums.done();
}

interface SeenSign {
  readonly weights: readonly bigint[];
  /** last outcome of the run of equal weights before the outcome's own; -1 in the first run */
  readonly below: readonly number[];
  readonly leak: readonly bigint[];
  /** cumulated, by fault */
  readonly causes: readonly (readonly bigint[] | undefined)[];
  /** the outcome of a plain reading, or 0 */
  readonly plain: number;
}

function seenSign(network: Network, reading: Network['seen'][number]): SeenSign {
  const sign = network.signs.find((s) => s.id === reading.sign)!;
  const weights =
    'weights' in reading
      ? reading.weights.map(whole)
      : sign.outcomes.map((o) => (o === reading.outcome ? unit : 0n));
  let below = -1;
  const belows = weights.map((w, k) => {
    if (k > 0 && w !== weights[k - 1]) below = k - 1;
    return below;
  });
  const plain = 'outcome' in reading ? sign.outcomes.indexOf(reading.outcome) : 0;
  const causes = network.faults.map((f) => {
    const cause = sign.causes.find((c) => 'fault' in c && c.fault === f.id);
    return cause && 'fault' in cause ? cumulated(cause.outcome) : undefined;
  });
  return { weights, below: belows, leak: sign.leak.map(whole), causes, plain };
}

function cumulated(masses: readonly number[]): bigint[] {
  let sum = 0n;
  return masses.map((m) => (sum += whole(m)));
}

const product = (xs: readonly bigint[]): bigint => xs.reduce((a, b) => a * b, 1n);

/** Decides fault after fault, causes before effects, and adds up what every full state weighs. */
class Sums {
  private total = 0n;
  private readonly order: number[] = [];
  private readonly state: boolean[];
  private readonly signs: readonly SeenSign[];
  /** by sign and outcome: leak and all decided faults stay within it */
  private within: bigint[][];
  private prior = 1n;
  private readonly present: bigint[];
  private readonly unexplained: bigint[];
  private readonly reached: bigint[][];
  private readonly states = new Map<string, bigint>();

  constructor(
    private readonly network: Network,
    private readonly details: boolean,
  ) {
    const { faults, links } = network;
    while (this.order.length < faults.length) {
      const open = (id: string): boolean => !this.order.some((o) => faults[o]!.id === id);
      this.order.push(
        faults.findIndex((f) => open(f.id) && links.every((l) => l.to !== f.id || !open(l.from))),
      );
    }
    this.signs = network.seen.map((reading) => seenSign(network, reading));
    this.within = this.signs.map((s) => cumulatedWhole(s.leak));
    this.state = faults.map(() => false);
    this.present = faults.map(() => 0n);
    this.unexplained = this.signs.map(() => 0n);
    this.reached = this.signs.map(() => faults.map(() => 0n));
  }

  decide(depth: number): void {
    if (depth === this.order.length) {
      this.add();
      return;
    }
    const fault = this.order[depth]!;
    const [prior, within] = [this.prior, this.within];
    for (const present of [false, true]) {
      this.state[fault] = present;
      this.prior = prior * this.priorOf(fault, present);
      if (this.prior === 0n) continue;
      this.within = within.map((row, s) => {
        const cause = this.signs[s]!.causes[fault];
        return cause ? row.map((w, k) => w * (present ? cause[k]! : unit)) : row;
      });
      this.decide(depth + 1);
    }
    this.prior = prior;
    this.within = within;
  }

  private priorOf(fault: number, present: boolean): bigint {
    const { faults, links, known } = this.network;
    const { id, prior } = faults[fault]!;
    if (known.some((k) => k.fault === id && k.present !== present)) return 0n;
    const into = links.filter((l) => l.to === id);
    const on = (from: string): boolean => this.state[faults.findIndex((f) => f.id === from)]!;
    const absent = into.reduce((a, l) => a * (on(l.from) ? unit - whole(l.p) : unit), unit - whole(prior));
    return present ? unit ** BigInt(1 + into.length) - absent : absent;
  }

  private add(): void {
    const likelihoods = this.signs.map((sign, s) =>
      sign.weights.reduce(
        (sum, w, k) => sum + w * (this.within[s]![k]! - (this.within[s]![k - 1] ?? 0n)),
        0n,
      ),
    );
    const weight = this.prior * product(likelihoods);
    this.total += weight;
    for (const [f, on] of this.state.entries()) if (on) this.present[f]! += weight;
    if (!this.details) return;
    this.states.set(this.ids().join(' '), weight);
    for (const [s, sign] of this.signs.entries()) {
      const others = this.prior * product(likelihoods.with(s, 1n));
      this.unexplained[s]! += others * this.leakOnly(s);
      if (sign.plain > 0 && others > 0n) this.addReached(s, others);
    }
  }

  private ids(): string[] {
    return this.network.faults.flatMap((f, i) => (this.state[i] ? [f.id] : [])).sort();
  }

  /** The leak stands in a higher run of equal weights than any present cause. */
  private leakOnly(s: number): bigint {
    const { weights, below, leak, causes } = this.signs[s]!;
    return weights.reduce((sum, w, k) => {
      if (below[k]! < 0) return sum;
      const others = product(causes.map((c, f) => (c ? (this.state[f] ? c[below[k]!]! : unit) : 1n)));
      return sum + w * leak[k]! * others;
    }, 0n);
  }

  /** The fault reaches just the outcome seen, leak and other faults stay within it. */
  private addReached(s: number, others: bigint): void {
    const { plain, causes } = this.signs[s]!;
    for (const [f, on] of this.state.entries()) {
      const own = causes[f];
      if (!on || !own || own[plain] === 0n) continue;
      const rest = this.within[s]![plain]! / own[plain]!;
      this.reached[s]![f]! += others * unit * rest * (own[plain]! - own[plain - 1]!);
    }
  }

  done(): Enumerated {
    const { faults, links } = this.network;
    const perSign = this.signs.map((s) => 2 + s.causes.filter((c) => c).length);
    const scale = unit ** BigInt(faults.length + links.length + perSign.reduce((a, b) => a + b, 0));
    const share = (x: bigint): number => fraction(x, this.total);
    return {
      evidence: fraction(this.total, scale),
      posterior: Object.fromEntries(faults.map((f, i) => [f.id, share(this.present[i]!)])),
      unexplained: this.unexplained.map(share),
      reachedBy: this.reached.map((by, s) =>
        Object.fromEntries(
          faults.flatMap((f, i) => (this.signs[s]!.causes[i] ? [[f.id, share(by[i]!)]] : [])),
        ),
      ),
      joint: new Map([...this.states].map(([ids, x]) => [ids, share(x)])),
    };
  }
}

function cumulatedWhole(masses: readonly bigint[]): bigint[] {
  let sum = 0n;
  return masses.map((m) => (sum += m));
}

/** a / b to the nearest double but for a rounding or two, however large they are. */
export function fraction(a: bigint, b: bigint): number {
  if (a === 0n) return 0;
  const digits = 25 + Math.max(0, b.toString().length - a.toString().length);
  const quotient = (a * 10n ** BigInt(digits)) / b;
  return Number(`${quotient}e-${digits}`);
}
