import { type Decision, decide, type Limit } from './decide.js';
import { GaugeError, requireFinite, requireNotNegative, requirePositive } from './error.js';

/** End play and the gaskets or shims that set it, everything in one unit of length. */
export interface ThicknessQuestion {
  /** play as measured with `fitted` in place */
  readonly measured: number;
  readonly u: number;
  /** thickness in place when it was measured; 0 for a dry trial without any */
  readonly fitted: number;
  readonly offered: readonly number[];
  /** a gasket under the cover opens the play as it grows; a shim on the shaft closes it */
  readonly kind: 'gasket' | 'shim';
  /** how many shims may be stacked; gaskets are never stacked */
  readonly atMost?: number | undefined;
  /** standard uncertainty of a thickness once clamped (gaskets crush) */
  readonly uThickness?: number | undefined;
  readonly limit: Limit;
  readonly confidence?: number | undefined;
  readonly unit?: string | undefined;
}

export interface ThicknessChoice {
  readonly stack: readonly number[];
  readonly thickness: number;
  /** end play to expect with it */
  readonly play: number;
  readonly decision: Decision;
}

export interface ThicknessAnswer {
  /** as it stands now */
  readonly now: Decision;
  /** most likely to conform first; between equals the one nearest the middle */
  readonly choices: readonly ThicknessChoice[];
  /** the first of them, unless no stack has an even chance */
  readonly choice?: ThicknessChoice;
  readonly words: string;
}

/**
 * Which gasket or shim brings an end play inside its range.
 *
 * Source: common practice; the change of play equals the change of thickness. Method: every single gasket, or every
 * stack of up to `atMost` shims, decided with the combined uncertainty of measurement and thickness.
 * Special cases: when nothing offered has an even chance, no choice is made. The play is measured again after fitting,
 * always: crush and seating are only estimated.
 * Throws GaugeError for no thickness offered, or a negative one.
 * Example: play 0.001 in with gasket 0.015, offered 0.005 0.009 0.015 0.020, range 0.002 … 0.008 → 0.020, play 0.006.
 */
export function chooseThickness(question: ThicknessQuestion): ThicknessAnswer {
  requireFinite(question.measured, 'measured');
  requireNotNegative(question.fitted, 'fitted');
  if (question.offered.length === 0) throw new GaugeError('No thickness is offered.', 'offered', 0);
  for (const thickness of question.offered) requirePositive(thickness, 'offered');
  const { measured, u, limit, confidence, unit } = question;
  const now = decide({ value: measured, u, limit, confidence, unit });
  const choices = stacksOf(question)
    .map((stack) => choiceOf(question, stack))
    .sort((a, b) => rank(b) - rank(a) || b.decision.margin - a.decision.margin);
  const best = choices[0];
  const choice = best && best.decision.probabilityOfConformity > 0.5 ? best : undefined;
  return { now, choices, ...(choice && { choice }), words: words(question, now, choice) };
}

/** Chances that differ by less than a hundredth are equal at the bench. */
const rank = ({ decision }: ThicknessChoice) => Math.round(100 * decision.probabilityOfConformity);

function choiceOf(question: ThicknessQuestion, stack: readonly number[]): ThicknessChoice {
  const { measured, fitted, kind, u, uThickness = 0, limit, confidence, unit } = question;
  const thickness = stack.reduce((total, one) => total + one, 0);
  const change = kind === 'gasket' ? thickness - fitted : fitted - thickness;
  const same = thickness === fitted;
  const play = measured + change;
  const total = Math.hypot(u, same ? 0 : uThickness * Math.SQRT2);
  return { stack, thickness, play, decision: decide({ value: play, u: total, limit, confidence, unit }) };
}

function stacksOf({ kind, offered, atMost = 3 }: ThicknessQuestion): number[][] {
  const sizes = [...new Set(offered)].sort((a, b) => a - b);
  if (kind === 'gasket') return sizes.map((size) => [size]);
  if (!Number.isInteger(atMost) || atMost < 1 || atMost > 4)
    throw new GaugeError(`atMost must be 1 to 4 shims; got ${atMost}.`, 'atMost', atMost);
  return [[], ...combinations(sizes, atMost)];
}

/** Stacks with repetition, each in rising order. */
function combinations(sizes: readonly number[], atMost: number): number[][] {
  if (atMost === 0) return [];
  return sizes.flatMap((size, i) => [
    [size],
    ...combinations(sizes.slice(i), atMost - 1).map((rest) => [size, ...rest]),
  ]);
}

function words(
  { kind, unit = '' }: ThicknessQuestion,
  now: Decision,
  choice: ThicknessChoice | undefined,
): string {
  if (now.verdict === 'pass') return 'The play is right as it stands: change nothing.';
  if (!choice)
    return `No ${kind} offered is likely to bring the play inside its range: look for wear or a wrong part.`;
  const said =
    choice.stack.length === 0
      ? 'no shim at all'
      : `${kind} ${choice.stack.map((one) => Number(one.toPrecision(12))).join(' + ')} ${unit}`.trim();
  return `Fit ${said}; then measure the play again before going on.`;
}
