/** Amounts along a line of pixels, with round amounts to mark it. */
export interface Scale {
  readonly x: (amount: number) => number;
  readonly ticks: readonly number[];
}

export function scaleTo(most: number, from: number, to: number): Scale {
  const step = roundStep(most, Math.max(2, Math.floor((to - from) / 90)));
  const top = Math.max(step, Math.ceil(most / step) * step);
  const ticks = Array.from({ length: Math.round(top / step) + 1 }, (_, i) => i * step);
  return { x: (amount) => from + ((to - from) * Math.min(amount, top)) / top, ticks };
}

/** 1, 2 or 5 times a power of ten, so that about so many steps reach the top. */
function roundStep(most: number, steps: number): number {
  const rough = Math.max(most, 1) / steps;
  const power = 10 ** Math.floor(Math.log10(rough));
  return power * ([1, 2, 5].find((n) => n * power >= rough) ?? 10);
}
