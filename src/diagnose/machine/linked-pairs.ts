import { architectures, byId, type Catalog } from '../../catalog/index.js';
import { machineNetwork } from './machine.js';

/** A fault, and a check that speaks of it. */
export interface LinkedPair {
  readonly fault: string;
  readonly check: string;
  /** the function that the fault spoils and the check reads; undefined where the check shows the fault by itself */
  readonly through?: string;
}

/**
 * Every pair of fault and check of which the catalog says that the one shows in the other, by a link of their own or by what
 * follows from it on some machine, each once a way. A pair that is not among them is silent: the check says nothing of the
 * fault, whatever it shows.
 */
export function linkedPairs(catalog: Catalog): LinkedPair[] {
  const own = catalog.checks.flatMap(({ id, links }) =>
    links.map(({ fault }): LinkedPair => ({ fault, check: id })),
  );
  const machines = architectures.flatMap((architecture) =>
    catalog.uses.map((u) => ({ architecture, use: u.id })),
  );
  const following = machines.flatMap((facts) => pairsOf(machineNetwork(catalog, facts, [])));
  const pairs = new Map<string, LinkedPair>();
  for (const pair of [...own, ...following]) pairs.set(`${pair.fault} ${pair.check} ${pair.through}`, pair);
  return [...pairs.values()];
}

function pairsOf({ faults, now, checks, network }: ReturnType<typeof machineNetwork>): LinkedPair[] {
  const asCalled = new Map(faults.map(({ id }) => [now(id), id]));
  const signs = byId(network.signs);
  const functions = byId(network.functions ?? []);
  return checks.flatMap(({ check, signs: read }) =>
    read
      .flatMap((id) => signs.get(id)?.causes ?? [])
      .flatMap((cause): LinkedPair[] => {
        if ('fault' in cause) return [{ fault: asCalled.get(cause.fault)!, check: check.id }];
        const spoiled = functions.get(cause.function);
        const through = cause.function.replace(/^=/, '');
        return (spoiled?.causes ?? []).map((c) => ({
          fault: asCalled.get(c.fault)!,
          check: check.id,
          through,
        }));
      }),
  );
}
