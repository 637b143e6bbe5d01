import { EngineError, requirePositive, requireWithin } from './error.js';

export interface CrankGeometry {
  readonly boreMm: number;
  readonly strokeMm: number;
  /** connecting rod, center to center */
  readonly rodMm: number;
}

/** A rod shorter than the crank throw cannot turn; under 1.2 throws is no engine but a slip of the pen. */
export function requireCrank({ boreMm, strokeMm, rodMm }: CrankGeometry): void {
  requirePositive(boreMm, 'bore');
  requirePositive(strokeMm, 'stroke');
  requirePositive(rodMm, 'rod');
  if (rodMm < 0.6 * strokeMm)
    throw new EngineError(
      `the rod (${rodMm} mm) must be at least 0.6 of the stroke (${strokeMm} mm); it is measured center to center.`,
      'rod',
      rodMm,
      { least: 0.6 * strokeMm, unit: 'mm' },
    );
}

/**
 * How far the piston stands below top, mm, at a crank angle after top.
 *
 * Source: slider-crank without offset, *Internal Combustion Engine Fundamentals* 1988, eq. 2.5. x = R(1 − cos θ) + L −
 * √(L² − R² sin² θ). Exact for a pin and a crank on the bore's axis; an offset pin moves it by a few hundredths of a
 * millimeter. Example: R 31, L 108.5 mm (L/R 3.5), 90°: 35.52 mm, 1.1459 throws.
 */
export function pistonTravelMm(
  { strokeMm, rodMm }: Pick<CrankGeometry, 'strokeMm' | 'rodMm'>,
  angleDeg: number,
): number {
  const throwMm = strokeMm / 2;
  const angle = (angleDeg * Math.PI) / 180;
  const across = throwMm * Math.sin(angle);
  return throwMm * (1 - Math.cos(angle)) + rodMm - Math.sqrt(rodMm * rodMm - across * across);
}

/**
 * Crank angle after top, degrees (0 to 180), at which the piston stands this far below top. The inverse of
 * `pistonTravelMm`, closed form (law of cosines). Throws EngineError outside the stroke.
 * Example: stroke 62, rod 108.5 mm, 6.35 mm (1/4 in) down: 33.1°.
 */
export function angleAtTravelDeg(
  { strokeMm, rodMm }: Pick<CrankGeometry, 'strokeMm' | 'rodMm'>,
  travelMm: number,
): number {
  requireWithin(travelMm, 0, strokeMm, 'travel', 'mm');
  const r = strokeMm / 2;
  const d = r + rodMm - travelMm;
  const cosine = (r * r + d * d - rodMm * rodMm) / (2 * r * d);
  return (Math.acos(Math.min(1, Math.max(-1, cosine))) * 180) / Math.PI;
}

/** Swept volume of one cylinder, cm³: π/4·bore²·stroke. Example: 65 × 62 mm: 205.7 cm³. */
export function displacementCc({ boreMm, strokeMm }: Omit<CrankGeometry, 'rodMm'>): number {
  requirePositive(boreMm, 'bore');
  requirePositive(strokeMm, 'stroke');
  return ((Math.PI / 4) * boreMm * boreMm * strokeMm) / 1000;
}

/**
 * Volume over the piston, cm³, at a crank angle after top: clearance + bore area × travel (ICEF eq. 2.4).
 * Example: ratio 8, L/R 3.5, 90°: 5.0106 times the clearance volume.
 */
export function cylinderVolumeCc(crank: CrankGeometry, compressionRatio: number, angleDeg: number): number {
  const swept = displacementCc(crank);
  return swept / (compressionRatio - 1) + (swept * pistonTravelMm(crank, angleDeg)) / crank.strokeMm;
}
