import { learned } from './doubt-weights.js';
import { type Cycle, narrowing } from './engine-kind.js';
import { median, quantile } from './quantile.js';
import type { Choice } from './rivals.js';
import type { Steadiness } from './steadiness.js';
import type { Stretch } from './stretches.js';

/** Signs by which an engine is told from what repeats but is none, each about 1 wide. */
export type Signs = readonly number[];

/**
 * In this order: how much of what stands out has a part in the beat (a tune, a voice and a room have much that has none),
 * evidence over chance, how many lines, how far the speed wanders, how rough its path is, how far it goes on, how firmly
 * the lines hold it.
 */
export function signsOf(choice: Choice, stretches: readonly Stretch[], steadiness: Steadiness): Signs {
  const path = stretches.flatMap(({ path: { hz } }) => Array.from(hz, Math.log));
  const held = median(stretches.flatMap(({ relativeU }) => [...relativeU]));
  return [
    Math.log(choice.share + 0.02),
    Math.log(choice.best.evidence / (choice.chance + 0.0002) + 1),
    Math.log(choice.lines + 0.5),
    Math.log(quantile(path, 0.9) - quantile(path, 0.1) + 0.003),
    Math.log(steadiness.roughness + 0.0005),
    3 * steadiness.ongoing,
    Math.log(held + 0.0005),
  ];
}

/**
 * Logarithm of the odds that this is an engine, of what passed every refusal.
 *
 * Method: logistic regression, learned by `npm run bench listen-learn` on the half of the collection that guides and on
 * made engines. Engines and the rest counted as much as each other. Validity:
 * the odds are those of that mixture: an ordering rather than a chance.
 */
const oddsOf = (signs: Signs): number =>
  signs.reduce((sum, sign, n) => sum + learned.weights[n]! * sign, learned.bias);

/**
 * A little under even odds: of the sounds that guided none more of what is none passes than at even odds, but for one as a
 * two-stroke, and fewer engines are doubted.
 */
const leastOdds = { 2: -0.2, 4: -0.35 } as const;

/** At less than these odds, with what was said of this engine, what is accepted is said to be perhaps no engine. */
export const isDoubtful = (signs: Signs, cycle: Cycle): boolean =>
  oddsOf(signs) + narrowing(cycle) < leastOdds[cycle.strokes];
