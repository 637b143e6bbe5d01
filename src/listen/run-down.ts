import { median } from './quantile.js';
import { steadyRuns } from './segments.js';
import type { TrackPoint } from './track.js';

/** The last fall of the speed, from the stop control to the last turn that is heard. */
export interface RunDown {
  readonly from: number;
  readonly seconds: number;
  readonly fromRpm: number;
  /** the speed at which the track ends: what turns more slowly is not heard */
  readonly toRpm: number;
}

/** The engine has left its speed when it is this share below, and is running down if it loses at least so much. */
const leftAt = 0.97;
const leastFall = 0.8;
const runningS = 1;
/** A shorter fall is where a sound breaks off. */
const shortestS = 0.3;

/**
 * The last fall of the speed, if the recording ends in one.
 *
 * Method: from the last point within 3 % of the speed that was held before it (median of the last second of the last level stretch) to
 * the end of the track. Error: the track's step of 0.05 s at the beginning; the end is where the firings are
 * no longer heard, some turns before the shaft stands. Null if the track does not end in a fall to below four fifths of
 * that speed, or if it began less than a second before.
 */
export function runDown(track: readonly TrackPoint[]): RunDown | null {
  const last = track.at(-1);
  if (!last) return null;
  const held = steadyRuns(track).findLast(isLevel);
  if (!held) return null;
  const highest = median(held.filter(({ t }) => t > held.at(-1)!.t - runningS).map(({ rpm }) => rpm));
  const start = track[track.findLastIndex(({ rpm }) => rpm >= leftAt * highest)]!;
  const seconds = last.t - start.t;
  if (last.rpm > leastFall * highest || seconds < shortestS || start.t - track[0]!.t < runningS) return null;
  return { from: start.t, seconds, fromRpm: highest, toRpm: last.rpm };
}

/** A heavy flywheel still loses more than this share of its speed in a second when it runs down. */
const leastLoss = 0.04;

function isLevel(run: readonly TrackPoint[]): boolean {
  const [first, last] = [run[0]!, run.at(-1)!];
  return Math.abs(last.rpm / first.rpm - 1) < leastLoss * (last.t - first.t);
}
