import { roundStep } from '../../parts/round-step.js';

/** Amounts along a line of pixels, with round amounts to mark it. */
export interface Scale {
  readonly x: (amount: number) => number;
  readonly ticks: readonly number[];
}

export function scaleTo(most: number, from: number, to: number): Scale {
  // so that about one round amount stands in every 90 pixels
  const step = roundStep(Math.max(most, 1) / Math.max(2, Math.floor((to - from) / 90)));
  const top = Math.max(step, Math.ceil(most / step) * step);
  const ticks = Array.from({ length: Math.round(top / step) + 1 }, (_, i) => i * step);
  return { x: (amount) => from + ((to - from) * Math.min(amount, top)) / top, ticks };
}
