import type { Cycle } from './engine-kind.js';
import type { Loudness } from './loudness.js';
import { quantile } from './quantile.js';
import type { Candidate, Choice } from './rivals.js';
import { lasts, steadyRuns } from './segments.js';
import type { Steadiness } from './steadiness.js';
import { meanRpm, type TrackPoint, uncertaintyOfMean } from './track.js';

/** What the recording as a whole says. */
export interface Verdict {
  /** mean crank speed, or null where no engine with a steady beat is heard */
  readonly meanRpm: number | null;
  /** standard uncertainty of the mean; null with it */
  readonly uncertaintyRpm: number | null;
  /** whether another speed fits nearly as well, or it may be no engine at all */
  readonly ambiguous: boolean;
  readonly rivals: readonly Rival[];
  /** the answer or the refusal in words */
  readonly says: string;
}

export interface Rival {
  readonly rpm: number;
  /** evidence of this speed over that of the one given, 0 to 1 */
  readonly weight: number;
}

/** A rival with this share of the best evidence is named; one order too high is the likelier mistake. */
const closeCall = { slower: 0.45, faster: 0.5 };
/**
 * Three cylinders and more, alike, leave little to tell a speed from its double, unless what was said of the engine leaves
 * no room for both: there a lesser rival is named as well.
 */
const closeCallOfMany = 0.35;
const hasRoomForBoth = ({ cylinders, said }: Cycle): boolean =>
  cylinders > 2 && (said === undefined || said.highRpm >= 2 * said.lowRpm);

const isClose =
  (best: Candidate, cycle: Cycle) =>
  ({ evidence, ratio }: Candidate): boolean => {
    const share = hasRoomForBoth(cycle)
      ? closeCallOfMany
      : closeCall[ratio < best.ratio ? 'slower' : 'faster'];
    return evidence > share * best.evidence;
  };

export const hasRival = ({ best, rivals }: Choice, cycle: Cycle): boolean =>
  rivals.some(isClose(best, cycle));

/** `doubtful`: it may be no engine at all. */
export function accepted(
  { best, rivals }: Choice,
  track: readonly TrackPoint[],
  cycle: Cycle,
  doubtful: boolean,
): Verdict {
  const runs = steadyRuns(track);
  const held = longestHeld(track);
  const mean = meanRpm(held);
  const close = rivals.filter(isClose(best, cycle)).map((rival) => asRival(rival, best, mean));
  const uncertaintyRpm = uncertaintyOfMean(held);
  const short = track.length * pointS < tellingS;
  return {
    ...{ meanRpm: mean, uncertaintyRpm, ambiguous: doubtful || short || close.length > 0, rivals: close },
    says: [
      ...words(track, runs, mean, uncertaintyRpm),
      ...rivalWords(close),
      ...(short ? [tooShort] : doubtful ? [doubt] : []),
    ].join(' '),
  };
}

/** The longest stretch at one speed, of which the mean is told; all of a track that holds none. */
export function longestHeld(track: readonly TrackPoint[]): readonly TrackPoint[] {
  const runs = steadyRuns(track);
  return runs.reduce((a, b) => (lasts(b) > lasts(a) ? b : a), runs[0] ?? track);
}

export const refused = (says: string): Verdict => ({
  ...{ meanRpm: null, uncertaintyRpm: null, ambiguous: false, rivals: [], says },
});

const leastEvidence = 0.0028;
/** What plain noise may give to any one speed. */
const noiseEvidence = 0.0002;
const leastOverChance = 5;
/** More over chance than this says no more. */
const mostOverChance = 40;
/** No one speaks or sings so long without a drop in loudness; an engine that is run does. */
const leastLoudS = 1;
/** A short recording must be loud for this share of it. */
const leastLoudShare = 0.75;
/** A path through noise finds a line or two by chance, yet is held by none: relative uncertainty a line. */
const held = { fewLines: 2, uncertaintyPerLine: 0.005 };

/**
 * Why this is no engine that runs steadily, or null if it is one.
 *
 * Method: a threshold on the evidence, one on how long the sound goes on, one on how firmly its lines hold the speed, and
 * a sum of signs. Weights and thresholds were set on some 500 recordings of engines, voices, tunes, weather, water,
 * machines and animals and on made sounds; on 60 others that are no engine, 12 passed as a two-stroke, 9 as a four-stroke.
 */
export function objection(
  choice: Choice,
  steadiness: Steadiness,
  loudness: Loudness,
  relativeU: number,
): string | null {
  const overChance = choice.highest / (choice.chance + noiseEvidence);
  const unheld = choice.lines < held.fewLines && relativeU > held.uncertaintyPerLine * choice.lines;
  if (choice.highest < leastEvidence || overChance < leastOverChance || unheld)
    return 'No engine is heard: nothing in this recording repeats at a steady rate.';
  const { levelsDb, stepS } = loudness;
  const loudEnoughS = Math.min(leastLoudS, leastLoudShare * levelsDb.length * stepS);
  if (!loudness.throughout && loudness.longestS < loudEnoughS)
    return 'No running engine is heard: the sound never goes on for as long as a second.';
  const sum =
    Math.log(Math.min(overChance, mostOverChance) / 10) +
    3 * (loudness.even - 0.8) +
    2 * (steadiness.ongoing - 0.6) -
    steadiness.roughness / 0.033;
  return sum > 0.5
    ? null
    : 'No engine is heard: what repeats here comes, goes and jumps as a voice or a tune does.';
}

const asRival = (rival: Candidate, best: Candidate, mean: number): Rival => ({
  rpm: (mean * rival.ratio) / best.ratio,
  weight: rival.evidence / best.evidence,
});

/** So much of the track at one speed, and the rest is the start and the end of it. */
const nearlyAll = 0.75;
const mostSaid = 4;

function words(
  track: readonly TrackPoint[],
  runs: readonly (readonly TrackPoint[])[],
  mean: number,
  u: number,
): string[] {
  const within = `(95 % within ±${Math.max(1, 2 * u).toFixed(0)})`;
  if (runs.length === 0 && changes(track)) {
    const [low, high] = ends(track);
    return [`The speed changes all the time, between ${low.toFixed(0)} and ${high.toFixed(0)} rpm.`];
  }
  const all = track.length * pointS;
  const main = runs.find((run) => meanRpm(run) === mean);
  if (runs.length <= 1 || (main && lasts(main) > nearlyAll * all))
    return [`The engine turns at ${mean.toFixed(0)} rpm ${within}.`];
  const said = runs
    .slice(0, mostSaid)
    .map(
      (run) => `${meanRpm(run).toFixed(0)} rpm from ${run[0]!.t.toFixed(0)} to ${run.at(-1)!.t.toFixed(0)} s`,
    );
  const more = runs.length > mostSaid ? [`${runs.length - mostSaid} more`] : [];
  return [`The engine turns at ${[...said, ...more].join(', ')}.`];
}

const pointS = 0.05;
/** A track that keeps within this factor holds one speed, be it for less than a second. */
const oneSpeed = 1.15;

const changes = (track: readonly TrackPoint[]): boolean => {
  const [low, high] = ends(track);
  return high > oneSpeed * low;
};

function ends(track: readonly TrackPoint[]): readonly [number, number] {
  const rpm = track.map((point) => point.rpm);
  return [quantile(rpm, 0.02), quantile(rpm, 0.98)];
}

const doubt =
  'It may be no engine: something repeats, but less firmly or less alone than an engine mostly does. Listen again, nearer to it.';

/** What repeats for less than this, a beep or a key, sounds as an engine does: of nine sounds that passed wrongly among those that guided seven were so short. */
const tellingS = 1;
const tooShort =
  'It may be no engine: it was heard for less than a second, and a beep sounds like this too. Listen for longer.';

function rivalWords(rivals: readonly Rival[]): string[] {
  if (rivals.length === 0) return [];
  const others = rivals.map(({ rpm }) => rpm.toFixed(0)).join(' or ');
  return [`The sound does not settle it: ${others} rpm fits nearly as well. Count with a tachometer.`];
}
