import { runDown } from './run-down.js';
import { meanRpm, type TrackPoint } from './track.js';

/** What a person marked while listening. */
export interface Mark {
  readonly t: number;
  readonly kind: 'load on' | 'load off';
}

/** How the speed answers to a load put on or taken off. */
export interface LoadStep {
  readonly mark: Mark;
  readonly beforeRpm: number;
  /** what the speed settles at */
  readonly afterRpm: number;
  /** the farthest that the speed goes on the way */
  readonly extremeRpm: number;
  /** fall of the settled speed in percent of the speed before; below 0 when it rises */
  readonly droopPercent: number;
  /** from the mark until the speed stays near what it settles at; null if it does not within the recording */
  readonly recoveryS: number | null;
}

const beforeS = 2;
const settledS = 2;
/** Settled is within this share of the final speed. Trade judgement, no source. */
const settledWithin = 0.015;

/**
 * What the speed does at each mark.
 *
 * Method: before is the mean of up to two seconds before the mark (not beyond the mark before it), after the mean of the last
 * second before the next mark or the end; droop is the fall in percent of the speed before (ISO 3046-4 has it of the speed
 * after: 5.26 % there is 5 % here). Recovery ends with the last point more than 1.5 % off the final speed.
 * What the speed does after the engine was stopped is left out.
 * Marks too near the ends of the track, or to each other, to have a before and two seconds after are left out.
 * Example: 3600 rpm falling to 3420 within a second: droop 5 %, recovery 1 s.
 */
export function loadSteps(whole: readonly TrackPoint[], marks: readonly Mark[]): readonly LoadStep[] {
  const inOrder = [...marks].sort((a, b) => a.t - b.t);
  const stopped = runDown(whole)?.from ?? Number.POSITIVE_INFINITY;
  const track = whole.filter(({ t }) => t < stopped);
  return inOrder.flatMap((mark, i) => {
    const from = Math.max(mark.t - beforeS, inOrder[i - 1]?.t ?? Number.NEGATIVE_INFINITY);
    const before = track.filter(({ t }) => t >= from && t < mark.t);
    const until = inOrder[i + 1]?.t ?? Number.POSITIVE_INFINITY;
    const after = track.filter(({ t }) => t >= mark.t && t < until);
    const end = after.at(-1)?.t ?? mark.t;
    if (before.length === 0 || end - mark.t < settledS) return [];
    return [stepOf(mark, meanRpm(before), after, end)];
  });
}

function stepOf(mark: Mark, beforeRpm: number, after: readonly TrackPoint[], end: number): LoadStep {
  const afterRpm = meanRpm(after.filter(({ t }) => t > end - settledS / 2));
  const outside = after.findLast(({ rpm }) => Math.abs(rpm / afterRpm - 1) > settledWithin);
  const extreme = mark.kind === 'load on' ? Math.min : Math.max;
  return {
    mark,
    beforeRpm,
    afterRpm,
    extremeRpm: after.reduce((sofar, { rpm }) => extreme(sofar, rpm), after[0]!.rpm),
    droopPercent: 100 * (1 - afterRpm / beforeRpm),
    recoveryS: recovery(mark, outside, end),
  };
}

function recovery(mark: Mark, outside: TrackPoint | undefined, end: number): number | null {
  if (outside === undefined) return 0;
  return outside.t > end - settledS / 2 ? null : outside.t - mark.t;
}
