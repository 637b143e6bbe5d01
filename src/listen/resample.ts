/** A signal at a rate low enough for what is asked of it. */
export interface Signal {
  readonly values: Float32Array;
  readonly rate: number;
}

/** Zero crossings of the sinc on each side, counted at the lower rate; with the Hann taper −44 dB at the stop edge. */
const lobes = 6;

/**
 * Every `step`th sample after a low-pass at 0.42 of the new rate.
 *
 * Method: Hann-tapered sinc, evaluated only where a sample is kept. The signal counts as silent beyond its ends.
 */
export function decimate({ values, rate }: Signal, step: number): Signal {
  if (step === 1) return { values, rate };
  const half = lowPassHalf(step);
  const kept = new Float32Array(Math.floor(values.length / step));
  for (let n = 0; n < kept.length; n += 1) kept[n] = weighted(values, n * step, half);
  return { values: kept, rate: rate / step };
}

/** Mean square of the samples from one place to another, as far as there are any. */
export function meanSquare(values: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < Math.min(values.length, to); i += 1) sum += values[i]! ** 2;
  return sum / Math.max(1, to - from);
}

/** The filter is even: one half of it serves the samples on both sides of the center. */
function weighted(values: Float32Array, center: number, half: Float64Array): number {
  const reach = half.length - 1;
  let sum = values[center]! * half[0]!;
  if (center >= reach && center + reach < values.length) {
    for (let k = 1; k <= reach; k += 1) sum += half[k]! * (values[center - k]! + values[center + k]!);
    return sum;
  }
  for (let k = 1; k <= reach; k += 1)
    sum += half[k]! * ((values[center - k] ?? 0) + (values[center + k] ?? 0));
  return sum;
}

/** The filter from its center outward. */
function lowPassHalf(step: number): Float64Array {
  const reach = lobes * step;
  const cutoff = 0.84 / step;
  const taps = Float64Array.from({ length: reach + 1 }, (_, t) => {
    const sinc = t === 0 ? 1 : Math.sin(Math.PI * cutoff * t) / (Math.PI * cutoff * t);
    return sinc * (0.5 + 0.5 * Math.cos((Math.PI * t) / (reach + 1)));
  });
  const sum = taps.reduce((total, tap, t) => total + (t === 0 ? tap : 2 * tap), 0);
  return taps.map((tap) => tap / sum);
}
