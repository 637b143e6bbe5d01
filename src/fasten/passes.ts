import { FastenError, positive } from './error.js';

/** One go over all bolts at one torque. */
export interface Pass {
  /** 1-based; the final round counts on */
  readonly pass: number;
  /** part of the target torque */
  readonly part: number;
  readonly torqueNm: number;
  /** a go in circle at full torque, until nothing turns */
  readonly isRound: boolean;
}

/** Sets of parts in use, with their sources. The maker's own steps go before all of them. */
export const passSchemes = [
  { id: 'half-full', parts: [0.5, 1], finalRound: false, source: 'common practice for small-engine heads' },
  {
    id: 'thirds',
    parts: [0.3, 0.7, 1],
    finalRound: true,
    source: 'within ASME PCC-1, Table 2: 20–30, 50–70, 100 %, then in circle (from memory)',
  },
  {
    id: '30-60-100',
    parts: [0.3, 0.6, 1],
    finalRound: true,
    source: 'a published flange variant of ASME PCC-1',
  },
  { id: '25-50-100', parts: [0.25, 0.5, 1], finalRound: false, source: 'a published flange variant' },
  {
    id: '70-100',
    parts: [0.7, 1],
    finalRound: false,
    source: 'US Army TB 9-2320-279-13&P-2, above 30 lbf·ft',
  },
] as const;

function requireParts(parts: readonly number[]): void {
  const words = parts.join(', ');
  if (parts.length === 0)
    throw new FastenError('parts: at least one part is needed; none was given', 'parts');
  for (const part of parts) {
    if (!(part > 0 && part <= 1))
      throw new FastenError(`parts must lie above 0 and up to 1; ${part} was given`, 'parts');
  }
  if (parts.some((part, i) => i > 0 && part <= parts[i - 1]!)) {
    throw new FastenError(`parts must rise from pass to pass; ${words} was given`, 'parts');
  }
  if (parts.at(-1) !== 1)
    throw new FastenError(`the last part must be 1, the full torque; ${words} was given`, 'parts');
}

/**
 * The passes to a target torque: each part of it in turn, and a round at full torque if asked for.
 * Throws FastenError unless the parts rise and end at 1.
 * Example: 140 in-lb in parts 0.5, 1 gives 70 then 140 in-lb.
 */
export function passes(targetNm: number, parts: readonly number[], finalRound: boolean): readonly Pass[] {
  positive(targetNm, 'torque', 'N·m');
  requireParts(parts);
  const steps = parts.map((part, i) => ({ pass: i + 1, part, torqueNm: part * targetNm, isRound: false }));
  const round = { pass: parts.length + 1, part: 1, torqueNm: targetNm, isRound: true };
  return finalRound ? [...steps, round] : steps;
}

/** One bolt of one pass. */
export interface TighteningStep extends Pass {
  readonly hole: number;
}

/**
 * Every turn of the wrench in order: each pass over all holes in tightening order; the final round in `around`, the
 * holes in turn, if that is given.
 */
export function tighteningSteps(
  order: readonly number[],
  each: readonly Pass[],
  around: readonly number[] = order,
): readonly TighteningStep[] {
  return each.flatMap((pass) => (pass.isRound ? around : order).map((hole) => ({ ...pass, hole })));
}

/** The order in which to slacken: the tightening order from its end. Common practice. */
export function looseningOrder(order: readonly number[]): readonly number[] {
  return [...order].reverse();
}

export interface LooseningStep {
  readonly go: number;
  readonly hole: number;
  readonly act: string;
}

const looseningActs = ['a quarter turn', 'until it is finger loose', 'out'] as const;

/**
 * Slackening in steps, so that the last tight bolt does not bend the head: a quarter turn all over, then finger
 * loose all over, then out. Common practice; always with the engine cold.
 */
export function looseningSteps(order: readonly number[]): readonly LooseningStep[] {
  const back = looseningOrder(order);
  return looseningActs.flatMap((act, i) => back.map((hole) => ({ go: i + 1, hole, act })));
}
