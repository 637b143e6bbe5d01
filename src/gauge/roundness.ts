import type { Decision } from './decide.js';
import { GaugeError, requireFinite, requireNotNegative } from './error.js';
import { minimumZone } from './minimum-zone.js';
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
  /** by how much the model can be wrong for this eccentricity: e²/(2·radius) */
  readonly modelError: number;
  readonly decision?: Decision;
}

/**
 * Roundness from radii over a turn: least-squares circle (LSCI) and minimum zone circles (MZCI).
 *
 * Source: ISO 12181-1:2011 and ISO 4291:1985 (from memory): residual r − R − a·cosθ − b·sinθ.
 * Method: Householder least squares (for even angles a = 2Σx/n, b = 2Σy/n, R = Σr/n); minimum zone exact in the same
 * model by linear program.
 * Error: rounding, and the model's own e²/(2R) for eccentricity e, given as `modelError`; refused above 5 % of R.
 * Special cases: fewer than 4 radii, angles that do not go around: refused.
 * Example: 25.000 25.004 25.010 25.006 24.998 24.996 24.992 24.997 → LSCI 0.004172, MZCI 0.003950.
 */
export function roundness(question: RoundnessQuestion): Roundness {
  const readings = readingsOf(question);
  const { u, max, confidence, unit } = question;
  requireNotNegative(u, 'u');
  const fit = fitLinear(
    readings.map(({ at }) => at),
    readings.map(({ z }) => z),
  );
  const zone = minimumZone(readings);
  const circle = circleOf(zone.coefficients, zone.width);
  const modelError = modelErrorOf(circle);
  return {
    leastSquares: circleOf(fit.coefficients, Math.max(...fit.residuals) - Math.min(...fit.residuals)),
    minimumZone: circle,
    u: 2 * u * Math.hypot(...zone.contacts.map(({ weight }) => weight)),
    modelError,
    ...(max !== undefined && {
      decision: decideSpread({ spread: zone.width, u, count: readings.length, max, confidence, unit }),
    }),
  };
}

function readingsOf({ radii, anglesDeg }: RoundnessQuestion) {
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
    return { at: [1, Math.cos(angle), Math.sin(angle)] as const, z: radius };
  });
}

function circleOf([radius, centerX, centerY]: readonly number[], width: number): Circle {
  return { centerX: centerX!, centerY: centerY!, radius: radius!, roundness: width };
}

function modelErrorOf({ centerX, centerY, radius }: Circle): number {
  const off = Math.hypot(centerX, centerY);
  if (off > 0.05 * radius)
    throw new GaugeError(
      `The part runs ${off} off center, more than 5 % of its radius: center it better.`,
      'radii',
      off,
    );
  return off ** 2 / (2 * radius);
}
