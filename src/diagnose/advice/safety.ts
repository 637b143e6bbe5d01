import type { Machine } from '../machine/machine.js';
import { found } from './stakes.js';

/** A fault that someone can be hurt by: it is asked for outright. */
export interface SafetyQuestion {
  readonly id: string;
  readonly name: string;
  /** why the machine must not be handed over while it stands */
  readonly why: string;
  readonly posterior: number;
  /** open: nobody has looked. Looked at: the check for it was made and is healthy. */
  readonly state: 'open' | 'found' | 'looked at' | 'ruled out' | 'repaired';
  /** checks that show it, the quickest first */
  readonly checks: readonly { readonly id: string; readonly title: string; readonly minutes: number }[];
}

/** Above this a healthy check is not enough. */
const stillInDoubt = 0.05;

/** The faults that block the hand-over, whatever their probability: those that are open, found first. */
export function safetyQuestions(machine: Machine, posterior: (fault: string) => number): SafetyQuestion[] {
  const asked = machine.faults
    .filter((f) => f.fault.blocksHandOver !== undefined)
    .map(({ id, fault }) => {
      const p = posterior(id);
      const checks = checksThatShow(machine, id);
      const all = { id, name: fault.name, why: fault.blocksHandOver!, posterior: p };
      return {
        ...all,
        state: stateOf(
          machine,
          id,
          p,
          checks.map((c) => c.id),
        ),
        checks,
      };
    });
  return asked.sort((a, b) => order[a.state] - order[b.state] || b.posterior - a.posterior);
}

const order: Readonly<Record<SafetyQuestion['state'], number>> = {
  found: 0,
  open: 1,
  'looked at': 2,
  repaired: 3,
  'ruled out': 4,
};

function checksThatShow(machine: Machine, fault: string) {
  return machine.checks
    .filter(({ check }) => check.links.some((l) => l.fault === fault && l.strength === 'strong'))
    .map(({ check }) => ({ id: check.id, title: check.title, minutes: check.minutes }))
    .sort((a, b) => a.minutes - b.minutes);
}

function stateOf(
  machine: Machine,
  fault: string,
  p: number,
  checks: readonly string[],
): SafetyQuestion['state'] {
  const now = machine.now(fault);
  const known = machine.network.known.find((k) => k.fault === now);
  if (known) return known.present ? 'found' : 'ruled out';
  if (p >= found) return 'found';
  if (now !== fault) return 'repaired';
  const healthy = machine.readings.some((r) => !r.silent && !r.abnormal && checks.includes(r.seen.check));
  return healthy && p < stillInDoubt ? 'looked at' : 'open';
}
