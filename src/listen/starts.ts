import { quantile } from './quantile.js';
import { meanSquare, type Signal } from './resample.js';
import type { TrackPoint } from './track.js';

/** One pull of the rope, or one turn of the starter key. */
export interface Attempt {
  readonly from: number;
  readonly to: number;
  /** whether the engine ran on after it */
  readonly caught: boolean;
}

export interface Starts {
  readonly attempts: readonly Attempt[];
  /** attempts up to and with the one that caught; null if none did */
  readonly untilCaught: number | null;
  /** from the first attempt to the beginning of the run; null with it */
  readonly secondsToRun: number | null;
  /** whether the recording tells if the last attempt caught: false where sound goes on after it that has no speed */
  readonly told: boolean;
}

const stepS = 0.02;
/** Loud is nearer to the loudest than to the quiet between, on the decibel scale. */
const shareOfRange = 0.45;
/** Quiet and loud must differ at least so much for anything to have begun. */
const leastRangeDb = 12;
/** Strokes of one pull lie closer together; two pulls of a person lie further apart. */
const withinAttemptS = 0.35;
const shortestS = 0.12;
/** Sound that goes on for longer than any pull is a running engine. */
const runS = 2.5;

/**
 * Attempts to start, told by loudness: bursts with quiet between them; a burst that goes on and has a speed caught.
 *
 * Validity: the recording begins in quiet, before the first attempt. A starter motor that cranks for longer than
 * 2.5 s without the engine firing counts as caught only if the track has a speed there.
 */
export function startAttempts(low: Signal, track: readonly TrackPoint[]): Starts {
  const bursts = burstsOf(low);
  const attempts: Attempt[] = [];
  for (const burst of bursts) {
    const caught = burst.to - burst.from > runS && speedIn(track, burst.from, burst.to);
    attempts.push({ ...burst, caught });
    if (caught) break;
  }
  const at = attempts.findIndex(({ caught }) => caught);
  if (at < 0) return { attempts, untilCaught: null, secondsToRun: null, told: !attempts.some(goesOn(low)) };
  const begins = track.find(({ t }) => t >= attempts[at]!.from)!.t;
  return { attempts, untilCaught: at + 1, secondsToRun: begins - attempts[0]!.from, told: true };
}

/** No pull lasts so long, and what sounds to the very end of the recording may have run on. */
const goesOn =
  ({ values, rate }: Signal) =>
  ({ from, to }: Attempt): boolean =>
    to - from > runS || to > values.length / rate - 2 * stepS;

/** Whether the track speaks for most of a second somewhere in between. */
const speedIn = (track: readonly TrackPoint[], from: number, to: number): boolean =>
  track.filter(({ t }) => t >= from && t <= to).length >= 15;

function burstsOf(low: Signal): readonly { readonly from: number; readonly to: number }[] {
  const levels = levelsDb(low);
  const [quiet, loud] = [quantile(levels, 0.05), quantile(levels, 0.98)];
  if (loud - quiet < leastRangeDb) return [];
  const edge = loud - (1 - shareOfRange) * (loud - quiet);
  const bursts: { from: number; to: number }[] = [];
  levels.forEach((level, i) => {
    if (level < edge) return;
    const t = i * stepS;
    const open = bursts.at(-1);
    if (open && t - open.to <= withinAttemptS) open.to = t + stepS;
    else bursts.push({ from: t, to: t + stepS });
  });
  return bursts.filter(({ from, to }) => to - from >= shortestS && from > stepS);
}

function levelsDb({ values: low, rate }: Signal): number[] {
  const step = Math.round(stepS * rate);
  const levels: number[] = [];
  for (let from = 0; from + step <= low.length; from += step)
    levels.push(10 * Math.log10(meanSquare(low, from, from + step) + 1e-10));
  return levels;
}
