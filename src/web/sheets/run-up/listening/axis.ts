import { roundStep } from '../../../parts/round-step.js';

/** A stretch of numbers along a stretch of pixels, with round numbers to mark it. */
export interface Axis {
  readonly at: (value: number) => number;
  readonly ticks: readonly number[];
}

/** About one tick for each `apart` pixels; the ends are round numbers outside `low` and `high`. */
export function axisOver(low: number, high: number, from: number, to: number, apart: number): Axis {
  const step = roundStep((high - low) / Math.max(1, Math.abs(to - from) / apart));
  const first = Math.floor(low / step) * step;
  const last = Math.max(first + step, Math.ceil(high / step) * step);
  const count = Math.round((last - first) / step) + 1;
  return {
    at: (value) => from + ((to - from) * (value - first)) / (last - first),
    ticks: Array.from({ length: count }, (_, i) => first + i * step),
  };
}
