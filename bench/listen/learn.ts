import type { Signs } from '../../src/listen/doubt.js';

/** Ridge on the weights: the collection is small, and the signs go together. */
const ridge = 0.02;
const rounds = 4000;
const step = 0.3;
export interface Learned {
  readonly weights: readonly number[];
  readonly bias: number;
}

export interface Example {
  readonly signs: Signs;
  readonly engine: boolean;
  /** how much it counts */
  readonly counts: number;
}

/** Logistic regression by plain descent on signs of unit spread; engines and the rest count as much as each other. */
export function learned(examples: readonly Example[]): Learned {
  const width = examples[0]!.signs.length;
  const columns = Array.from({ length: width }, (_, n) => examples.map(({ signs }) => signs[n]!));
  const mean = columns.map((column) => column.reduce((sum, x) => sum + x, 0) / column.length);
  const spread = columns.map(
    (column, n) => Math.sqrt(column.reduce((sum, x) => sum + (x - mean[n]!) ** 2, 0) / column.length) || 1,
  );
  const total = (engine: boolean) =>
    examples.reduce((sum, each) => sum + (each.engine === engine ? each.counts : 0), 0);
  const of = { engine: total(true), rest: total(false) };
  const scaled = examples.map(({ signs, engine, counts }) => ({
    x: signs.map((sign, n) => (sign - mean[n]!) / spread[n]!),
    y: engine ? 1 : 0,
    w: counts / (2 * (engine ? of.engine : of.rest)),
  }));
  const weights = new Array<number>(width).fill(0);
  let bias = 0;
  for (let round = 0; round < rounds; round += 1) {
    const slope = weights.map((weight) => ridge * weight);
    let lift = 0;
    for (const { x, y, w } of scaled) {
      const odds = x.reduce((sum, value, n) => sum + weights[n]! * value, bias);
      const wrong = w * (1 / (1 + Math.exp(-odds)) - y);
      lift += wrong;
      for (let n = 0; n < width; n += 1) slope[n]! += wrong * x[n]!;
    }
    bias -= step * lift;
    for (let n = 0; n < width; n += 1) weights[n]! -= step * slope[n]!;
  }
  const plain = weights.map((weight, n) => weight / spread[n]!);
  const shift = bias - plain.reduce((sum, weight, n) => sum + weight * mean[n]!, 0);
  return { weights: plain, bias: shift };
}
