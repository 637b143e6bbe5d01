import { type Cycle, firingHz } from './engine-kind.js';
import { bestEvidence } from './evidence.js';
import type { Frame } from './frames.js';
import { median } from './quantile.js';

/** A first path of the firing rate, right up to a simple factor; null where nothing periodic is heard. */
export interface CoarsePoint {
  readonly t: number;
  readonly firingHz: number | null;
}

/** Evidence for each firing rate of a grid, frame by frame. */
export interface Field {
  readonly times: readonly number[];
  readonly gridHz: Float64Array;
  readonly rows: readonly Float64Array[];
}

const gridStep = 0.012;

/** `bent` are the same frames under different slopes of speed: the best of them speaks for each rate. */
export function fieldOf(bent: readonly (readonly Frame[])[], cycle: Cycle): Field {
  const low = firingHz(cycle, cycle.lowRpm);
  const high = firingHz(cycle, cycle.highRpm);
  const gridHz = Float64Array.from(
    { length: Math.ceil(Math.log(high / low) / gridStep) + 1 },
    (_, i) => low * Math.exp(i * gridStep),
  );
  return {
    times: bent[0]!.map(({ t }) => t),
    gridHz,
    rows: bent[0]!.map((_, n) => gridHz.map((hz) => bestEvidence(bent, n, hz / cycle.cylinders, cycle))),
  };
}

type Stiffness = 'stiff' | 'loose';

const farthestSteps = 24;

/** Cost, in natural logarithms, of a change of speed from frame to frame: gentle is cheap, a jump to an octave dear. */
const changeCost: Readonly<Record<Stiffness, Float64Array>> = {
  stiff: Float64Array.from({ length: farthestSteps + 1 }, (_, steps) => 0.35 * steps),
  loose: Float64Array.from({ length: farthestSteps + 1 }, (_, steps) => 0.05 * steps + 0.012 * steps * steps),
};
const switchCost = 1.5;
/** Evidence at which a frame may as well hold no engine, as a share of what the better frames hold. */
const noneShare = 0.05;
/** Keeps one frame without evidence from breaking a path, as a share of the same. */
const forgiving: Readonly<Record<Stiffness, number>> = { stiff: 2, loose: 0.15 };

/**
 * Method: the best path over time through (firing rate, nothing) by dynamic programming; a jump farther than a quarter
 * of the speed within one frame costs the same however far.
 */
export function coarseTrack({ times, gridHz, rows }: Field, stiffness: Stiffness): readonly CoarsePoint[] {
  const typical = median(rows.map(highest));
  const none = gridHz.length;
  const path = bestPath(
    rows.map((row) => {
      // a faint frame speaks in a lower voice, yet speaks
      const scale = Math.sqrt(typical * Math.max(highest(row), 0.01 * typical)) + 1e-9;
      const penalty = (evidence: number) =>
        -Math.log((evidence / scale + forgiving[stiffness]) / (1 + forgiving[stiffness]));
      return [...row.map(penalty), penalty(noneShare * typical)];
    }),
    changeCost[stiffness],
  );
  return path.map((state, n) => ({ t: times[n]!, firingHz: state === none ? null : gridHz[state]! }));
}

export const highest = (row: Float64Array): number => row.reduce((a, b) => Math.max(a, b), 0);

/** The cheapest sequence of states; the last state of each row is “nothing”, the others lie on a line. */
function bestPath(costs: readonly (readonly number[])[], change: Float64Array): readonly number[] {
  const none = costs[0]!.length - 1;
  let cost: readonly number[] = costs[0]!;
  const backs: Int16Array[] = [];
  for (const row of costs.slice(1)) {
    const back = new Int16Array(none + 1);
    const cheapest = lowest(cost, none);
    const jump = Math.min(cost[none]! + switchCost, cost[cheapest]! + change[farthestSteps]!);
    const jumpFrom = jump === cost[none]! + switchCost ? none : cheapest;
    cost = row.map((own, s) => {
      let least = s === none ? cost[none]! : jump;
      back[s] = s === none ? none : jumpFrom;
      const from = s === none ? cheapest : Math.max(0, s - farthestSteps);
      const to = s === none ? cheapest : Math.min(none - 1, s + farthestSteps);
      for (let p = from; p <= to; p += 1) {
        const c = cost[p]! + (s === none ? switchCost : change[Math.abs(p - s)]!);
        if (c < least) {
          least = c;
          back[s] = p;
        }
      }
      return least + own;
    });
    backs.push(back);
  }
  const path = [lowest(cost, none + 1)];
  for (let n = backs.length - 1; n >= 0; n -= 1) path.push(backs[n]![path.at(-1)!]!);
  return path.reverse();
}

function lowest(cost: readonly number[], count: number): number {
  let best = 0;
  for (let i = 1; i < count; i += 1) if (cost[i]! < cost[best]!) best = i;
  return best;
}
