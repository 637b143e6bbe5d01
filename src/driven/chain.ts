import { DrivenError, requirePositive } from './error.js';

/** Roller chains of ASME B29.1 (ANSI numbers): pitch in inches (from memory). */
export const rollerChains = {
  25: 0.25,
  35: 0.375,
  40: 0.5,
  41: 0.5,
  50: 0.625,
  60: 0.75,
  80: 1,
} as const;

/**
 * How much longer a chain has grown, as a part of its nominal length.
 * Method: measured over several pitches under a light pull, against their nominal length. Exact.
 * Example: 12 pitches of 1/2 in measure 6.18 in: 0.03.
 */
export function elongation(measuredMm: number, pitches: number, pitchMm: number): number {
  return requirePositive(measuredMm, 'measured') / (requirePositive(pitches, 'pitches') * pitchMm) - 1;
}

/**
 * Elongation at which a roller chain is renewed.
 * Source: chain makers' common rule (common practice): 3 % of its length, or 200/N % where the larger sprocket has more
 * than 67 teeth, since its teeth carry the grown pitch farther out. Example: 100 teeth: 0.02.
 */
export function mostElongation(largerTeeth: number): number {
  return Math.min(0.03, 2 / requirePositive(largerTeeth, 'teeth'));
}

/**
 * Length of a roller chain in pitches, before rounding up to an even number.
 * Source: Machinery's Handbook and Shigley, 9th ed., equation 17-34 (from memory):
 * L = 2C + (N + n)/2 + (N − n)²/(4π²·C), all in pitches.
 * Bound: the series is short by less than a hundredth of a pitch where C is above (N + n)/2.
 * Example: 17 and 51 teeth at 40 pitches: 114.73.
 */
export function chainPitches(teeth: number, otherTeeth: number, centersInPitches: number): number {
  const c = requirePositive(centersInPitches, 'centers');
  const [n, N] = [requirePositive(teeth, 'teeth'), requirePositive(otherTeeth, 'otherTeeth')];
  if (c < (n + N) / (2 * Math.PI))
    throw new DrivenError('the sprockets would touch: the centers are too near.', 'centers', c);
  return 2 * c + (n + N) / 2 + (N - n) ** 2 / (4 * Math.PI ** 2 * c);
}

/** A saw chain by its pitch: the file that fits its cutters and how far the depth gauge stands below them. */
export interface SawChain {
  readonly name: string;
  readonly pitchIn: number;
  /** diameter of the round file, millimeters */
  readonly fileMm: number;
  readonly fileIn: string;
}

/** Files by pitch: common practice; the chain's own packing comes first. */
export const sawChains: readonly SawChain[] = [
  { name: '1/4 in', pitchIn: 0.25, fileMm: 4, fileIn: '5/32 in' },
  { name: '.325 in', pitchIn: 0.325, fileMm: 4.8, fileIn: '3/16 in' },
  { name: '3/8 in low profile', pitchIn: 0.375, fileMm: 4, fileIn: '5/32 in' },
  { name: '3/8 in', pitchIn: 0.375, fileMm: 5.2, fileIn: '13/64 in' },
  { name: '.404 in', pitchIn: 0.404, fileMm: 5.5, fileIn: '7/32 in' },
];

/** Depth gauges stand 0.025 in below the cutters on most chains (common practice). */
export const depthGaugeMm = 0.65;

/**
 * Pitch of a saw chain: half the distance between a rivet and the next but one. Common practice.
 * Example: 0.75 in over three rivets: 0.375 in.
 */
export const pitchOverRivets = (overThreeRivetsMm: number): number =>
  requirePositive(overThreeRivetsMm, 'rivets') / 2;

/** The pitch in the list that a measured one belongs to: within 3 % of it, which stays clear of the next. */
export function sawPitch(pitchMm: number): number {
  const near = sawChains.find(({ pitchIn }) => Math.abs(pitchMm / (25.4 * pitchIn) - 1) < 0.03);
  if (near) return near.pitchIn;
  throw new DrivenError(
    `a pitch of ${(pitchMm / 25.4).toFixed(3)} in is none of 1/4, .325, 3/8 and .404 in: measure over three rivets in a row, edge to same edge.`,
    'rivets',
    pitchMm,
  );
}

/**
 * Speed of a saw chain, m/s: each tooth of the sprocket carries it on by two pitches.
 * Exact without slip in the clutch. Example: 3/8 in, 7 teeth, 9000 rpm: 20.0 m/s.
 */
export function sawChainSpeed(pitchMm: number, teeth: number, rpm: number): number {
  return (
    (2 * requirePositive(pitchMm, 'pitch') * requirePositive(teeth, 'teeth') * requirePositive(rpm, 'rpm')) /
    60_000
  );
}

/**
 * Elongation at which a saw chain is renewed: that of a roller chain on a small sprocket (common practice). Its own standards
 * give none, and its cutters are often done before its rivets are.
 */
export const mostSawElongation = 0.03;

export interface SawStretch {
  /** part of its nominal length by which it has grown */
  readonly grown: number;
  /** part that it may still grow; below 0 past the limit */
  readonly left: number;
  /** how far the bar must still move out until then, mm: the loop lies on it twice */
  readonly barMovesMm: number;
}

/**
 * What the rivets of a saw chain have worn, and what is left of it.
 *
 * Source: pitch is half of the distance over three rivets (common practice); elongation as of any chain.
 * Method: links and straps may be drilled differently, so that only an odd number of rivets spans whole pitches of both.
 * A loop of n drive links is 2·n pitches long. Throws DrivenError for an even number of rivets, or fewer than three.
 * Example: 17 rivets of 3/8 in measure 6.09 in: grown by 1.5 %, 1.5 % left.
 */
export function sawStretch(
  { measuredMm, rivets, pitchMm }: { measuredMm: number; rivets: number; pitchMm: number },
  { most, driveLinks }: { most: number; driveLinks: number },
): SawStretch {
  if (!(rivets >= 3 && rivets % 2 === 1))
    throw new DrivenError('count an odd number of rivets, from three up.', 'rivets', rivets);
  const grown = elongation(measuredMm, rivets - 1, pitchMm);
  const left = most - grown;
  return { grown, left, barMovesMm: left * requirePositive(driveLinks, 'driveLinks') * pitchMm };
}
