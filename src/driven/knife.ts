import { requirePositive, requireWithin } from './error.js';

const steelGramsPerCubicMillimeter = 7.85e-3;

export interface Bevel {
  readonly thicknessMm: number;
  readonly lengthMm: number;
  /** between the ground face and the flat one, degrees */
  readonly angleDegrees: number;
  /** taken off the width of the knife so that the edge is sharp again */
  readonly backMm: number;
}

export interface Ground {
  /** width of the ground face */
  readonly faceMm: number;
  readonly grams: number;
}

/**
 * What sharpening takes off a knife ground on one side.
 * Source: own geometry. Method: the edge moves back by `backMm` while the angle stays: a slice of the full thickness,
 * length × thickness × back, in steel of 7.85 g/cm³; the ground face is thickness/sin(angle) wide.
 * Example: 6 mm thick, 150 mm long, 30°, back by 1 mm: face 12 mm, 7.1 g.
 */
export function ground({ thicknessMm, lengthMm, angleDegrees, backMm }: Bevel): Ground {
  const angle = (requireWithin(angleDegrees, 5, 90, 'angle') * Math.PI) / 180;
  const slice =
    requirePositive(thicknessMm, 'thickness') *
    requirePositive(lengthMm, 'length') *
    requirePositive(backMm, 'back');
  return { faceMm: thicknessMm / Math.sin(angle), grams: steelGramsPerCubicMillimeter * slice };
}

/** How many times more a knife can be ground before it is narrower than allowed. */
export function grindsLeft(widthMm: number, leastMm: number, backMm: number): number {
  return Math.max(
    0,
    Math.floor(
      (requirePositive(widthMm, 'width') - requirePositive(leastMm, 'least')) /
        requirePositive(backMm, 'back') +
        1e-9,
    ),
  );
}
