import type { Catalog } from '../catalog.js';
import { byId } from '../lookup.js';
import type { Path } from './pack.js';

/** A differential check that starts from outcomes which the check it repeats does not have. */
export function differentialsWithout(catalog: Catalog): { check: string; path: Path; reason: string }[] {
  const checks = byId(catalog.checks);
  return catalog.checks.flatMap(({ id, differentialOf }) => {
    const outcomes = checks.get(differentialOf?.check ?? '')?.outcomes ?? [];
    const lacking = (differentialOf?.after ?? []).filter(
      (after) => !outcomes.some((outcome) => outcome.id === after),
    );
    return lacking.map((after) => ({
      check: id,
      path: ['differentialOf', 'after'],
      reason: `"${differentialOf!.check}" has no outcome "${after}"`,
    }));
  });
}
