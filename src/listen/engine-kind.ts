import { ListenError } from './error.js';

/** What must be known of an engine to turn a firing rate into a speed. */
export interface EngineKind {
  readonly strokes: 2 | 4;
  readonly cylinders: number;
  /** crank speeds that this engine can have, from its idle to its governor; the usual ones of the kind when left out */
  readonly range?: { readonly lowRpm: number; readonly highRpm: number };
  /** what it drives by a belt, where that is to be heard as well */
  readonly belt?: Belt;
}

export interface Belt {
  /** turns of the engine to one of the driven pulley, without slip: driven over driving diameter */
  readonly ratio: number;
  /** what is heard of the driven shaft in a turn: the blades, knives or teeth that it carries */
  readonly beats: number;
}

/** An engine with its range settled and the arithmetic of its cycle. */
export interface Cycle {
  readonly strokes: 2 | 4;
  readonly cylinders: number;
  /** looked among */
  readonly lowRpm: number;
  readonly highRpm: number;
  /** what was said of this very engine: beyond it a speed needs the more evidence the farther it lies */
  readonly said?: { readonly lowRpm: number; readonly highRpm: number };
  /** the engine was heard before and runs on near to that speed: which multiple is meant is known */
  readonly runsOn?: true;
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

/** A governor that is out, or an idle that is set wrong, lies outside what was said by as much and seldom more. */
const beyond = 1.3;
/** A speed this far outside, in logarithms, needs half as much evidence again. Trade judgement, no source. */
const softness = 0.11;

/**
 * Where nothing was said, engines of many cylinders turn at these speeds most of the time: a generator’s, a tractor’s, a
 * car’s. Cylinders that are alike leave little else to tell a speed from twice it. Trade judgement, no source.
 */
const mostly = { lowRpm: 700, highRpm: 3800 };
/** At twice the usual top a speed needs two and a half times the evidence: rare, not absurd. */
const mostlySoftness = 0.5;

/** What the range that was said, or else is usual, makes of a speed: 1 within it, less the farther outside. */
export function expected({ said, cylinders }: Cycle, rpm: number): number {
  if (said === undefined && cylinders === 1) return 1;
  const { lowRpm, highRpm } = said ?? mostly;
  const outside = Math.max(0, Math.log(lowRpm / rpm), Math.log(rpm / highRpm));
  return Math.exp(-0.5 * (outside / (said ? softness : mostlySoftness)) ** 2);
}

/**
 * How much likelier it is that a speed within what was said is this engine’s, as a logarithm of odds: what is none falls
 * anywhere in the usual range, and into a narrow one seldom. 0 where nothing was said.
 */
export function narrowing({ said, strokes, cylinders }: Cycle): number {
  if (said === undefined) return 0;
  const usual = usualRange(strokes, cylinders);
  const width = ({ lowRpm, highRpm }: { lowRpm: number; highRpm: number }) => Math.log(highRpm / lowRpm);
  return Math.max(0, Math.log(width(usual) / width(said)));
}

/** Throws a ListenError when the strokes, the cylinders, the range or the belt name no engine. */
export function cycleOf({ strokes, cylinders, range, belt }: EngineKind): Cycle {
  if (strokes !== 2 && strokes !== 4)
    throw new ListenError(`An engine has 2 or 4 strokes; got ${strokes}.`, 'strokes', strokes);
  if (!Number.isInteger(cylinders) || cylinders < 1 || cylinders > mostCylinders)
    throw new ListenError(
      `cylinders must be a whole number from 1 to ${mostCylinders}; got ${cylinders}.`,
      'cylinders',
      cylinders,
    );
  if (belt && !(belt.ratio >= 0.1 && belt.ratio <= 20))
    throw new ListenError(
      `The ratio of a belt drive must lie between 0.1 and 20; got ${belt.ratio}.`,
      'belt',
      belt.ratio,
    );
  if (belt && !(Number.isInteger(belt.beats) && belt.beats >= 1 && belt.beats <= 40))
    throw new ListenError(
      `The driven shaft gives 1 to 40 beats a turn, a whole number; got ${belt.beats}.`,
      'belt',
      belt.beats,
    );
  if (range === undefined) return { strokes, cylinders, ...usualRange(strokes, cylinders) };
  const { lowRpm, highRpm } = range;
  if (!(lowRpm >= 100 && highRpm <= 30_000 && highRpm > lowRpm))
    throw new ListenError(
      `The range of speeds must lie within 100 to 30000 rpm, the lower one first; got ${lowRpm} to ${highRpm}.`,
      'range',
      range,
    );
  return { strokes, cylinders, lowRpm: lowRpm / beyond, highRpm: highRpm * beyond, said: range };
}

/** Working cycles a second of one cylinder: rpm/120 with four strokes, rpm/60 with two. */
export const cycleHz = ({ strokes }: Cycle, rpm: number): number => rpm / (30 * strokes);

export const rpmOfCycle = ({ strokes }: Cycle, hz: number): number => hz * 30 * strokes;

/** Firings a second of the whole engine: cylinders × rpm/120, or × rpm/60 with two strokes. */
export const firingHz = (cycle: Cycle, rpm: number): number => cycle.cylinders * cycleHz(cycle, rpm);
