import { median } from './quantile.js';
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

/**
 * The last fall of the speed, if the recording ends in one.
 *
 * Method: from the last point within 3 % of the speed that was held before it (median of the last second that did not
 * fall) to the end of the track. Error: the track's step of 0.05 s at the beginning; the end is where the firings are
 * no longer heard, some turns before the shaft stands. Null if the track does not end in a fall to below four fifths of
 * that speed, or if it began less than a second before.
 */
export function runDown(track: readonly TrackPoint[]): RunDown | null {
  const last = track.at(-1);
  if (!last) return null;
  const highest = peakBefore(track);
  const from = track.findLastIndex(({ rpm }) => rpm >= leftAt * highest);
  const start = track[from]!;
  if (last.rpm > leastFall * highest || start.t - track[0]!.t < runningS) return null;
  return { from: start.t, seconds: last.t - start.t, fromRpm: highest, toRpm: last.rpm };
}

/** The speed that was held before the fall: the median over the last second in which it did not fall. */
function peakBefore(track: readonly TrackPoint[]): number {
  let end = track.length - 1;
  while (end > 0 && track[end - 1]!.rpm > track[end]!.rpm * 0.999) end -= 1;
  const held = track.filter(({ t }) => t <= track[end]!.t && t > track[end]!.t - runningS);
  return median(held.map(({ rpm }) => rpm));
}
