import { EngineError } from './error.js';

/** dy/dx at x into `out`; called many times, so it must not allocate. */
export type Slope = (x: number, y: Float64Array, out: Float64Array) => void;

export interface Tolerance {
  /** of each controlled component's size */
  readonly relative: number;
  /** in the component's own unit, one a controlled component */
  readonly absolute: readonly number[];
  readonly largestStep: number;
  /** how many components steer the step; those after them ride along (sums kept for a balance) */
  readonly controlled: number;
}

/** Dormand and Prince's pair: c, a, the fifth-order weights (also the last row of a), and fifth less fourth order. */
const c = [0, 1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1];
const a = [
  [],
  [1 / 5],
  [3 / 40, 9 / 40],
  [44 / 45, -56 / 15, 32 / 9],
  [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
  [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
  [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
];
const e = [71 / 57600, 0, -71 / 16695, 71 / 1920, -17253 / 339200, 22 / 525, -1 / 40];
const mostSteps = 200_000;
const smallestStep = 1e-9;

/**
 * An explicit Runge–Kutta solver of order 5 with an embedded fourth-order estimate that sets the step.
 *
 * Source: J. Comput. Appl. Math. 6 (1980) 19, the 5(4) pair with seven stages, the last of which is the first of the
 * next step. Error bound: each step's local error, estimated as the difference of the two orders, is held under
 * relative·|y| + absolute in the root mean square over the controlled components; the error over a run is not bounded
 * by it but falls in proportion (tested: a circle of ten turns at 1e-8 closes to 1e-6). Linear sums of the components
 * (a mass or an energy balance) are kept to rounding. Meant for smooth stretches: the caller ends a stretch where the
 * slope jumps. Throws EngineError for a slope that is not finite however small the step, and for a stretch that takes
 * over 200 000 steps.
 */
export class DormandPrince {
  private readonly k: readonly Float64Array[];
  private readonly trial: Float64Array;
  private fresh = false;
  steps = 0;
  refused = 0;

  constructor(
    private readonly slope: Slope,
    private readonly size: number,
    private readonly tolerance: Tolerance,
  ) {
    this.k = c.map(() => new Float64Array(size));
    this.trial = new Float64Array(size);
  }

  /**
   * Carries `y` from `from` to `to` in place; `each` sees every accepted point. `firstStep` is a guess; returned is the
   * step that would come next. `largestStep` may be tighter on a stretch where something brief must not be stepped over.
   */
  run(
    y: Float64Array,
    from: number,
    to: number,
    firstStep: number,
    each?: (x: number, y: Float64Array) => void,
    largestStep = this.tolerance.largestStep,
  ): number {
    let x = from;
    let h = firstStep;
    let taken = 0;
    this.fresh = false;
    while (x < to) {
      const wanted = Math.min(h, largestStep);
      const last = x + wanted * 1.0000001 >= to;
      const step = last ? to - x : wanted;
      const error = this.attempt(x, y, step);
      this.fresh = true;
      if (++taken > mostSteps || (Number.isNaN(error) && step < smallestStep))
        throw new EngineError(`the integration does not get past ${x}`, 'integration', x);
      h = nextStep(step, error, last ? wanted : step);
      if (!(error <= 1)) {
        this.refused += 1;
        continue;
      }
      y.set(this.trial);
      x = last ? to : x + step;
      this.k[0]!.set(this.k[6]!);
      this.steps += 1;
      each?.(x, y);
    }
    return h;
  }

  /** One step into `trial`; gives its error in units of the tolerance. */
  private attempt(x: number, y: Float64Array, h: number): number {
    const { k, trial, size, slope } = this;
    if (!this.fresh) slope(x, y, k[0]!);
    for (let stage = 1; stage < 7; stage += 1) {
      const row = a[stage]!;
      for (let i = 0; i < size; i += 1) {
        let sum = 0;
        for (let j = 0; j < stage; j += 1) sum += row[j]! * k[j]![i]!;
        trial[i] = y[i]! + h * sum;
      }
      slope(x + c[stage]! * h, trial, k[stage]!);
    }
    return this.error(y, h);
  }

  private error(y: Float64Array, h: number): number {
    const { relative, absolute, controlled } = this.tolerance;
    let sum = 0;
    for (let i = 0; i < controlled; i += 1) {
      let difference = 0;
      for (let j = 0; j < 7; j += 1) difference += e[j]! * this.k[j]![i]!;
      const scale = absolute[i]! + relative * Math.max(Math.abs(y[i]!), Math.abs(this.trial[i]!));
      sum += ((h * difference) / scale) ** 2;
    }
    // a trial that left the physics (a root of a negative mass) is a step much too long
    return Number.isFinite(sum) ? Math.sqrt(sum / controlled) : Number.NaN;
  }
}

/** The usual controller of order 5 with a safety of 0.9; a step cut short by the end of a stretch may not shrink it. */
function nextStep(step: number, error: number, wanted: number): number {
  if (Number.isNaN(error)) return step / 5;
  const factor = error === 0 ? 5 : Math.min(5, Math.max(0.2, 0.9 * error ** -0.2));
  return error > 1 ? step * factor : Math.max(step * factor, factor >= 1 ? wanted : 0);
}
