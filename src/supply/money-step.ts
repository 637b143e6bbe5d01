import type { CheckedBasket } from './basket-problem.js';

/** Ten-thousandths: finer prices are not rounded, they only make the step nought. */
const scale = 10_000;

/**
 * The largest sum that every total is a multiple of, or 0 where there is none above a ten-thousandth.
 * @example prices 2.50 and 3.00, shipping 4.00 → 0.5
 */
export function moneyStep({ offers, suppliers, delayPerDay }: CheckedBasket): number {
  const sums = [
    ...offers.flatMap(({ price, breaks }) => [price, ...breaks.map((step) => step.price)]),
    ...suppliers.flatMap(({ shipping }) => shipping.map(({ cost }) => cost)),
    ...offers.map(({ leadDays }) => leadDays * delayPerDay),
  ];
  const scaled = sums.map((sum) => sum * scale);
  if (scaled.some((sum) => Math.abs(sum - Math.round(sum)) > 1e-6)) return 0;
  return scaled.map(Math.round).reduce(divisor, 0) / scale;
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
