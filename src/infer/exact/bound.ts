import { readWorth } from './cluster-circuit.js';
import { isLess, ratio, type Scaled } from './evaluate.js';
import type { Model } from './model.js';
import { type Built, build, type Pass, pass, refuseImpossible } from './reasoner.js';
import {
  betterTilt,
  type Forced,
  leastTilt,
  lowerWeights,
  type Relaxed,
  relax,
  upperWeights,
} from './relax.js';
import { type Weights, weightsOf } from './weights.js';

export interface BoundLimits {
  /** entries of all tables of the relaxed network */
  readonly maxCells: number;
  /** branches in which faults are taken as present or absent */
  readonly branches: number;
}

/** Everything lies between `low` and `high`, but for rounding, which `low` and `high` make room for. */
export interface Bounds {
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly evidenceLow: Scaled;
  readonly evidenceHigh: Scaled;
  readonly cuts: number;
  readonly branches: number;
  readonly width: number;
  readonly cells: number;
}

/**
 * Bounds of every fault's probability when an exact answer would take too much.
 *
 * Method: causes are cut (see `relax`), which gives a sum below and a sum above the true probability of the
 * evidence with each state of each fault. The branch with the widest gap is then split on a fault whose cut causes
 * matter most: taken as present or absent, they are exact. The bounds add up over the branches; they close in as
 * branches are added, and meet when every fault with a cut cause is taken.
 */
export function boundsFor(model: Model, limits: BoundLimits): Bounds {
  const search = new Search(model, limits);
  const branches = [search.root()];
  while (branches.length < limits.branches) {
    const widest = branches.reduce((n, b, i) => (gapOf(b) > gapOf(branches[n]!) ? i : n), 0);
    const halves = search.split(branches[widest]!);
    if (halves.length === 0) break;
    branches.splice(widest, 1, ...halves);
  }
  return search.sum(branches);
}

interface Branch {
  readonly forced: Forced;
  readonly tilt: Float64Array;
  readonly low: Side;
  readonly high: Side;
}

/** One bound, as multiples of the search's unit. */
interface Side {
  readonly whole: number;
  /** probability of each fault within it */
  readonly posterior: Float64Array;
}

const gapOf = (b: Branch): number => b.high.whole - b.low.whole;
/** Sums of products of some thousand roundings each. */
const room = 1e-11;
/** Smaller parts of the search's unit lose digits. */
const least = 1e-280;

class Search {
  private readonly relaxed: Relaxed;
  private readonly built: Built;
  private readonly weights: Weights;
  private unit: Scaled | undefined;

  constructor(
    private readonly model: Model,
    limits: BoundLimits,
  ) {
    this.relaxed = relax(model, limits.maxCells);
    this.built = build(this.relaxed.layout);
    this.weights = weightsOf(model);
  }

  root(): Branch {
    const start = Math.max(0.3, leastTilt(this.relaxed));
    return this.branch(new Map(), new Float64Array(this.model.gatherings.length).fill(start), 12);
  }

  /** Two branches of one, or none when it is exact already. */
  split(branch: Branch): Branch[] {
    const fault = this.mostOpen(branch);
    if (fault < 0 || gapOf(branch) <= room * branch.high.whole) return [];
    return [true, false].map((state) =>
      this.branch(new Map(branch.forced).set(fault, state), branch.tilt, 3),
    );
  }

  private branch(forced: Forced, start: Float64Array, rounds: number): Branch {
    const { tilt, run } = this.lowestFromAbove(forced, start, rounds);
    if (run.evidence.m > 0) this.unit ??= run.evidence;
    const below = pass(this.built, lowerWeights(this.relaxed, this.weights, forced));
    const [low, high] = [this.side(below), this.side(run)];
    return {
      forced,
      tilt,
      // what is too small for a double is rounded outward
      low: low.whole < least ? { ...low, whole: 0 } : low,
      high: run.evidence.m > 0 && high.whole < least ? { ...high, whole: least } : high,
    };
  }

  private lowestFromAbove(
    forced: Forced,
    start: Float64Array,
    rounds: number,
  ): { tilt: Float64Array; run: Pass } {
    const worthShares = (g: number): Float64Array => this.worthShares(g);
    let best: { tilt: Float64Array; run: Pass } | undefined;
    let tilt = start;
    for (let round = 0; round < rounds; round += 1) {
      const used = upperWeights(this.relaxed, this.weights, forced, tilt);
      const run = pass(this.built, used);
      if (!best || isLess(run.evidence, best.run.evidence)) best = { tilt, run };
      if (run.evidence.m === 0) break;
      const { posterior } = run;
      tilt = betterTilt(this.relaxed, this.weights, used, forced, { tilt, posterior, worthShares });
    }
    return best!;
  }

  private side({ evidence, posterior }: Pass): Side {
    return { whole: this.unit === undefined ? 0 : ratio(evidence, this.unit), posterior };
  }

  private worthShares(gathering: number): Float64Array {
    const circuit = this.built.circuits.find((m) => m.cluster.gatherings.includes(gathering))!;
    return readWorth(circuit, this.model, gathering);
  }

  /** The fault whose state, while open, leaves the most between the two bounds. */
  private mostOpen({ forced, tilt, high }: Branch): number {
    const open = new Map<number, number>();
    const upper = upperWeights(this.relaxed, this.weights, forced, tilt);
    const lower = lowerWeights(this.relaxed, this.weights, forced);
    for (const { fault } of this.relaxed.cuts) {
      if (forced.has(fault)) continue;
      const p = high.posterior[fault]!;
      const slack = Math.log(upper.present[fault]! / Math.max(lower.present[fault]!, 1e-300));
      open.set(fault, (p * (1 - p) + 1e-9) * slack);
    }
    return [...open].reduce((a, b) => (b[1] > a[1] ? b : a), [-1, Number.NEGATIVE_INFINITY])[0];
  }

  sum(branches: readonly Branch[]): Bounds {
    if (this.unit === undefined) refuseImpossible();
    const faults = this.model.faults;
    const all = { low: 0, high: 0 };
    const with_ = { low: new Float64Array(faults), high: new Float64Array(faults) };
    const without = { low: new Float64Array(faults), high: new Float64Array(faults) };
    for (const branch of branches) {
      for (const side of ['low', 'high'] as const) {
        const { whole, posterior } = branch[side];
        if (whole === 0) continue;
        all[side] += whole;
        for (let f = 0; f < faults; f += 1) {
          with_[side][f]! += whole * posterior[f]!;
          without[side][f]! += whole * (1 - posterior[f]!);
        }
      }
    }
    const { unit } = this;
    // a state that cannot be, from above, settles the other one
    const low = with_.low.map((w, f) => (without.high[f] === 0 ? 1 : w / (w + without.high[f]!)));
    const high = with_.high.map((w, f) => (w === 0 ? 0 : w / (w + without.low[f]!)));
    return {
      low: low.map((p) => Math.max(0, p - room)),
      high: high.map((p) => Math.min(1, p + room)),
      evidenceLow: { m: unit.m * all.low * (1 - room), e: unit.e },
      evidenceHigh: { m: unit.m * all.high * (1 + room), e: unit.e },
      cuts: this.relaxed.cuts.length,
      branches: branches.length,
      width: this.built.width,
      cells: this.built.cells,
    };
  }
}
