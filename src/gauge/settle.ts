import { decide, type Measured, type Verdict } from './decide.js';
import { requireNotNegative } from './error.js';
import { figureDown } from './figure.js';

/** An instrument of the shop; `u` is its standard uncertainty for this measurement, in the unit of the value. */
export interface BetterTool {
  readonly name: string;
  readonly u: number;
}

export interface Unsettled extends Measured {
  /** standard deviation of one reading about the mean; left out, repeats are not considered */
  readonly scatter?: number | undefined;
  /** the part of the uncertainty that repeats leave standing: zero error, temperature, the tool itself */
  readonly systematic?: number | undefined;
  readonly tools?: readonly BetterTool[] | undefined;
}

export const noNumberOfRepeats = 'no number of repeats';

export interface Settlement {
  /** the verdict as it stands; the rest matters only when it is 'cannot-decide' */
  readonly verdict: Verdict;
  /** the largest standard uncertainty that would settle it at this value; 0 when none would */
  readonly neededU: number;
  /** what the verdict would become with that uncertainty */
  readonly becomes: Verdict;
  /** names of the tools fine enough, coarsest first */
  readonly tools: readonly string[];
  /** how many readings in all would settle it, assuming their mean stays where it is */
  readonly repeats?: number | typeof noNumberOfRepeats;
  readonly words: string;
}

/**
 * What would settle a measurement that cannot be decided: a finer tool, or more repeats, assuming that the mean
 * stays where it is (it may well move: this is a plan, not a promise).
 *
 * Source: the rule of `decide`; u² = scatter²/n + systematic² (JCGM 100:2008, 4.2.3 and 5.1.2).
 * Method: the pass and fail chances are monotone in u at a fixed value, so the largest sufficient u is found by
 * bisection to 1e-12 relative; the count follows from it. Normal distribution throughout.
 * Special cases: a value on the limit is settled by nothing; repeats never get below the systematic part.
 * Example: value 9, max 10, u 1, scatter 1, systematic 0.2 → needed u 0.608, 4 readings… see the tests.
 */
export function settle(unsettled: Unsettled): Settlement {
  const { verdict } = decide(unsettled);
  const neededU = largestSufficientU(unsettled);
  const becomes = verdictAt(unsettled, neededU);
  const tools = fineEnough(unsettled.tools ?? [], neededU);
  const repeats = repeatsFor(unsettled, neededU);
  const outcome = { verdict, neededU, becomes, tools, ...(repeats === undefined ? {} : { repeats }) };
  return { ...outcome, words: words(unsettled, outcome) };
}

function verdictAt(measured: Measured, u: number): Verdict {
  if (u === 0) return 'cannot-decide';
  return decide({ ...measured, u, degreesOfFreedom: undefined }).verdict;
}

function largestSufficientU(measured: Measured): number {
  const { value, limit } = measured;
  const distance = Math.min(
    ...[limit.min, limit.max].filter((x) => x !== undefined).map((x) => Math.abs(value - x)),
  );
  if (distance === 0) return 0;
  let low = distance / 10;
  // Ten standard uncertainties settle any confidence below 1 − 1e-23, and half a distance settles none above 0.98.
  let high = distance * 1e6;
  for (let step = 0; step < 200 && high - low > 1e-13 * high; step += 1) {
    const middle = Math.sqrt(low * high);
    if (verdictAt(measured, middle) === 'cannot-decide') high = middle;
    else low = middle;
  }
  return low;
}

function fineEnough(tools: readonly BetterTool[], neededU: number): readonly string[] {
  for (const tool of tools) requireNotNegative(tool.u, `tools: ${tool.name}`);
  return [...tools]
    .filter((tool) => tool.u <= neededU)
    .sort((a, b) => b.u - a.u)
    .map((tool) => tool.name);
}

function repeatsFor(
  { scatter, systematic = 0 }: Unsettled,
  neededU: number,
): number | typeof noNumberOfRepeats | undefined {
  if (scatter === undefined) return undefined;
  requireNotNegative(scatter, 'scatter');
  requireNotNegative(systematic, 'systematic');
  const room = neededU ** 2 - systematic ** 2;
  if (!(room > 0)) return noNumberOfRepeats;
  return Math.max(1, Math.ceil(scatter ** 2 / room - 1e-12));
}

function words(
  unsettled: Unsettled,
  { verdict, neededU, becomes, tools, repeats }: Omit<Settlement, 'words'>,
): string {
  if (verdict !== 'cannot-decide') return `Already decided: ${verdict}.`;
  if (neededU === 0)
    return 'The value lies on the limit itself: no tool and no number of repeats settles it there.';
  const head = `If the value stays where it is, u of ${figureDown(neededU, unsettled.unit)} or less settles it (${becomes}).`;
  return [head, toolWords(unsettled.tools ?? [], tools), repeatWords(repeats)].filter(Boolean).join(' ');
}

function toolWords(offered: readonly BetterTool[], fine: readonly string[]): string {
  if (offered.length === 0) return '';
  return fine.length === 0 ? 'None of the listed tools is fine enough.' : `Fine enough: ${fine.join(', ')}.`;
}

function repeatWords(repeats: Settlement['repeats']): string {
  if (repeats === undefined) return '';
  if (repeats === noNumberOfRepeats)
    return 'No number of repeats settles it: the systematic part alone is too large.';
  return `${repeats} readings in all would do, if their mean stays where it is.`;
}
