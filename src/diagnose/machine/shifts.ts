import type { Catalog, OddsShift } from '../../catalog/index.js';
import type { MachineFacts } from './case.js';

/** What the intake's facts make of a probability, where the catalog has no frequency for just such machines. */
export function shifted(catalog: Catalog, fault: string, probability: number, facts: MachineFacts): number {
  const times = catalog.oddsShifts
    .filter((s) => s.faults.includes(fault))
    .reduce((product, s) => product * oddsTimes(s, facts), 1);
  return (probability * times) / (1 - probability + probability * times);
}

/** A fact that is not known shifts nothing: the frequencies stand for machines of which it is not known. */
function oddsTimes({ byStoredMonths, byAnswer }: OddsShift, facts: MachineFacts): number {
  const months = facts.storedMonths;
  if (byStoredMonths && months !== undefined)
    return byStoredMonths.findLast(({ from }) => months >= from)?.times ?? 1;
  const said = byAnswer && facts[byAnswer.fact];
  return byAnswer && (said === 'yes' || said === 'no') ? byAnswer[said] : 1;
}
