/** A stretch of numbers along a stretch of the picture, with round numbers to mark it. */
export interface Axis {
  readonly at: (value: number) => number;
  readonly ticks: readonly number[];
}

/** About one tick for each `apart` units; the ends are round numbers outside `low` and `high`. */
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

/** 1, 2 or 5 times a power of ten, the smallest that is not below `rough`. */
export function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(rough, 1e-12)));
  return power * ([1, 2, 5].find((n) => n * power >= rough * (1 - 1e-9)) ?? 10);
}
