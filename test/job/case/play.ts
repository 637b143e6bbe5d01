import { byId, type Catalog } from '../../../src/catalog/index.js';
import { adviseCase, type CaseAdvice, readCase } from '../../../src/job/index.js';
import { tradeOrder } from '../../support/trade-order.js';
import { benchOf, says, type Told } from './mechanic.js';

export interface Played {
  readonly advice: CaseAdvice;
  readonly steps: readonly {
    readonly check: string;
    readonly outcomes: readonly string[];
    readonly minutes: number;
  }[];
  readonly minutes: number;
  /** proposed although it could not or must not be made */
  readonly wrong: readonly string[];
  /** minutes when every true fault first stood at 0.8 */
  readonly foundAt: number | undefined;
}

/** The least at which a fault counts as found at the end. */
export const least = 0.8;
const mostChecks = 60;

/**
 * Plays a case to the product's own stop, or until nothing is left: each first proposal is made and answered truthfully,
 * pieces that it takes off stay off.
 */
export function play(catalog: Catalog, told: Told): Played {
  const bench = benchOf(told);
  const checks = byId(catalog.checks);
  const seen: { check: string; outcomes: string[] }[] = [];
  const steps: Played['steps'][number][] = [];
  const wrong: string[] = [];
  let minutes = 0;
  let foundAt: number | undefined;
  for (;;) {
    const { facts, complaints, runs } = told;
    const advice = adviseCase(catalog, readCase(catalog, { facts, complaints, ...(runs && { runs }), seen }));
    if (allFound(told, advice)) foundAt ??= minutes;
    const [first] = advice.next;
    if (advice.enough || !first || steps.length >= mostChecks)
      return { advice, steps, minutes, wrong, foundAt };
    const check = checks.get(first.check)!;
    const runsNow = check.engine === 'running' || check.engine === 'hot';
    if ((runsNow && !bench.runs) || (bench.locked && check.engine !== 'still' && !check.whenLocked)) {
      wrong.push(first.check);
      // tried in vain
      minutes += 2;
      seen.push({ check: first.check, outcomes: ['could-not-be-done'] });
      steps.push({ check: first.check, outcomes: ['could-not-be-done'], minutes: 2 });
      continue;
    }
    const outcomes = says(first.check, first.outcomes, bench);
    minutes += first.minutes;
    seen.push({ check: first.check, outcomes });
    steps.push({ check: first.check, outcomes, minutes: first.minutes });
  }
}

/** Minutes of the trade's fixed order until every true fault stands as high; of all checks where it never does. */
export function playFixed(catalog: Catalog, told: Told): number {
  const bench = benchOf(told);
  const checks = byId(catalog.checks);
  const seen: { check: string; outcomes: string[] }[] = [];
  let minutes = 0;
  for (;;) {
    const { facts, complaints, runs } = told;
    const advice = adviseCase(catalog, readCase(catalog, { facts, complaints, ...(runs && { runs }), seen }));
    if (allFound(told, advice)) return minutes;
    const open = advice.next.filter(({ check: id }) => {
      const { engine, whenLocked } = checks.get(id)!;
      if ((engine === 'running' || engine === 'hot') && !bench.runs) return false;
      return engine === 'still' || whenLocked || !bench.locked;
    });
    const first =
      tradeOrder.flatMap((id) => open.filter((n) => n.check === id))[0] ??
      [...open].sort((a, b) => a.minutes - b.minutes)[0];
    if (!first) return minutes;
    minutes += first.minutes;
    seen.push({ check: first.check, outcomes: says(first.check, first.outcomes, bench) });
  }
}

export const probabilityOf = ({ faults }: CaseAdvice, id: string): number =>
  faults.find((f) => f.id === id)?.probability ?? 0;

const allFound = ({ faults }: Told, advice: CaseAdvice): boolean =>
  faults.every((id) => probabilityOf(advice, id) >= least);
