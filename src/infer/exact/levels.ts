import type { Network, NetworkFunction } from '../network.js';
import type { ModelLink } from './model.js';

/** The levels of all functions, as faults that stand behind those of the network. */
export interface Levels {
  /** by level: the chance that what is not named reaches it, where the level above is not reached */
  readonly prior: readonly number[];
  readonly links: readonly ModelLink[];
  /** by function: its levels, "at least the second state" first */
  readonly of: ReadonlyMap<string, readonly number[]>;
}

/**
 * Functions in the form of faults and links, so that nothing else has to know of them.
 *
 * Method. A function of K states is K − 1 levels: "at least state k". Whoever reaches level k + 1 reaches level k (a link
 * with p 1); beside that a cause reaches level k with the chance x that makes both together come to what it says:
 * 1 − (1 − P(≥ k + 1)) (1 − x) = P(≥ k). The draws of different causes are independent and the worst one counts, so level k
 * is reached when any draw reaches it: levels and links say just what the function says. Exact, nothing is subtracted
 * but in the links' own chances.
 */
export function levelsOf({ faults, functions = [] }: Network, at: ReadonlyMap<string, number>): Levels {
  const prior: number[] = [];
  const links: ModelLink[] = [];
  const of = new Map<string, readonly number[]>();
  for (const f of functions) {
    const first = faults.length + prior.length;
    const levels = f.states.slice(1).map((_, l) => first + l);
    of.set(f.id, levels);
    prior.push(...leakSteps(f));
    for (const [l, level] of levels.entries()) if (l > 0) links.push({ from: level, to: level - 1, p: 1 });
    for (const { fault, outcome } of f.causes)
      for (const [l, p] of reachSteps(outcome).entries())
        if (p > 0) links.push({ from: at.get(fault)!, to: levels[l]!, p });
  }
  return { prior, links, of };
}

const leakSteps = ({ states, leak }: NetworkFunction): number[] =>
  leak ? reachSteps(leak) : states.slice(1).map(() => 0);

/** By level: the chance of reaching it where the level above is not reached. */
function reachSteps(masses: readonly number[]): number[] {
  return masses.slice(1).map((mass, l) => {
    const above = masses.slice(l + 2).reduce((a, b) => a + b, 0);
    return mass === 0 ? 0 : Math.min(1, mass / (1 - above));
  });
}

/** By level: the factor by which a likelihood that depends on the state changes when this level is reached too. */
export function stateSteps(byState: readonly number[]): number[] {
  return byState.map((x, s) => {
    const before = s === 0 ? 1 : byState[s - 1]!;
    return before === 0 ? 1 : x / before;
  });
}
