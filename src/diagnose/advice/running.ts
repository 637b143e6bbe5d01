import type { Machine } from '../machine/machine.js';

export type Runs = 'yes' | 'no' | 'unknown';

/** Complaints of a machine that does not keep running. */
const deadComplaints = [
  'cranks-never-fires',
  'fires-then-dies',
  'rope-pulls-free',
  'locked-solid',
  'spins-like-empty',
];
/** Complaints that say nothing of whether it runs. */
const silentComplaints = [
  'fuel-pours-out',
  'oil-leaks',
  'rope-hard-to-pull',
  'kicks-back',
  'white-smoke-or-milky-oil',
];
/** Outcomes after which it does not run, whatever else is so. */
const deadOutcomes: Readonly<Record<string, readonly string[]>> = {
  'spark-across-gap': ['none'],
  'slow-pull': ['none', 'locked'],
  'fuel-down-the-throat': ['fires-and-dies', 'one-pop', 'nothing'],
  'rod-on-piston': ['does-not-move'],
};

/**
 * Whether the engine can run for a check, as the log tells it: the last reading that says so counts before what the owner
 * said, and a repair after it leaves it open again.
 */
export function runs(machine: Machine): Runs {
  const repaired =
    (machine.history.repairs ?? [])
      .map((r) => r.at)
      .sort()
      .at(-1) ?? '';
  const fresh = machine.readings.filter((r) => r.seen.at >= repaired).toReversed();
  for (const reading of fresh) {
    const said = fromReading(machine, reading.seen.check, reading.seen.outcomes);
    if (said !== 'unknown') return said;
  }
  return repaired === '' ? fromComplaints(machine.complaints) : 'unknown';
}

function fromReading(machine: Machine, id: string, outcomes: readonly string[]): Runs {
  const check = machine.checks.find((c) => c.check.id === id)?.check;
  if (!check) return 'unknown';
  const ids = check.outcomes
    .filter((o) => outcomes.includes(o.id) || outcomes.includes(o.words))
    .map((o) => o.id);
  if (ids.some((o) => deadOutcomes[id]?.includes(o))) return 'no';
  const ran = check.engine === 'running' || check.engine === 'hot' || ids.includes('carries-on');
  return ran ? 'yes' : 'unknown';
}

function fromComplaints(complaints: readonly string[]): Runs {
  if (complaints.some((c) => deadComplaints.includes(c))) return 'no';
  return complaints.some((c) => !silentComplaints.includes(c)) ? 'yes' : 'unknown';
}

/** A locked engine cannot be turned or pulled. */
export function isLocked(machine: Machine): boolean {
  const last = machine.readings.findLast((r) => r.seen.check === 'slow-pull' && !r.silent);
  return last?.words.includes('locked') === true || (!last && machine.complaints.includes('locked-solid'));
}
