import { applies, type Catalog, type Facts } from '../../catalog/index.js';
import type { Job } from '../job.js';
import { safetyFound } from './findings.js';
import type { GateRules } from './gates.js';

/** What the catalog's conditions may ask of this machine. */
export function factsOf(job: Job): Facts {
  return job.intake;
}

/**
 * The catalog's part in this machine's gates: what cannot concern it is left out, what may is kept.
 * @param frequencies the shop's own, so that the gate and the findings say the same
 */
export function gateRules(catalog: Catalog, job: Job, frequencies?: ReadonlyMap<string, number>): GateRules {
  const facts = factsOf(job);
  return {
    safetyFound: safetyFound(job, catalog, frequencies),
    firstLooks: catalog.firstLooks
      .filter((f) => applies(f.when, facts) !== 'no')
      .map((f) => ({ title: f.title, checks: f.checks })),
    runUp: catalog.runUp
      .filter((step) => applies(step.when, facts) !== 'no')
      .map((step) => ({ id: step.id, title: step.title, barsHandOver: step.barsHandOver ?? false })),
  };
}
