import { findThread, requirePlausibleTorque } from '../../fasten/index.js';
import { parseThread, QuantityError } from '../../quantity/index.js';
import { quantityOf } from '../job.js';
import type { Broken, Rule } from './rule.js';

/**
 * A torque that can be meant for its thread: 140 ft-lb on 5/16-18 is refused and 140 in-lb named. A thread that nobody
 * can read, or that stands in no table, bounds nothing.
 */
export const plausibleTorque: Rule<'joint'> = ({ target, thread }) => {
  try {
    const form = parseThread(thread?.trim() ?? '');
    const torque = { ...quantityOf(target), kind: 'torque' as const };
    if (findThread(form)) return broken(() => requirePlausibleTorque(torque, form));
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
  }
  return undefined;
};

function broken(check: () => unknown): Broken | undefined {
  try {
    check();
    return undefined;
  } catch (error) {
    if (error instanceof QuantityError) return { field: 'target', words: error.message };
    throw error;
  }
}
