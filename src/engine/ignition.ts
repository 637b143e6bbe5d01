import { EngineError, requireNotNegative, requirePositive, requireWithin } from './error.js';

/**
 * Degrees of crank by which the spark moves when the flywheel sits so far round from its keyway.
 *
 * Method: arc over radius at the shaft where the offset is seen: 180/π·offset/(diameter/2). Exact for an offset measured
 * along the surface; across a chord the difference is under 0.5 % up to 20°. On a taper measure the diameter where the
 * offset is seen. Throws EngineError for an offset larger than the shaft's radius: that key is gone, not off.
 * Example: 1 mm at a 20 mm shaft: 5.7°.
 */
export function sparkShiftDeg(offsetMm: number, shaftMm: number): number {
  const radius = requirePositive(shaftMm, 'shaft') / 2;
  if (requireNotNegative(offsetMm, 'offset') > radius)
    throw new EngineError(
      `an offset over half the shaft (${radius} mm) is no shifted key; got ${offsetMm} mm.`,
      'offset',
      offsetMm,
      { least: 0, most: radius, unit: 'mm' },
    );
  return (180 / Math.PI) * (offsetMm / radius);
}

/** The offset at the shaft that a shift of the spark makes, mm. Example: 10° at a 20 mm shaft: 1.75 mm. */
export function keyOffsetMm(shiftDeg: number, shaftMm: number): number {
  requireWithin(shiftDeg, 0, 57, 'shift', '°');
  return ((Math.PI / 180) * shiftDeg * requirePositive(shaftMm, 'shaft')) / 2;
}

export interface CoilGap {
  /** with the flywheel where the coil was set */
  readonly setMm: number;
  /** with run-out and shaft play against the coil */
  readonly leastMm: number;
  readonly mostMm: number;
}

/**
 * The coil's air gap set over cards of a thickness, and what run-out and shaft play leave of it.
 *
 * Method: so many cards under both legs, magnets pulling the coil down on them; half of the run-out and half of the
 * shaft's side play come and go on either side. Exact for stiff cards; a soft one gives some hundredths of a millimeter
 * under the pull. Example: one 0.30 mm card, run-out 0.10, play 0.06: 0.30, from 0.22 to 0.38 mm.
 */
export function coilGap(cardMm: number, cards: number, runOutMm = 0, shaftPlayMm = 0): CoilGap {
  requirePositive(cards, 'cards');
  const setMm = requirePositive(cardMm, 'card') * cards;
  const wander = (requireNotNegative(runOutMm, 'runOut') + requireNotNegative(shaftPlayMm, 'shaftPlay')) / 2;
  return { setMm, leastMm: setMm - wander, mostMm: setMm + wander };
}

/** Gaps found in makers' sheets of the class: 0.006 to 0.014 in (public manual excerpts, read second-hand). */
export const classCoilGapMm = { least: 0.1524, most: 0.3556 } as const;
