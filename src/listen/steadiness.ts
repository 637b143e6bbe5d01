import type { Cycle } from './engine-kind.js';
import { bestEvidence } from './evidence.js';
import type { Frame } from './frames.js';
import { readerOf } from './path.js';
import { median, quantile } from './quantile.js';
import type { Stretch } from './stretches.js';

/** Signs by which an engine differs from a voice or a tune: it goes on, and it does not jump. */
export interface Steadiness {
  /** share of the frames whose evidence is not far below that of the better ones */
  readonly ongoing: number;
  /** median change of the rate of change of speed, in logarithms a step */
  readonly roughness: number;
  /** evidence for the speed found at each frame */
  readonly evidence: readonly number[];
}

export function steadinessOf(
  bent: readonly (readonly Frame[])[],
  stretches: readonly Stretch[],
  cycle: Cycle,
): Steadiness {
  const evidence = bent[0]!.map(({ t }, n) => {
    const stretch = stretches.find(({ start, end }) => t >= start && t <= end);
    if (!stretch) return 0;
    const hz = readerOf(stretch.path)(t) / cycle.cylinders;
    return bestEvidence(bent, n, hz, cycle);
  });
  const good = 0.2 * quantile(evidence, 0.85);
  return {
    ongoing: evidence.filter((e) => e > good).length / evidence.length,
    roughness: median(stretches.flatMap(({ path }) => bends(path.hz))),
    evidence,
  };
}

function bends(hz: Float64Array): number[] {
  const found: number[] = [];
  for (let i = 1; i + 1 < hz.length; i += 1)
    found.push(Math.abs(Math.log((hz[i + 1]! * hz[i - 1]!) / hz[i]! ** 2)));
  return found;
}
