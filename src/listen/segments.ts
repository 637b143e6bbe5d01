import { type Beats, beatsOf } from './beats.js';
import type { EngineKind } from './engine-kind.js';
import { type Hunting, huntingOf } from './hunting.js';
import type { Signal } from './resample.js';
import { meanRpm, type TrackPoint, uncertaintyOfMean } from './track.js';

/** A stretch in which the engine runs at one speed, or swings about one. */
export interface SteadySegment {
  readonly from: number;
  readonly to: number;
  readonly meanRpm: number;
  /** standard uncertainty of the mean */
  readonly u: number;
  /** within which the mean lies with 95 % probability */
  readonly interval: readonly [number, number];
  readonly hunting: Hunting | null;
  readonly beats: Beats | null;
}

const shortestS = 1;
/** A point belongs while it lies within this share of the segment's mean so far. */
const band = 0.06;
/** An engine that hunts by more falls into pieces shorter than this, which belong together … */
const pieceS = 2.5;
/** … where they go on for so long … */
const huntS = 3;
/** … and lead nowhere: the means of both halves lie within this share of each other. */
const sameHalves = 0.05;
/** A pause in the track ends a segment. */
const longestGapS = 0.3;
const coverage95 = 1.96;

type Run = readonly TrackPoint[];

/**
 * All steady stretches of a second or more, in order of time, each with its mean, its hunting and its beats.
 *
 * Method: points in a row within 6 % of the mean so far; short pieces that swing about one speed and lead nowhere are
 * one stretch that hunts. Uncertainty of the mean: that of the points, of which one in six is news, at 1.96 for 95 %
 * (GUM, G.2.2); it leaves out what the tracker took for the wrong multiple.
 */
export function steadySegments(
  low: Signal,
  track: readonly TrackPoint[],
  engine: EngineKind,
): readonly SteadySegment[] {
  return steadyRuns(track).map((run) => segmentOf(low, run, engine));
}

/** The stretches of a track of a second or more in which one speed is held. */
export const steadyRuns = (track: Run): readonly Run[] =>
  rejoined(runsOf(track)).filter((run) => lasts(run) >= shortestS);

function runsOf(track: Run): readonly Run[] {
  const runs: TrackPoint[][] = [];
  let sum = 0;
  for (const point of track) {
    const run = runs.at(-1);
    const belongs =
      run !== undefined &&
      point.t - run.at(-1)!.t <= longestGapS &&
      Math.abs(point.rpm / (sum / run.length) - 1) <= band;
    if (belongs) run.push(point);
    else runs.push([point]);
    sum = belongs ? sum + point.rpm : point.rpm;
  }
  return runs;
}

/** Short pieces in a row that swing about one speed are one stretch that hunts. */
function rejoined(runs: readonly Run[]): readonly Run[] {
  const groups: Run[][] = [];
  for (const run of runs) {
    const last = groups.at(-1)?.at(-1);
    const short = lasts(run) < pieceS;
    const goesOn = last && lasts(last) < pieceS && run[0]!.t - last.at(-1)!.t <= longestGapS;
    if (short && goesOn) groups.at(-1)!.push(run);
    else groups.push([run]);
  }
  return groups.flatMap((pieces) => {
    const whole = pieces.flat();
    return pieces.length > 1 && lasts(whole) >= huntS && leadsNowhere(whole) ? [whole] : pieces;
  });
}

export const lasts = (run: Run): number => run.at(-1)!.t - run[0]!.t;

function leadsNowhere(run: Run): boolean {
  const middle = run.length >> 1;
  return Math.abs(meanRpm(run.slice(middle)) / meanRpm(run.slice(0, middle)) - 1) <= sameHalves;
}

function segmentOf(low: Signal, run: Run, engine: EngineKind): SteadySegment {
  const [mean, u] = [meanRpm(run), uncertaintyOfMean(run)];
  return {
    ...{ from: run[0]!.t, to: run.at(-1)!.t, meanRpm: mean, u },
    interval: [mean - coverage95 * u, mean + coverage95 * u],
    hunting: huntingOf(run),
    beats: beatsOf(low, run, engine),
  };
}
