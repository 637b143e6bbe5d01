import { DrivenError, requireNotNegative, requirePositive, requireWithin } from './error.js';

/** Two pulleys by their pitch diameters and the distance of their axes, all in millimeters. */
export interface Pulleys {
  readonly oneMm: number;
  readonly otherMm: number;
  readonly centersMm: number;
}

export interface OpenBelt {
  /** along the pitch line */
  readonly lengthMm: number;
  /** of the belt round the smaller pulley, degrees */
  readonly wrapDegrees: number;
  /** of the free belt between the pulleys */
  readonly spanMm: number;
}

/**
 * Length, wrap and free span of an open belt.
 * Source: any machine-design textbook (Shigley, 9th ed., equations 17-1 and 17-2). Exact, not the usual series.
 * Method: straight tangents and two arcs; sin α = (D − d)/2C, L = 2C·cos α + D(π/2 + α) + d(π/2 − α).
 * Bound: refuses centers nearer than the pulleys' radii allow.
 * Example: 120 and 60 mm at 300 mm: 885.7 mm.
 */
export function openBelt({ oneMm, otherMm, centersMm }: Pulleys): OpenBelt {
  const [d, D] = [requirePositive(oneMm, 'one'), requirePositive(otherMm, 'other')].toSorted(
    (a, b) => a - b,
  ) as [number, number];
  const c = requirePositive(centersMm, 'centers');
  if (c <= (D + d) / 2)
    throw new DrivenError(
      `the centers must lie farther apart than ${Number(((D + d) / 2).toPrecision(6))} mm, or the pulleys touch.`,
      'centers',
      c,
    );
  const alpha = Math.asin((D - d) / (2 * c));
  const spanMm = c * Math.cos(alpha);
  return {
    lengthMm: 2 * spanMm + D * (Math.PI / 2 + alpha) + d * (Math.PI / 2 - alpha),
    wrapDegrees: ((Math.PI - 2 * alpha) * 180) / Math.PI,
    spanMm,
  };
}

/**
 * The distance of the centers for which a belt of a given pitch length fits, mm.
 * Method: the length rises with the distance by 2·cos α, so Newton's steps settle in a few turns; to 1e-9 mm.
 * Throws DrivenError where the belt is too short for the pulleys to stand clear of each other.
 * Example: 188 and 279 mm with a belt of 2891 mm: 1076.5 mm.
 */
export function centersFor(lengthMm: number, oneMm: number, otherMm: number): number {
  const least = ((requirePositive(oneMm, 'one') + requirePositive(otherMm, 'other')) / 2) * (1 + 1e-9);
  const lengthAt = (centersMm: number) => openBelt({ oneMm, otherMm, centersMm });
  if (requirePositive(lengthMm, 'length') <= lengthAt(least).lengthMm)
    throw new DrivenError(
      `a belt of ${Number(lengthMm.toPrecision(6))} mm is too short for these pulleys; the least is ${Math.ceil(lengthAt(least).lengthMm)} mm.`,
      'length',
      lengthMm,
    );
  let c = Math.max(least, (lengthMm - (Math.PI / 2) * (oneMm + otherMm)) / 2);
  for (let i = 0; i < 100; i += 1) {
    const { lengthMm: has, spanMm } = lengthAt(c);
    const next = Math.max(least, c - (has - lengthMm) / ((2 * spanMm) / c));
    if (Math.abs(next - c) < 1e-10) return next;
    c = next;
  }
  return c;
}

/**
 * Tension of a free span from a force that bends it at its middle, N.
 * Source: a string drawn aside, statics: T = F·t/(4h). With h = t/64 (a sixty-fourth of the span, the belt trade's own
 * rule) T = 16·F. Validity: the small deflection of a slack-free belt; the belt's own stiffness makes a new V-belt
 * read a little tight. Example: 10 N bending 500 mm by 7.8 mm: 160 N.
 */
export function tensionFromDeflection(forceN: number, spanMm: number, deflectionMm: number): number {
  requirePositive(deflectionMm, 'deflection');
  if (deflectionMm > requirePositive(spanMm, 'span') / 16)
    throw new DrivenError(
      `a deflection over a sixteenth of the span (${Number((spanMm / 16).toPrecision(3))} mm) is no small one: press less.`,
      'deflection',
      deflectionMm,
    );
  return (requirePositive(forceN, 'force') * spanMm) / (4 * deflectionMm);
}

/**
 * How much of its pull a V-belt keeps on a smaller wrap than half a turn: the arc-of-contact factor.
 * Source: Shigley, 9th ed., Table 17-13 for V-belts on two V-pulleys, its quadratic fit (from memory).
 * Validity: 90° to 180°. Example: 150°: 0.925.
 */
export function wrapFactor(wrapDegrees: number): number {
  const wrap = requireWithin(wrapDegrees, 90, 180, 'wrap');
  return 0.143543 + 0.007468 * wrap - 0.000015052 * wrap ** 2;
}

export interface BeltLoad {
  readonly powerW: number;
  readonly beltMetersPerSecond: number;
  readonly wrapDegrees: number;
  readonly belts: number;
  /** of one belt, kg/m; it is thrown outward and must be held in */
  readonly massPerMeterKg: number;
}

/**
 * Static tension that one V-belt needs to carry its load without slip, N.
 * Source: the belt trade's static tension formula (from memory): T = 500·(2.5 − K)/K · P/(n·v) + m·v², P in kW.
 * Method: 2.5 stands for a ratio of the two strands' pulls of 5 on half a turn (statics: 0.75 of the pull); K lowers
 * it with the wrap; the belt's own centrifugal force must be held in on top.
 * Validity: drives that run steadily; a jerking load wants up to half as much again (common practice).
 * Example: 3 kW, 20 m/s, 180°, one belt of 0.11 kg/m: 156.5 N.
 */
export function staticTension({
  powerW,
  beltMetersPerSecond: v,
  wrapDegrees,
  belts,
  massPerMeterKg,
}: BeltLoad): number {
  const k = wrapFactor(wrapDegrees);
  const n = requirePositive(belts, 'belts');
  const pull =
    (500 * ((2.5 - k) / k) * (requirePositive(powerW, 'power') / 1000)) / (n * requirePositive(v, 'speed'));
  return pull + requireNotNegative(massPerMeterKg, 'mass') * v ** 2;
}

/** How far beyond its ratio a pulley may seem to turn: tachometers and pitch diameters are not exact. */
const seemsFaster = 0.05;

/**
 * The share of its speed that a belt loses: 0 none, 1 the driven pulley stands.
 * Source: Machinery's Handbook, belts: without slip speeds are inversely as the pitch diameters.
 * Method: 1 − n₂·d₂/(n₁·d₁). Refuses a driven pulley more than a twentieth faster than the ratio: the diameters or the
 * order of the pulleys are wrong.
 * Example: 3400 rpm on 2.5 and 6 in, 1240 rpm driven: 0.125.
 */
export function beltSlip({
  oneMm,
  otherMm,
  oneRpm,
  otherRpm,
}: Omit<Pulleys, 'centersMm'> & { readonly oneRpm: number; readonly otherRpm: number }): number {
  const without =
    (requirePositive(oneRpm, 'speed') * requirePositive(oneMm, 'one')) / requirePositive(otherMm, 'other');
  const slip = 1 - requireNotNegative(otherRpm, 'driven') / without;
  if (slip < -seemsFaster)
    throw new DrivenError(
      `it cannot turn faster than ${Math.round(without)} rpm by these pulleys: look at the diameters and which one drives.`,
      'driven',
      otherRpm,
    );
  return slip;
}
