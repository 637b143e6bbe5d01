import type { Loudness } from './loudness.js';
import type { Candidate, Choice } from './rivals.js';
import type { Steadiness } from './steadiness.js';
import { meanRpm, type TrackPoint, uncertaintyOfMean } from './track.js';

/** What the recording as a whole says. */
export interface Verdict {
  /** mean crank speed, or null where no engine with a steady beat is heard */
  readonly meanRpm: number | null;
  /** standard uncertainty of the mean; null with it */
  readonly uncertaintyRpm: number | null;
  /** whether another speed fits nearly as well */
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
const closeCall = { slower: 0.45, faster: 0.62 };

export function accepted({ best, rivals }: Choice, track: readonly TrackPoint[]): Verdict {
  const mean = meanRpm(track);
  const close = rivals
    .filter(
      ({ evidence, ratio }) => evidence > closeCall[ratio < best.ratio ? 'slower' : 'faster'] * best.evidence,
    )
    .map((rival) => asRival(rival, best, mean));
  const uncertaintyRpm = uncertaintyOfMean(track);
  return {
    ...{ meanRpm: mean, uncertaintyRpm, ambiguous: close.length > 0, rivals: close },
    says: words(mean, uncertaintyRpm, close),
  };
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

function words(rpmHeard: number, u: number, rivals: readonly Rival[]): string {
  const said = `The engine turns at ${rpmHeard.toFixed(0)} rpm (95 % within ±${Math.max(1, 2 * u).toFixed(0)}).`;
  if (rivals.length === 0) return said;
  const others = rivals.map(({ rpm }) => `${rpm.toFixed(0)}`).join(' or ');
  return `${said} The sound does not settle it: ${others} rpm fits nearly as well. Count with a tachometer.`;
}
