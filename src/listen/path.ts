/** A positive quantity over time between knots, held constant beyond its ends. */
export interface Path {
  readonly t: Float64Array;
  readonly hz: Float64Array;
}

/** The value at a moment, linear between knots. Reading in order of time costs no search. */
export function readerOf({ t, hz }: Path): (at: number) => number {
  let i = 0;
  return (at) => {
    while (i > 0 && t[i]! > at) i -= 1;
    while (i < t.length - 2 && t[i + 1]! <= at) i += 1;
    if (t.length === 1 || at <= t[i]!) return hz[i]!;
    const share = Math.min(1, (at - t[i]!) / (t[i + 1]! - t[i]!));
    return hz[i]! + (hz[i + 1]! - hz[i]!) * share;
  };
}
