import { type Decision, decide } from './decide.js';
import { GaugeError, requireFinite, requireNotNegative, requirePositive } from './error.js';

/** Everything in one unit of length. */
export interface OversizeQuestion {
  readonly standard: number;
  /** largest diameter read in the bore */
  readonly largest: number;
  /** standard uncertainty of the largest diameter */
  readonly u: number;
  /** what is sold over standard: 0.010, 0.020, 0.030 in */
  readonly oversizes: readonly number[];
  /** stock on the diameter to leave for the hone, beyond the last trace of wear */
  readonly cleanUp: number;
  /**
   * 'worn': the new bore follows the worn one. 'old': it stands on the old center, and wear all on one wall needs
   * twice its depth on the diameter.
   */
  readonly center: 'worn' | 'old';
  readonly confidence?: number | undefined;
  readonly unit?: string | undefined;
}

export interface OversizeChoice {
  readonly oversize: number;
  readonly finished: number;
  /** stock left on the diameter after the deepest wear is gone */
  readonly stock: number;
  readonly cleansUp: Decision;
}

export interface OversizeAnswer {
  /** every size sold, smallest first */
  readonly choices: readonly OversizeChoice[];
  /** the smallest that surely cleans up; none when the largest does not */
  readonly choice?: OversizeChoice;
  readonly words: string;
}

/**
 * The next oversize that cleans the bore up.
 *
 * Source: common practice (the bore is finished to standard plus oversize; the piston carries the clearance); the
 * geometry of one-sided wear is plain. Method: finished − needed ≥ clean-up stock, decided with the reading's
 * uncertainty by `decide`.
 * Special cases: a size that can neither be proven nor ruled out is passed over for the next one, and said.
 * Throws GaugeError when no oversize is given or one is not above 0.
 * Example: standard 2.5625, largest 2.5675, clean-up 0.002, sizes 0.010, 0.020 in, u 0.00015, worn center → 0.010.
 */
export function chooseOversize(question: OversizeQuestion): OversizeAnswer {
  requirePositive(question.standard, 'standard');
  requireFinite(question.largest, 'largest');
  if (question.largest < question.standard - 2 * question.u)
    throw new GaugeError(
      'The largest diameter lies under the standard bore: the standard is another one, or the gauge was set wrong.',
      'largest',
      question.largest,
    );
  requireNotNegative(question.cleanUp, 'cleanUp');
  if (question.oversizes.length === 0) throw new GaugeError('No oversize is given.', 'oversizes', 0);
  const sizes = [...question.oversizes].sort((a, b) => a - b);
  const choices = sizes.map((oversize) => choiceOf(question, requirePositive(oversize, 'oversizes')));
  const choice = choices.find(({ cleansUp }) => cleansUp.verdict === 'pass');
  return { choices, ...(choice && { choice }), words: words(choices, choice, question.unit) };
}

function choiceOf(question: OversizeQuestion, oversize: number): OversizeChoice {
  const { standard, largest, u, cleanUp, center, confidence, unit } = question;
  const finished = standard + oversize;
  const wear = Math.max(0, largest - standard);
  const times = center === 'old' ? 2 : 1;
  const stock = finished - standard - times * wear;
  const cleansUp = decide({ value: stock, u: times * u, limit: { min: cleanUp }, confidence, unit });
  return { oversize, finished, stock, cleansUp };
}

function words(choices: readonly OversizeChoice[], choice: OversizeChoice | undefined, unit = ''): string {
  if (!choice) return 'No size on the list surely cleans up: a sleeve, or another block.';
  const doubtful = choices.filter(
    ({ oversize, cleansUp }) => oversize < choice.oversize && cleansUp.verdict === 'cannot-decide',
  );
  const passed = doubtful.map(({ oversize }) => `${oversize} ${unit}`.trim()).join(', ');
  const note = passed ? ` ${passed} may clean up too, but this tool cannot tell.` : '';
  return `${`${choice.oversize} ${unit}`.trim()} over is the smallest that surely cleans up.${note} Have the piston in hand before boring.`;
}
