import { ListenError } from './error.js';

/** What must be known of an engine to turn a firing rate into a speed. */
export interface EngineKind {
  readonly strokes: 2 | 4;
  readonly cylinders: number;
  /** crank speeds to look among; the usual ones of the kind when left out */
  readonly range?: { readonly lowRpm: number; readonly highRpm: number };
}

/** An engine with its range settled and the arithmetic of its cycle. */
export interface Cycle {
  readonly strokes: 2 | 4;
  readonly cylinders: number;
  readonly lowRpm: number;
  readonly highRpm: number;
}

const mostCylinders = 16;

/**
 * Usual crank speeds: from a struggling idle to the overspeed that a run-up must still see.
 * Source: trade judgement, no source, for the ends; governed and idle speeds between them are common practice.
 */
function usualRange(strokes: 2 | 4, cylinders: number): { lowRpm: number; highRpm: number } {
  if (strokes === 2) return { lowRpm: 1400, highRpm: 15_500 };
  return cylinders === 1 ? { lowRpm: 560, highRpm: 5600 } : { lowRpm: 450, highRpm: 9000 };
}

/** Throws a ListenError when the strokes, the cylinders or the range name no engine. */
export function cycleOf({ strokes, cylinders, range }: EngineKind): Cycle {
  if (strokes !== 2 && strokes !== 4)
    throw new ListenError(`An engine has 2 or 4 strokes; got ${strokes}.`, 'strokes', strokes);
  if (!Number.isInteger(cylinders) || cylinders < 1 || cylinders > mostCylinders)
    throw new ListenError(
      `cylinders must be a whole number from 1 to ${mostCylinders}; got ${cylinders}.`,
      'cylinders',
      cylinders,
    );
  const { lowRpm, highRpm } = range ?? usualRange(strokes, cylinders);
  if (!(lowRpm >= 100 && highRpm <= 30_000 && highRpm >= 1.5 * lowRpm))
    throw new ListenError(
      `The range of speeds must lie within 100 to 30000 rpm and its top be at least 1.5 times its bottom; got ${lowRpm} to ${highRpm}.`,
      'range',
      range,
    );
  return { strokes, cylinders, lowRpm, highRpm };
}

/** Working cycles a second of one cylinder: rpm/120 with four strokes, rpm/60 with two. */
export const cycleHz = ({ strokes }: Cycle, rpm: number): number => rpm / (30 * strokes);

export const rpmOfCycle = ({ strokes }: Cycle, hz: number): number => hz * 30 * strokes;

/** Firings a second of the whole engine: cylinders × rpm/120, or × rpm/60 with two strokes. */
export const firingHz = (cycle: Cycle, rpm: number): number => cycle.cylinders * cycleHz(cycle, rpm);
