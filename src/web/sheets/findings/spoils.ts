import type { Catalog, Check } from '../../../catalog/index.js';
import { evidenceDestroyedBy } from '../../../diagnose/index.js';
import type { Job } from '../../../job/index.js';

/** Checks not made yet that read less, or nothing, once this one is done. */
export function spoiledBy(catalog: Catalog, job: Job, check: Check): readonly Check[] {
  const made = new Set(job.observations.map((o) => o.check));
  const ids = new Set(evidenceDestroyedBy(catalog, check));
  return catalog.checks.filter((c) => ids.has(c.id) && !made.has(c.id));
}
