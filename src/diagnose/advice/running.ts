import { byId, type Check } from '../../catalog/index.js';
import type { Machine } from '../machine/machine.js';

export type Runs = 'yes' | 'no' | 'unknown';

/**
 * Whether the engine can run for a check, as the log tells it: the last reading that says so counts before what the owner
 * said. A repair after it leaves a running engine open, for it may have been put back wrong; a dead one stays dead until
 * somebody has tried it.
 */
export function runs(machine: Machine): Runs {
  const { said, repairedSince } = lastWord(machine);
  return repairedSince && said === 'yes' ? 'unknown' : said;
}

/** A repair was made since it last would not run, and nobody has tried it: whether it starts now tells most. */
export function wantsATry(machine: Machine): boolean {
  const { said, repairedSince } = lastWord(machine);
  return repairedSince && said === 'no';
}

function lastWord(machine: Machine): { said: Runs; repairedSince: boolean } {
  const repaired = (machine.history.repairs ?? []).map((r) => r.at);
  for (const { seen } of machine.readings.toReversed()) {
    const said = fromReading(machine, seen.check, seen.outcomes);
    if (said !== 'unknown') return { said, repairedSince: repaired.some((at) => at > seen.at) };
  }
  return { said: fromComplaints(machine), repairedSince: repaired.length > 0 };
}

function fromReading(machine: Machine, id: string, outcomes: readonly string[]): Runs {
  const check = byId(machine.catalog.checks).get(id);
  if (!check) return 'unknown';
  const states = statesSaid(check, outcomes);
  if (states.some((s) => s !== 'runs')) return 'no';
  return needsRunning(check) || states.includes('runs') ? 'yes' : 'unknown';
}

const statesSaid = ({ outcomes }: Check, written: readonly string[]) =>
  outcomes.filter((o) => written.includes(o.id) || written.includes(o.words)).flatMap((o) => o.engine ?? []);

function fromComplaints({ catalog, complaints }: Machine): Runs {
  const states = catalog.complaints.filter((c) => complaints.includes(c.id)).flatMap((c) => c.engine ?? []);
  if (states.some((s) => s !== 'runs')) return 'no';
  return states.includes('runs') ? 'yes' : 'unknown';
}

export const needsRunning = ({ engine }: Pick<Check, 'engine'>): boolean =>
  engine === 'running' || engine === 'hot';

/** Whether some outcome of it says that the engine does not run. */
export const tellsWhetherItRuns = ({ outcomes }: Check): boolean =>
  outcomes.some((o) => o.engine !== undefined && o.engine !== 'runs');

const tellsWhetherItTurns = ({ outcomes }: Check): boolean => outcomes.some((o) => o.engine === 'locked');

/** A locked engine cannot be turned or pulled. The last reading that can say so counts before the owner. */
export function isLocked(machine: Machine): boolean {
  const checks = byId(machine.catalog.checks);
  const last = machine.readings.findLast(
    (r) => !r.silent && checks.has(r.seen.check) && tellsWhetherItTurns(checks.get(r.seen.check)!),
  );
  if (last) return statesSaid(checks.get(last.seen.check)!, last.words).includes('locked');
  return machine.catalog.complaints.some((c) => c.engine === 'locked' && machine.complaints.includes(c.id));
}
