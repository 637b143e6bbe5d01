import type { Decision } from './decide.js';
import { GaugeError, requireFinite, requireNotNegative, requirePositive } from './error.js';
import { decideExtreme, decideSpread } from './spread.js';

/** Diameters of one bore at depths × directions, everything in one unit of length. */
export interface BoreReadings {
  /** depths below the top face, in the order of the rows */
  readonly depths: readonly number[];
  /** in the order of the columns: "along the crank", "across the crank" */
  readonly directions: readonly string[];
  /** one row a depth, one figure a direction */
  readonly diameters: readonly (readonly number[])[];
  /** size when new, or the size it was last bored to */
  readonly standard: number;
  /** standard uncertainty of one reading that differs from reading to reading */
  readonly u: number;
  /** standard uncertainty common to all readings (setting ring, zero); it drops out of taper and out-of-round */
  readonly common?: number;
  readonly limits?: BoreLimits;
  readonly confidence?: number;
  /** only for the words */
  readonly unit?: string;
}

export interface BoreLimits {
  /** largest diameter less standard */
  readonly wear?: number | undefined;
  readonly taper?: number | undefined;
  readonly outOfRound?: number | undefined;
}

export interface BoreCell {
  readonly depth: number;
  readonly direction: string;
  readonly diameter: number;
  /** diameter less standard */
  readonly growth: number;
}

export interface BoreMap {
  /** row by row, for a table or a picture */
  readonly cells: readonly BoreCell[];
  readonly largest: BoreCell;
  readonly smallest: BoreCell;
  readonly wear: number;
  /** by depth: largest less smallest over the directions */
  readonly outOfRoundByDepth: readonly number[];
  /** by direction: largest less smallest over the depths */
  readonly taperByDirection: readonly number[];
  readonly outOfRound: { readonly value: number; readonly depth: number };
  readonly taper: { readonly value: number; readonly direction: string };
  readonly decisions: { readonly wear?: Decision; readonly taper?: Decision; readonly outOfRound?: Decision };
  readonly cautions: readonly string[];
}

/**
 * Wear, taper and out-of-round of a bore from readings at depths × directions.
 *
 * Source: definitions are common practice in the trade; decisions by `decideSpread` and `decideExtreme`, because each
 * figure is picked from several readings and so reads high by noise alone.
 * Special cases: one depth gives no taper, one direction no out-of-round; their decisions are left out and said.
 * Throws GaugeError for an incomplete table (naming the cell) or a diameter more than 5 % off standard (a slip of the
 * pen, another engine, or another unit).
 * Example: 2 depths × 2 directions 2.5650 2.5635 / 2.5630 2.5628, standard 2.5625 → wear 0.0025, out-of-round 0.0015,
 * taper 0.0020.
 */
export function boreMap(given: BoreReadings): BoreMap {
  const cells = cellsOf(given);
  const { depths, directions, diameters } = given;
  const outOfRoundByDepth = diameters.map(rangeOf);
  const taperByDirection = directions.map((_, j) => rangeOf(diameters.map((row) => row[j]!)));
  const largest = cells.reduce((worst, cell) => (cell.diameter > worst.diameter ? cell : worst));
  requireNotUnder(largest, given);
  const smallest = cells.reduce((least, cell) => (cell.diameter < least.diameter ? cell : least));
  const out = worstOf(outOfRoundByDepth);
  const taper = worstOf(taperByDirection);
  const figures = {
    wear: largest.growth,
    outOfRound: { value: out.value, depth: depths[out.at]! },
    taper: { value: taper.value, direction: directions[taper.at]! },
  };
  return {
    cells,
    largest,
    smallest,
    ...figures,
    outOfRoundByDepth,
    taperByDirection,
    decisions: decisionsOf(given, figures),
    cautions: cautionsOf(given),
  };
}

function cellsOf({ depths, directions, diameters, standard, u, common = 0 }: BoreReadings): BoreCell[] {
  requirePositive(standard, 'standard');
  requireNotNegative(u, 'u');
  requireNotNegative(common, 'common');
  if (depths.length === 0 || directions.length === 0)
    throw new GaugeError('A bore map needs at least one depth and one direction.', 'depths');
  if (diameters.length !== depths.length)
    throw new GaugeError(`${depths.length} depths but ${diameters.length} rows of diameters.`, 'diameters');
  return depths.flatMap((depth, i) =>
    directions.map((direction, j) => {
      const where = `diameter at depth ${requireFinite(depth, 'depths')}, ${direction}`;
      const diameter = requireNear(diameters[i]![j], standard, where);
      return { depth, direction, diameter, growth: diameter - standard };
    }),
  );
}

function requireNear(diameter: number | undefined, standard: number, where: string): number {
  if (diameter === undefined) throw new GaugeError(`The ${where} is missing.`, 'diameters');
  if (!(Math.abs(requireFinite(diameter, where) / standard - 1) <= 0.05))
    throw new GaugeError(
      `The ${where} is ${diameter}, more than 5 % off the standard ${standard}: check unit and figure.`,
      'diameters',
      diameter,
    );
  return diameter;
}

/** A bore does not grow smaller: all of it under standard by more than the tool's doubt is another standard. */
function requireNotUnder({ growth, diameter }: BoreCell, { u, common = 0 }: BoreReadings): void {
  if (growth >= -2 * Math.hypot(u, common)) return;
  throw new GaugeError(
    'Every diameter lies under the standard bore: the standard is another one, or the gauge was set wrong.',
    'standard',
    diameter,
  );
}

const rangeOf = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

function worstOf(values: readonly number[]): { value: number; at: number } {
  const value = Math.max(...values);
  return { value, at: values.indexOf(value) };
}

function decisionsOf(
  given: BoreReadings,
  { wear, taper, outOfRound }: Pick<BoreMap, 'wear' | 'taper' | 'outOfRound'>,
): BoreMap['decisions'] {
  const { u, common = 0, limits = {}, confidence, unit } = given;
  const count = given.depths.length * given.directions.length;
  const spread = (value: number, max: number, eachOf: number) =>
    decideSpread({ spread: value, u, count, max, confidence, unit, eachOf });
  const total = Math.hypot(u, common);
  return {
    ...(limits.wear !== undefined && {
      wear: decideExtreme({ value: wear, u: total, count, limit: { max: limits.wear }, confidence, unit }),
    }),
    ...(limits.taper !== undefined &&
      given.depths.length > 1 && { taper: spread(taper.value, limits.taper, given.depths.length) }),
    ...(limits.outOfRound !== undefined &&
      given.directions.length > 1 && {
        outOfRound: spread(outOfRound.value, limits.outOfRound, given.directions.length),
      }),
  };
}

function cautionsOf({ depths, directions }: BoreReadings): string[] {
  return [
    ...(depths.length < 2
      ? ['One depth only: taper was not measured, and taper may hide above and below.']
      : depths.length < 3
        ? ['Fewer than three depths: taper may hide between them.']
        : []),
    ...(directions.length < 2 ? ['One direction only: out-of-round was not measured.'] : []),
    'A two-point bore gauge cannot see a bore with three lobes: the diameter is the same all around.',
  ];
}
