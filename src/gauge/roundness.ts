import { type Decision, verdictWords } from './decide.js';
import { GaugeError, requireFinite, requireNotNegative } from './error.js';
import { minimumZone, type ZoneReading } from './minimum-zone.js';
import { fitLinear } from './regression.js';
import { decideSpread } from './spread.js';

export interface RoundnessQuestion {
  /** distances from the axis of rotation, everything in one unit */
  readonly radii: readonly number[];
  /** one a radius; evenly spaced over the whole turn when left out */
  readonly anglesDeg?: readonly number[] | undefined;
  readonly u: number;
  readonly max?: number | undefined;
  readonly confidence?: number | undefined;
  readonly unit?: string | undefined;
}

export interface Circle {
  readonly centerX: number;
  readonly centerY: number;
  readonly radius: number;
  /** largest less smallest distance from this circle */
  readonly roundness: number;
}

export interface Roundness {
  readonly leastSquares: Circle;
  readonly minimumZone: Circle;
  /** standard uncertainty of the minimum zone */
  readonly u: number;
  /** the most lobes that so many readings show: with more, the readings may all fall alike on them */
  readonly mostLobes: number;
  readonly decision?: Decision;
}

/** Three lobes, which centerless grinding leaves, are seen from eight readings on. */
const leastForThreeLobes = 8;

/**
 * Roundness from radii over a turn: least-squares circle (LSCI) and minimum zone circles (MZCI).
 *
 * Source: ISO 12181-1:2011 and ISO 4291:1985 (from memory).
 * Method: each reading is a point of the profile; distances from a center and angles about it, residual ρ − R − a·cosφ −
 * b·sinφ. Householder least squares and the exact minimum zone by linear program shift the center by (a, b), and both
 * are worked out anew from there until it stands still: a round journal off center has no error of form, however far.
 * Error: what is linear leaves (shift²/2R) is held under a thousandth of the form error, or 1e-12 of the radius; more than
 * fifty steps are refused, and so is a part more than half its radius off center. Well centered parts thus have the
 * figures of ISO 4291's own sums.
 * Special cases: fewer than 4 radii, angles that do not go around: refused. A pass wants eight readings: with fewer,
 * three lobes may stay unseen.
 * Example: 25.000 25.004 25.010 25.006 24.998 24.996 24.992 24.997 → LSCI 0.004172, MZCI 0.003950.
 */
export function roundness(question: RoundnessQuestion): Roundness {
  const profile = profileOf(question);
  const { u, max, confidence, unit } = question;
  requireNotNegative(u, 'u');
  const squares = centered(profile, leastSquares);
  const zone = centered(profile, zoneAbout);
  const count = profile.length;
  return {
    leastSquares: squares.circle,
    minimumZone: zone.circle,
    u: 2 * u * Math.hypot(...zone.weights),
    mostLobes: Math.ceil(count / 2) - 1,
    ...(max !== undefined && {
      decision: seen(decideSpread({ spread: zone.circle.roundness, u, count, max, confidence, unit }), count),
    }),
  };
}

/** So few readings may all lie on the lobes of a part that is not round: they fail it, but never pass it. */
function seen(decision: Decision, count: number): Decision {
  if (decision.verdict !== 'pass' || count >= leastForThreeLobes) return decision;
  const why = `${decision.why} But ${count} readings cannot see three lobes: read at ${leastForThreeLobes} places or more.`;
  return { ...decision, verdict: 'cannot-decide', why, words: `${verdictWords['cannot-decide']}: ${why}` };
}

interface Place {
  readonly x: number;
  readonly y: number;
}

interface Fitted {
  /** of the center, from the one that was tried */
  readonly shift: readonly [x: number, y: number];
  readonly radius: number;
  readonly roundness: number;
  /** of the readings that hold the zone open */
  readonly weights: readonly number[];
}

/** Distances and angles about a center, as the linear fits want them. */
type About = readonly ZoneReading[];

function leastSquares(about: About): Fitted {
  const fit = fitLinear(
    about.map(({ at }) => at),
    about.map(({ z }) => z),
  );
  const [radius, x, y] = fit.coefficients;
  const width = Math.max(...fit.residuals) - Math.min(...fit.residuals);
  return { shift: [x!, y!], radius: radius!, roundness: width, weights: [] };
}

function zoneAbout(about: About): Fitted {
  const { coefficients, width, contacts } = minimumZone(about);
  const [radius, x, y] = coefficients;
  return { shift: [x, y], radius, roundness: width, weights: contacts.map(({ weight }) => weight) };
}

const mostSteps = 50;

/** The fit about the center that it itself finds. */
function centered(
  profile: readonly Place[],
  fitAbout: (about: About) => Fitted,
): { readonly circle: Circle; readonly weights: readonly number[] } {
  let [centerX, centerY, before] = [0, 0, Number.POSITIVE_INFINITY];
  for (let step = 0; step < mostSteps; step += 1) {
    const { shift, radius, roundness, weights } = fitAbout(aboutCenter(profile, centerX, centerY));
    centerX += shift[0];
    centerY += shift[1];
    requireCentered(Math.hypot(centerX, centerY), radius);
    const left = Math.hypot(...shift) ** 2 / (2 * radius);
    // where two centers hold the same zone the center may go on moving, its width does not
    const stands = Math.min(Math.hypot(...shift), Math.abs(before - roundness)) <= 1e-12 * radius;
    if (stands || left <= 1e-3 * roundness)
      return { circle: { centerX, centerY, radius, roundness }, weights };
    before = roundness;
  }
  throw new GaugeError('The center of this profile was not found.', 'radii', profile.length);
}

function aboutCenter(profile: readonly Place[], centerX: number, centerY: number): About {
  return profile.map(({ x, y }) => {
    const [across, up] = [x - centerX, y - centerY];
    const distance = Math.hypot(across, up);
    return { at: [1, across / distance, up / distance], z: distance };
  });
}

function requireCentered(off: number, radius: number): void {
  if (off > 0.5 * radius)
    throw new GaugeError(
      'The part runs more than half its radius off center: center it better.',
      'radii',
      off,
    );
}

function profileOf({ radii, anglesDeg }: RoundnessQuestion): readonly Place[] {
  if (anglesDeg && anglesDeg.length !== radii.length)
    throw new GaugeError(
      `${radii.length} radii but ${anglesDeg.length} angles.`,
      'anglesDeg',
      anglesDeg.length,
    );
  return radii.map((radius, i) => {
    if (!(requireFinite(radius, 'radii') > 0))
      throw new GaugeError(`A radius must be above 0; got ${radius}.`, 'radii', radius);
    const angle = (requireFinite(anglesDeg?.[i] ?? (360 * i) / radii.length, 'anglesDeg') * Math.PI) / 180;
    return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
  });
}
