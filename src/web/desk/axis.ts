import { roundStep } from '../../draw/index.js';
import type { PictureAxis } from '../../worksheet/index.js';

/** One axis of a picture laid out: where a figure stands in pixels, and which figures are written beside it. */
export interface Scale {
  readonly at: (value: number) => number;
  readonly ticks: readonly { readonly value: number; readonly text: string }[];
}

export function scaleOf(
  axis: PictureAxis,
  values: readonly number[],
  [start, end]: readonly [number, number],
  about: number,
): Scale {
  const [low, high] = extent(values, axis.logarithmic ?? false);
  const along = axis.logarithmic
    ? (v: number) => Math.log(v / low) / Math.log(high / low)
    : (v: number) => (v - low) / (high - low);
  const ticks = axis.logarithmic ? logarithmicTicks(low, high) : evenTicks(low, high, about);
  return {
    at: (v) => start + (end - start) * along(v),
    ticks: ticks.map((value) => ({ value, text: tickText(value, ticks) })),
  };
}

/** Figures that all agree still get an axis of some length. */
function extent(values: readonly number[], logarithmic: boolean): [number, number] {
  const low = Math.min(...values);
  const high = Math.max(...values);
  if (high > low) return [low, high];
  return logarithmic
    ? [low / 2, high * 2]
    : [low - (Math.abs(low) || 1) / 2, high + (Math.abs(high) || 1) / 2];
}

/** Round figures, 1, 2 or 5 of a decade apart, about so many of them. */
function evenTicks(low: number, high: number, about: number): number[] {
  const step = roundStep((high - low) / Math.max(1, about));
  const first = Math.ceil(low / step - 1e-9);
  const last = Math.floor(high / step + 1e-9);
  return Array.from({ length: last - first + 1 }, (_, i) => (first + i) * step);
}

function logarithmicTicks(low: number, high: number): number[] {
  const decades = Array.from(
    { length: Math.ceil(Math.log10(high)) - Math.floor(Math.log10(low)) + 1 },
    (_, i) => 10 ** (Math.floor(Math.log10(low)) + i),
  );
  const steps = decades.length > 3 ? [1] : [1, 2, 5];
  return decades
    .flatMap((decade) => steps.map((s) => s * decade))
    .filter((v) => v >= low * (1 - 1e-9) && v <= high * (1 + 1e-9));
}

function tickText(value: number, ticks: readonly number[]): string {
  const step = ticks.length > 1 ? Math.abs(ticks[1]! - ticks[0]!) : Math.abs(value) || 1;
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return Math.abs(value) >= 10_000 ? value.toLocaleString('en-US') : value.toFixed(Math.min(6, decimals));
}
