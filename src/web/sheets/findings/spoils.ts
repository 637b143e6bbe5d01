import type { Catalog, Check } from '../../../catalog/index.js';
import type { Job } from '../../../job/index.js';

/** Checks not made yet that read less, or nothing, once this one is done. */
export function spoiledBy({ checks, evidence }: Catalog, job: Job, check: Check): readonly Check[] {
  const made = new Set(job.observations.map((o) => o.check));
  const named = evidence
    .filter((e) => e.destroyedBy.checks?.includes(check.id))
    .flatMap((e) => e.checks ?? []);
  const ids = new Set([...(check.destroys ?? []), ...named]);
  return checks.filter((c) => ids.has(c.id) && c.id !== check.id && !made.has(c.id));
}
