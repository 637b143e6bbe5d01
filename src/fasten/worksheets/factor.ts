import { type Answer, lines, number, ruleOfThumb, standard } from '../../worksheet/index.js';
import { type Condition, conditions, type FactorSpread, factorsFor, factorWords } from '../friction.js';
import type { FactorDoubt } from '../torque.js';

/** The nut factor a worksheet goes by: the person's own, or the one taken of the published spread. */
export interface ChosenFactor {
  readonly k: number;
  readonly from: string;
  /** absent when the person gave K */
  readonly spread?: FactorSpread;
}

export function chosenFactor(condition: Condition, k: number | undefined): ChosenFactor {
  if (k !== undefined) return { k, from: 'K as given' };
  const spread = factorsFor(condition);
  return { k: spread.taken.k, from: `${conditions[condition]}: ${spread.taken.source}`, spread };
}

/** How far the factor that was taken may be off; nothing where the person gave their own. */
export const doubtOf = ({ k, spread }: ChosenFactor): FactorDoubt | undefined =>
  spread && { taken: k, low: spread.low, high: spread.high };

/** The factor used and, where it was taken from a table, what every source says and would give. */
export function factorAnswers(
  { k, from, spread }: ChosenFactor,
  gives: (k: number) => string,
): readonly Answer[] {
  const used = number(
    'k',
    'Nut factor K used',
    k,
    3,
    spread ? standard(from) : { from: "shop's own", detail: from },
  );
  if (!spread) return [used];
  return [
    used,
    lines(
      'published-k',
      'What the sources say',
      spread.rows.map((row) => `${factorWords(row)}: ${gives(row.k)}`),
      ruleOfThumb('each line names its source; taken is the middle one'),
    ),
  ];
}
