import { type Architecture, architectures } from '../../catalog/index.js';
import type { MachineFacts } from './case.js';

/** Undefined while it is not known. */
export function architectureOf(facts: MachineFacts): Architecture | undefined {
  return architectures.find((a) => a === facts.architecture);
}
