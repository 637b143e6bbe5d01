import { applies, type Catalog, type EngineFunction, judgementOf } from '../../catalog/index.js';
import type { NetworkFunction, Sign } from '../../infer/index.js';
import type { MachineFacts } from './case.js';

/** What a check reads of a function. */
export interface FunctionRead {
  readonly of: EngineFunction;
  readonly state: string;
  readonly outcomes: readonly string[];
  readonly chance: number;
}

export const functionsRead = (catalog: Catalog, check: string): FunctionRead[] =>
  catalog.functions.flatMap((of) =>
    of.readBy.flatMap((r) =>
      r.check === check ? [{ of, state: r.state, outcomes: r.outcomes, chance: r.chance }] : [],
    ),
  );

/** The function's place in a network, by the time that it is asked about. */
export interface FunctionNow {
  readonly id: string;
  readonly of: EngineFunction;
  /** the name of a fault at that time */
  readonly name: (fault: string) => string;
}

export function networkFunction(
  { id, of, name }: FunctionNow,
  facts: MachineFacts,
  concerned: ReadonlySet<string>,
): NetworkFunction {
  const states = of.states.map((s) => s.id);
  return {
    id,
    states,
    causes: spoilersOf(of, facts, concerned).map(({ fault, leaves }) => {
      const bad = states.slice(1).map((s) => leaves[s] ?? 0);
      return { fault: name(fault), outcome: [1 - bad.reduce((a, b) => a + b, 0), ...bad] };
    }),
  };
}

export const spoilersOf = (of: EngineFunction, facts: MachineFacts, concerned: ReadonlySet<string>) =>
  of.spoiledBy.filter((s) => concerned.has(s.fault) && applies(s.when, facts) !== 'no');

/** How a function is called in a network. */
export const functionName = (id: string, suffix: string): string => `=${id}${suffix}`;

/** The engine's running as a sign of its functions, before it is read. */
export function runningSign(catalog: Catalog, id: string, name: (of: EngineFunction) => string): Sign {
  const leak = judgementOf(catalog, 'does-not-run-anyhow');
  return {
    id,
    outcomes: ['runs', 'does not run'],
    leak: [1 - leak, leak],
    causes: catalog.functions.flatMap((of) => {
      const { keepsFromRunning: keeps } = of;
      if (!keeps) return [];
      const outcome = of.states.slice(1).map((s) => [1 - (keeps[s.id] ?? 0), keeps[s.id] ?? 0]);
      return [{ function: name(of), outcome }];
    }),
  };
}
