import { NetworkError } from './error.js';
import { shareOf } from './exact/reasoner.js';
import { withStates } from './exact/weights.js';
import type { ExactInference } from './infer.js';
import type { Known } from './network.js';

/**
 * The chance that several faults stand as said, all at once, given all that was seen.
 *
 * Method: the network as it stands is run once with the other state of each of them ruled out. Error: as `infer`.
 *
 * @throws NetworkError `unknown` for a fault that the network does not have
 */
export function chanceTogether({ faults, reasoner }: ExactInference, states: readonly Known[]): number {
  const place = new Map(faults.map((id, i) => [id, i]));
  const taken = states.map(({ fault, present }, i) => {
    const at = place.get(fault);
    if (at === undefined)
      throw new NetworkError('unknown', `no fault "${fault}"`, { place: `states[${i}]`, value: fault });
    return { fault: at, present };
  });
  const touched = { faults: taken.map((s) => s.fault), gathering: -1 };
  return Math.min(1, shareOf(reasoner, withStates(reasoner.weights, taken), touched));
}
