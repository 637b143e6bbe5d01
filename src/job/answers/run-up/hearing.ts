import {
  type EngineKind,
  listenToRun,
  type RunReport,
  type Sound,
  type SteadySegment,
} from '../../../listen/index.js';
import { of, to } from '../../../quantity/index.js';
import type { Body } from '../../entry.js';
import type { Job } from '../../job.js';

/** What the log keeps of a recording, as far as the sound alone tells it. */
export type Hearing = Pick<
  Body<'recording'>,
  'mean' | 'rivalsRpm' | 'says' | 'track' | 'starts' | 'stop' | 'beat' | 'shaft' | 'segments'
>;

/** The most rpm that this engine's own sheet allows; undefined where it says nothing of it. */
export function mostRpm({ specs }: Job, topSpeed: string): number | undefined {
  const spec = specs.get(topSpeed);
  const most = spec?.upTo ?? spec?.value;
  return most && to({ ...of(0, 'rpm'), si: most.si }, 'rpm');
}

/** An engine idles at no less than this share of its top speed, and overruns it by as much. Trade judgement. */
const idleShare = 0.3;
const overrun = 1.1;

/** The engine as the ear wants it: how it fires, and the speeds that it can have, where its own sheet tells. */
export function engineHeard(strokes: 2 | 4, cylinders: number, most: number | undefined): EngineKind {
  if (most === undefined) return { strokes, cylinders };
  return { strokes, cylinders, range: { lowRpm: idleShare * most, highRpm: overrun * most } };
}

/** A recording whose sound leaves two speeds open, once a person has said which it was. */
export function settledSpeed<R extends Hearing>(heard: R, rpm: number): R {
  if (heard.mean === undefined) return heard;
  const factor = rpm / heard.mean.rpm;
  const scaled = <T extends { readonly rpm: number; readonly u: number }>(each: T): T => ({
    ...each,
    rpm: rounded(each.rpm * factor, 1),
    u: rounded(each.u * factor, 2),
  });
  const said = [heard.mean.rpm, ...heard.rivalsRpm].map((each) => each.toFixed(0)).join(' or ');
  return {
    ...heard,
    mean: scaled(heard.mean),
    rivalsRpm: [],
    says: `The engine turned at ${rpm.toFixed(0)} rpm: the sound left ${said} open, and whoever heard it said which.`,
    track: heard.track.map(scaled),
    segments: heard.segments.map(scaled),
  };
}

/** A log line holds no more points than this; a longer track keeps every second, third … of its points. */
const mostPoints = 1000;

/**
 * Listens to a recording and says what the log keeps of it.
 *
 * Throws a ListenError for a sound or an engine that cannot be listened to.
 */
export function hearing(sound: Sound, engine: EngineKind): Hearing {
  const report = listenToRun(sound, engine);
  const { meanRpm, uncertaintyRpm, rivals, track, stop, beat, segments } = report;
  const starts = startsOf(report);
  return {
    ...(meanRpm !== null && { mean: { rpm: meanRpm, u: uncertaintyRpm ?? 0 } }),
    rivalsRpm: rivals.slice(0, 8).map(({ rpm }) => rpm),
    says: [report.says, ...untoldShaft(report)].join(' '),
    track: thinned(track).map(({ t, rpm, u }) => ({
      t: rounded(t, 3),
      rpm: rounded(rpm, 1),
      u: rounded(u, 2),
    })),
    ...(starts && { starts }),
    ...(stop.told && {
      stop: { from: rounded(stop.from, 2), seconds: rounded(stop.seconds, 3), u: rounded(stop.u, 3) },
    }),
    ...(beat.told && {
      beat: { beats: beat.beats, share: rounded(beat.share, 3), u: rounded(beat.u, 3) },
    }),
    ...shaftOf(report, engine),
    segments: segments.slice(0, 60).map(segmentOf),
  };
}

const untoldShaft = ({ shaft }: RunReport): string[] =>
  shaft && !shaft.told ? [`What the belt turns cannot be told: ${shaft.why}.`] : [];

function shaftOf({ shaft }: RunReport, { belt }: EngineKind): Pick<Hearing, 'shaft'> {
  if (!shaft?.told || !belt) return {};
  const { rpm, slip, u } = shaft;
  return {
    shaft: { rpm: rounded(rpm, 1), ratio: belt.ratio, slip: rounded(slip, 4), u: rounded(u, 4) },
  };
}

function thinned<T>(list: readonly T[]): T[] {
  const each = Math.ceil(list.length / mostPoints);
  return list.filter((_, i) => i % each === 0);
}

/** A recording that begins with the engine running tells nothing of its start, nor one in which it may have run on. */
function startsOf({ starts }: RunReport): Hearing['starts'] {
  const { attempts, untilCaught, secondsToRun, told } = starts;
  if (attempts.length === 0 || !told) return undefined;
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
