import { byId, type Catalog, type Check, judgementOf } from '../../catalog/index.js';
import type { Reading, Sign } from '../../infer/index.js';
import type { CaseHistory, SeenCheck } from './case.js';
import { runningSign } from './functions.js';
import type { FunctionsNow } from './functions-now.js';
import type { Versions } from './versions.js';

export interface RunningAsked {
  readonly catalog: Catalog;
  readonly seen: readonly SeenCheck[];
  readonly versions: Versions;
  readonly functions: FunctionsNow;
  readonly history: CaseHistory;
}

/** Sign of whether the engine runs, as it stood when it was said. */
export const runningSignId = (suffix: string): string => `engine-runs${suffix}`;

/**
 * What is known of whether the engine runs, as readings of a sign of its functions: a running engine speaks for spark,
 * fuel and squeeze at once, one that does not run against all of them together. The owner's word counts until somebody
 * has tried; a check that reads the functions itself says it there and not twice. After a repair only what was read since
 * counts.
 */
export function runningReadings(asked: RunningAsked): { readonly sign: Sign; readonly seen: Reading }[] {
  const { catalog, versions, functions, history } = asked;
  const tried = new Map<number, 'yes' | 'no'>();
  for (const s of asked.seen) {
    const said = saidBy(catalog, s);
    if (said !== undefined) tried.set(versions.timeAt(s.at), said);
  }
  if (history.tried) tried.set(versions.last, history.tried);
  const all = [...tried].map(([time, said]) => ({ time, weights: said === 'yes' ? [1, 0] : [0, 1] }));
  const owner = tried.has(0) ? undefined : ownersWord(catalog, history);
  if (owner) all.push({ time: 0, weights: owner });
  return all.map(({ time, weights }) => {
    const id = runningSignId(versions.suffix(time));
    const sign = runningSign(catalog, id, (of) => functions.nameAt(of.id, time));
    return { sign, seen: { sign: id, weights } };
  });
}

/** A check on a running engine was made, or an outcome says outright that it runs or does not. */
function saidBy(catalog: Catalog, { check: id, outcomes }: SeenCheck): 'yes' | 'no' | undefined {
  const check = byId(catalog.checks).get(id);
  if (!check || (check.engine !== 'running' && check.engine !== 'hot')) return undefined;
  const states = statesSaid(check, outcomes);
  return states.some((s) => s !== 'runs') ? 'no' : madeAtAll(check, outcomes) ? 'yes' : undefined;
}

const madeAtAll = ({ outcomes }: Check, written: readonly string[]): boolean =>
  outcomes.some((o) => written.includes(o.id) || written.includes(o.words));

export const statesSaid = ({ outcomes }: Check, written: readonly string[]) =>
  outcomes.filter((o) => written.includes(o.id) || written.includes(o.words)).flatMap((o) => o.engine ?? []);

function ownersWord(catalog: Catalog, { complaints = [] }: CaseHistory): number[] | undefined {
  const states = catalog.complaints.filter((c) => complaints.includes(c.id)).flatMap((c) => c.engine ?? []);
  const errs = judgementOf(catalog, 'owner-errs-about-running');
  if (states.some((s) => s !== 'runs')) return [errs, 1];
  return states.includes('runs') ? [1, errs / 4] : undefined;
}
