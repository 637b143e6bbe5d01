import {
  type EngineKind,
  listenToRun,
  type RunReport,
  type Sound,
  type SteadySegment,
} from '../../../listen/index.js';
import type { Body } from '../../entry.js';

/** What the log keeps of a recording, as far as the sound alone tells it. */
export type Hearing = Pick<
  Body<'recording'>,
  'mean' | 'rivalsRpm' | 'says' | 'track' | 'starts' | 'segments'
>;

/** A log line holds no more points than this; a longer track keeps every second, third … of its points. */
const mostPoints = 1000;

/**
 * Listens to a recording and says what the log keeps of it.
 *
 * Throws a ListenError for a sound or an engine that cannot be listened to.
 */
export function hearing(sound: Sound, engine: EngineKind): Hearing {
  const report = listenToRun(sound, engine);
  const { meanRpm, uncertaintyRpm, rivals, says, track, segments } = report;
  const starts = startsOf(report);
  return {
    ...(meanRpm !== null && { mean: { rpm: meanRpm, u: uncertaintyRpm ?? 0 } }),
    rivalsRpm: rivals.slice(0, 8).map(({ rpm }) => rpm),
    says,
    track: thinned(track).map(({ t, rpm, u }) => ({
      t: rounded(t, 3),
      rpm: rounded(rpm, 1),
      u: rounded(u, 2),
    })),
    ...(starts && { starts }),
    segments: segments.slice(0, 60).map(segmentOf),
  };
}

function thinned<T>(list: readonly T[]): T[] {
  const each = Math.ceil(list.length / mostPoints);
  return list.filter((_, i) => i % each === 0);
}

/** A recording that begins with the engine running tells nothing of its start. */
function startsOf({ starts }: RunReport): Hearing['starts'] {
  const { attempts, untilCaught, secondsToRun } = starts;
  if (attempts.length === 0) return undefined;
  return {
    attempts: untilCaught ?? attempts.length,
    caught: untilCaught !== null,
    ...(secondsToRun !== null && { secondsToSteady: rounded(secondsToRun, 2) }),
  };
}

function segmentOf({ from, to, meanRpm, u, hunting, beats }: SteadySegment): Hearing['segments'][number] {
  return {
    from: rounded(from, 2),
    to: rounded(to, 2),
    rpm: rounded(meanRpm, 1),
    u: rounded(u, 2),
    ...(hunting && { huntingHz: rounded(hunting.hz, 3), huntingRpm: rounded(hunting.swingRpm, 1) }),
    ...(beats && { missedShare: rounded(beats.missedShare, 4) }),
  };
}

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits));
