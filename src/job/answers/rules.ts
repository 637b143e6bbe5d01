import { applies, type Catalog, type Facts } from '../../catalog/index.js';
import type { Job } from '../job.js';
import { safetyFound } from './findings.js';
import type { GateRules } from './gates.js';
import { runUpOf } from './run-up.js';

/** What the catalog's conditions may ask of this machine. */
export function factsOf(job: Job): Facts {
  return job.intake;
}

/** The catalog's part in this machine's gates: what cannot concern it is left out, what may is kept. */
export function gateRules(catalog: Catalog, job: Job): GateRules {
  const facts = factsOf(job);
  const { items, stops } = runUpOf(job, catalog);
  return {
    safetyFound: safetyFound(job, catalog),
    firstLooks: catalog.firstLooks
      .filter((f) => applies(f.when, facts) !== 'no')
      .map((f) => ({ title: f.title, checks: f.checks })),
    runUp: items.map(({ step, state }) => ({
      title: step.title,
      barsHandOver: step.barsHandOver ?? false,
      state,
    })),
    stops,
  };
}
