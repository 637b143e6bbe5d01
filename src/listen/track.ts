import { type Cycle, rpmOfCycle } from './engine-kind.js';
import { type Path, readerOf } from './path.js';
import type { Stretch } from './stretches.js';

/** Crank speed at a moment. */
export interface TrackPoint {
  /** seconds from the start of the sound */
  readonly t: number;
  readonly rpm: number;
  /** standard uncertainty, rpm */
  readonly u: number;
  /** how clearly the engine is heard at this moment, 0 to 1 */
  readonly confidence: number;
}

export const meanRpm = (points: readonly TrackPoint[]): number =>
  points.reduce((sum, { rpm }) => sum + rpm, 0) / points.length;

/** Neighboring points share most of their sound; about one in six is news. */
const pointsPerNews = 6;

/** Standard uncertainty of the mean of some points in a row, rpm. */
export function uncertaintyOfMean(points: readonly TrackPoint[]): number {
  const square = points.reduce((sum, { u }) => sum + u ** 2, 0) / points.length;
  return Math.sqrt(square / Math.max(1, points.length / pointsPerNews));
}

const trackStepS = 0.05;

/** What the scatter of the orders does not show: drift within a window and cycles that jitter together. */
const leastRelativeU = 0.0002;

/** The paths read at equal steps of time; moments without a path are left out. */
export function trackOf(stretches: readonly Stretch[], evidence: Path, cycle: Cycle): readonly TrackPoint[] {
  const clear = readerOf(evidence);
  return stretches.flatMap(({ path, relativeU, start, end }) => {
    const firingHz = readerOf(path);
    const relative = readerOf({ t: path.t, hz: relativeU });
    const from = Math.ceil(start / trackStepS);
    const count = Math.max(1, Math.floor(end / trackStepS) - from + 1);
    return Array.from({ length: count }, (_, i) => {
      const t = (from + i) * trackStepS;
      const rpm = rpmOfCycle(cycle, firingHz(t) / cycle.cylinders);
      return { t, rpm, u: rpm * Math.hypot(relative(t), leastRelativeU), confidence: surely(clear(t)) };
    });
  });
}

/** Even odds at the evidence that noise reaches once in a while. */
const surely = (evidence: number): number => evidence / (evidence + 0.002);
