import type { Catalog } from '../../src/catalog/index.js';
import {
  accessFor,
  type ExactInference,
  entropyBits,
  type Machine,
  type MachineCheck,
  nextChecks,
  outlook,
} from '../../src/diagnose/index.js';
import { canBeMade } from './machines.js';

/** Which check to make, of those that can be made. */
export type Policy = (
  catalog: Catalog,
  machine: Machine,
  inference: ExactInference,
  off: ReadonlySet<string>,
) => MachineCheck;

/** The standing first looks of the trade: spark, squeeze, fuel, air. */
const tradeOrder = [
  'spark-across-gap',
  'slow-pull',
  'backward-rebound',
  'compression-dry',
  'tank-fuel-in-a-jar',
  'bowl-sample',
  'fuel-flow',
  'air-cleaner-look',
  'light-into-fins',
  'control-sweep',
];

const cheapestFirst: Policy = (catalog, machine, _, off) =>
  best(machine.checks.filter(canBeMade), (c) => -accessFor(catalog, machine.facts, c.check, off).minutes);

const fixedOrder: Policy = (catalog, machine, inference, off) => {
  const open = machine.checks.filter(canBeMade);
  const next = tradeOrder.flatMap((id) => open.filter((c) => c.check.id === id))[0];
  return next ?? cheapestFirst(catalog, machine, inference, off);
};

/** Bits about each fault, added up; minutes do not count. */
const informationOnly: Policy = (_, machine, inference) => {
  const faults = machine.faults.map((f) => inference.faults.indexOf(machine.now(f.id)));
  return best(machine.checks.filter(canBeMade), (c) =>
    c.signs
      .flatMap((sign) => outlook(inference, sign))
      .reduce((sum, { probability, posterior }) => {
        if (!posterior) return sum;
        const gained = faults.reduce(
          (g, f) => g + entropyBits(inference.posterior[f]!) - entropyBits(posterior[f]!),
          0,
        );
        return sum + probability * gained;
      }, 0),
  );
};

const advised: Policy = (_, machine, inference, off) => {
  const first = nextChecks(machine, inference, { off, everyEngineState: true }, 1).best[0]!;
  return machine.checks.find((c) => c.check.id === first.id)!;
};

export const policies = {
  'this advice': advised,
  'fixed trade order': fixedOrder,
  'cheapest first': cheapestFirst,
  'information, no minutes': informationOnly,
} as const satisfies Record<string, Policy>;

function best<T>(list: readonly T[], worth: (item: T) => number): T {
  const worths = list.map(worth);
  return list[worths.indexOf(Math.max(...worths))]!;
}
