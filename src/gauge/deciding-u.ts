import type { Verdict } from './decide.js';
import { GaugeError, requirePositive } from './error.js';

/**
 * The largest standard uncertainty, up to the present one, at which a verdict other than "cannot decide" is reached;
 * 0 when even a tool ten thousand times finer would not do.
 *
 * Method: bisection on the logarithm; for every rule of this room the chance of deciding falls as u grows, so the
 * verdicts change once. Error: 1e-9 relative.
 * Special case: a verdict that is decided already answers with the present u.
 * Example: `decidingU((u) => decide({ value: 9, u, limit: { max: 10 } }).verdict, 1)` → 0.60796.
 */
export function decidingU(verdictAt: (u: number) => Verdict, u: number): number {
  requirePositive(u, 'u');
  const decides = (at: number) => verdictAt(at) !== 'cannot-decide';
  if (decides(u)) return u;
  let [low, high] = [u / 1e4, u];
  if (!decides(low)) return 0;
  for (let step = 0; high / low - 1 > 1e-9; step++) {
    if (step > 200) throw new GaugeError('The search for a deciding uncertainty did not end.', 'u', u);
    const middle = Math.sqrt(low * high);
    if (decides(middle)) low = middle;
    else high = middle;
  }
  return low;
}
