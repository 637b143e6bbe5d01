import type { SteadySegment } from './segments.js';
import type { Starts } from './starts.js';

/** One run as far as two are compared. */
export interface Run {
  readonly starts: Starts;
  readonly segments: readonly SteadySegment[];
}

/** After less before; null where one of them does not show it. */
export interface Compared {
  /** of the longest steady stretch of each */
  readonly speedRpm: number | null;
  /** standard uncertainty of that difference */
  readonly speedU: number | null;
  readonly swingRpm: number | null;
  readonly spread: number | null;
  readonly missedShare: number | null;
  readonly pulls: number | null;
  readonly secondsToRun: number | null;
}

/** The longest steady stretches stand for their runs: record both at the same lever setting. */
export function compareRuns(before: Run, after: Run): Compared {
  const a = longest(before.segments);
  const b = longest(after.segments);
  const difference = (of: (segment: SteadySegment) => number | null | undefined) =>
    a && b ? less(of(b), of(a)) : null;
  return {
    speedRpm: difference(({ meanRpm }) => meanRpm),
    speedU: a && b ? Math.hypot(a.u, b.u) : null,
    swingRpm: difference(({ hunting }) => hunting?.swingRpm ?? 0),
    spread: difference(({ beats }) => beats?.spread),
    missedShare: difference(({ beats }) => beats?.missedShare),
    pulls: less(after.starts.untilCaught, before.starts.untilCaught),
    secondsToRun: less(after.starts.secondsToRun, before.starts.secondsToRun),
  };
}

const less = (after: number | null | undefined, before: number | null | undefined): number | null =>
  after == null || before == null ? null : after - before;

function longest(segments: readonly SteadySegment[]): SteadySegment | undefined {
  return [...segments].sort((a, b) => b.to - b.from - (a.to - a.from))[0];
}
