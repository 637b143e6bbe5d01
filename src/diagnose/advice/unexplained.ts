import { byId } from '../../catalog/index.js';
import type { ExactInference } from '../../infer/index.js';
import type { Machine, TakenReading } from '../machine/machine.js';

/** Something seen that no fault of the list may stand behind. */
export interface Unexplained {
  readonly what: string;
  readonly check?: string;
  /** at most this likely that no fault of the list shows there */
  readonly probability: number;
}

const worthSaying = 0.5;

/**
 * Abnormal readings that are rather a false alarm, or something that is not on the list, than any of the faults. Where
 * related readings share a hidden false alarm, its chance is added: the sum is an upper bound.
 */
export function unexplainedReadings(machine: Machine, inference: ExactInference): Unexplained[] {
  const views = new Map(inference.findings.map((v) => [v.sign, v]));
  const strange = machine.readings
    .filter((r) => r.silent === 'not in the catalog' || r.silent === 'outcome not in the catalog')
    .map((r) => ({ what: `${r.title}: ${r.words.join(', ')}`, check: r.seen.check, probability: 1 }));
  const read = machine.readings
    .filter((r) => r.abnormal && !r.silent && accuses(machine, r))
    .flatMap((r) => {
      const shares = r.signs.flatMap((sign) => abnormalShare(machine, views.get(sign)));
      const probability = Math.max(0, ...shares);
      return probability < worthSaying
        ? []
        : [{ what: `${r.title}: ${r.words.join(', ')}`, check: r.seen.check, probability }];
    });
  return [...read, ...strange].sort((a, b) => b.probability - a.probability);
}

/** A mild outcome that the catalog lays at no fault's door needs no explaining. */
function accuses(machine: Machine, { seen, words }: TakenReading): boolean {
  const check = byId(machine.catalog.checks).get(seen.check);
  const ids = check?.outcomes.filter((o) => words.includes(o.words)).map((o) => o.id) ?? [];
  return check?.links.some((l) => l.outcomes.some((o) => ids.includes(o))) ?? false;
}

function abnormalShare(machine: Machine, view: ExactInference['findings'][number] | undefined): number[] {
  if (!view) return [];
  const alarms = view.reachedBy.filter(({ fault }) => machine.alarms.has(fault));
  return [
    Math.min(
      1,
      alarms.reduce((sum, a) => sum + a.probability, view.unexplained),
    ),
  ];
}
