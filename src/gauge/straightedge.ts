import { GaugeError, requireNotNegative } from './error.js';
import { type Covariance, type FacePoint, type Flatness, flatness } from './flatness.js';
import { fitLinear } from './regression.js';

/** The gap under a straightedge from the leaf that enters and the next that does not. */
export function feelerGap(enters: number, refuses: number): { gap: number; u: number } {
  requireNotNegative(enters, 'enters');
  if (!(refuses > enters))
    throw new GaugeError(
      `The leaf that refuses (${refuses}) must be thicker than the one that enters (${enters}).`,
      'refuses',
      refuses,
    );
  return { gap: (enters + refuses) / 2, u: (refuses - enters) / Math.sqrt(12) };
}

/** One placement of the straightedge: the gap found at each of the named points along it. */
export interface Placement {
  readonly name: string;
  readonly gaps: readonly { readonly point: number; readonly gap: number }[];
}

export interface StraightedgeQuestion {
  /** places of the face that placements name by index */
  readonly places: readonly { readonly x: number; readonly y: number }[];
  readonly placements: readonly Placement[];
  /** standard uncertainty of one gap */
  readonly u: number;
  readonly max?: number | undefined;
  readonly confidence?: number | undefined;
  readonly unit?: string | undefined;
}

export interface StraightedgeAnswer {
  readonly points: readonly FacePoint[];
  readonly flatness: Flatness;
  /** how well the placements agree with each other: standard deviation of one gap, when there is any surplus */
  readonly disagreement?: number;
  readonly words: string;
}

/**
 * Heights of a face from gaps under a straightedge laid across it in several directions, and its flatness.
 *
 * Source: own derivation; the plan of lines is that of the "Union Jack" survey of surface plates (common practice).
 * Method: each placement is a line of unknown height and tilt, gap = line − surface. Heights and lines together are one
 * least-squares problem; three far-apart places are set to zero, because tilt is no error of form.
 * The straightedge itself counts as straight. Their covariance goes into `flatness`: heights that come
 * from common lines are not independent.
 * Throws GaugeError when the placements cannot see some shape: rows and columns alone never see twist, the diagonals do.
 * Example: 3 × 3 places with 3 rows, 3 columns, 2 diagonals and gap 0 everywhere → flat.
 */
export function straightedgeSurvey(question: StraightedgeQuestion): StraightedgeAnswer {
  requirePlacements(question);
  const { places, placements, u } = question;
  const fixed = farApart(places);
  const free = places.map((_, i) => i).filter((i) => !fixed.includes(i));
  const rows = placements.flatMap((placement, line) => rowsOf(placement, line, question, free));
  const fit = fitOrExplain(rows);
  const points = places.map(({ x, y }, i) => ({
    x,
    y,
    z: free.includes(i) ? fit.coefficients[free.indexOf(i)]! : 0,
  }));
  const covariance = covarianceOf(fit.inverseGram, free, places.length);
  const form = flatness({ ...question, points, covariance });
  return {
    points,
    flatness: form,
    ...(fit.degreesOfFreedom > 0 && { disagreement: fit.residualSd }),
    words: words(fit.degreesOfFreedom, fit.residualSd, u),
  };
}

interface Row {
  readonly design: readonly number[];
  readonly y: number;
}

function rowsOf(
  placement: Placement,
  line: number,
  { places, placements }: StraightedgeQuestion,
  free: readonly number[],
): Row[] {
  const along = alongOf(placement, places);
  return placement.gaps.map(({ point, gap }, i) => {
    const heights = free.map((index) => (index === point ? -1 : 0));
    const lines = placements.flatMap((_, other) => (other === line ? [1, along[i]!] : [0, 0]));
    return { design: [...heights, ...lines], y: gap };
  });
}

/** Distance along the straightedge from its first point, scaled to 1 at the last. */
function alongOf({ gaps }: Placement, places: StraightedgeQuestion['places']): number[] {
  const start = places[gaps[0]!.point]!;
  const end = places[gaps.at(-1)!.point]!;
  const [dx, dy] = [end.x - start.x, end.y - start.y];
  return gaps.map(({ point }) => {
    const { x, y } = places[point]!;
    return ((x - start.x) * dx + (y - start.y) * dy) / (dx * dx + dy * dy);
  });
}

function fitOrExplain(rows: readonly Row[]) {
  try {
    return fitLinear(
      rows.map(({ design }) => design),
      rows.map(({ y }) => y),
    );
  } catch (error) {
    if (!(error instanceof GaugeError)) throw error;
    throw new GaugeError(
      'These placements cannot see every shape of the face. Rows and columns alone never see twist: lay the straightedge along both diagonals too.',
      'placements',
      rows.length,
    );
  }
}

function requirePlacements({ places, placements }: StraightedgeQuestion): void {
  for (const { name, gaps } of placements) {
    if (gaps.length < 3)
      throw new GaugeError(
        `${name}: two points under a straightedge say nothing; take three or more.`,
        'placements',
        gaps.length,
      );
    for (const { point, gap } of gaps) {
      if (!places[point]) throw new GaugeError(`${name}: there is no place ${point}.`, 'placements', point);
      requireNotNegative(gap, `${name}: gap`);
    }
  }
}

/** First place, the farthest from it, and the farthest from their line. */
function farApart(places: StraightedgeQuestion['places']): readonly number[] {
  const [p] = places;
  if (!p || places.length < 4)
    throw new GaugeError(`A survey needs at least 4 places; got ${places.length}.`, 'places', places.length);
  const far = mostBy(places, ({ x, y }) => Math.hypot(x - p.x, y - p.y));
  const q = places[far]!;
  const aside = mostBy(places, ({ x, y }) => Math.abs((q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x)));
  return [0, far, aside];
}

function mostBy<T>(items: readonly T[], measure: (item: T) => number): number {
  const values = items.map(measure);
  return values.indexOf(Math.max(...values));
}

/** The covariance of all heights; the three set to zero have none. */
function covarianceOf(gram: Covariance, free: readonly number[], count: number): Covariance {
  const all = Array.from({ length: count }, (_, i) => free.indexOf(i));
  return all.map((i) => all.map((j) => (i < 0 || j < 0 ? 0 : gram[i]![j]!)));
}

function words(degreesOfFreedom: number, disagreement: number, u: number): string {
  if (degreesOfFreedom === 0) return 'Just enough gaps to work out the heights; none left to check them.';
  return disagreement > 2 * u
    ? 'The placements contradict each other by more than the feelers explain: repeat them, and check that the straightedge is straight.'
    : 'The placements agree with each other.';
}
