import { accessFor, type MachineCheck, needsRunning, nextChecks } from '../../src/diagnose/index.js';
import { outlook } from '../../src/infer/index.js';
import { tradeOrder } from '../../test/support/trade-order.js';
import { entropyBits } from '../information.js';
import type { Policy, Standing } from './run.js';

/** Nobody who does not look at the evidence tries a running check before he knows that the engine runs. */
const sure = ({ open, runs }: Standing): readonly MachineCheck[] => {
  const still = open.filter((c) => runs === 'yes' || !needsRunning(c.check));
  return still.length > 0 ? still : open;
};

const cheapestFirst: Policy = (standing) =>
  best(
    sure(standing),
    (c) => -accessFor(standing.catalog, standing.machine.facts, c.check, standing.off).minutes,
  );

const fixedOrder: Policy = (standing) => {
  const open = sure(standing);
  const next = tradeOrder.flatMap((id) => open.filter((c) => c.check.id === id))[0];
  return next ?? cheapestFirst(standing);
};

/** Bits about each fault, added up; minutes do not count. */
const informationOnly: Policy = (standing) => {
  const { machine, inference } = standing;
  const faults = machine.faults.map((f) => inference.faults.indexOf(machine.now(f.id)));
  return best(sure(standing), (c) =>
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

const advised: Policy = ({ machine, inference, off, runs, open }) => {
  const [first] = nextChecks(machine, inference, { off, runs }, 1).best;
  // nothing is advised any more, and whether it starts is still open
  return machine.checks.find((c) => c.check.id === first?.id) ?? open[0]!;
};

export const policies = {
  'this advice': advised,
  'fixed trade order': fixedOrder,
  'cheapest first': cheapestFirst,
  'information, no minutes': informationOnly,
} as const satisfies Record<string, Policy>;

export type PolicyName = keyof typeof policies;
export const policyNames = Object.keys(policies) as PolicyName[];

function best<T>(list: readonly T[], worth: (item: T) => number): T {
  const worths = list.map(worth);
  return list[worths.indexOf(Math.max(...worths))]!;
}
