/** A positive quantity over time between knots, held constant beyond its ends. */
export interface Path {
  readonly t: Float64Array;
  readonly hz: Float64Array;
}

/** Linear between knots. `hint` is where the last answer lay: reading in order of time costs no search. */
export function readPath({ t, hz }: Path, at: number, hint = 0): { value: number; knot: number } {
  let i = Math.min(hint, t.length - 1);
  while (i > 0 && t[i]! > at) i -= 1;
  while (i < t.length - 2 && t[i + 1]! <= at) i += 1;
  if (t.length === 1 || at <= t[i]!) return { value: hz[i]!, knot: i };
  const next = i + 1;
  const share = Math.min(1, (at - t[i]!) / (t[next]! - t[i]!));
  return { value: hz[i]! + (hz[next]! - hz[i]!) * share, knot: i };
}
