import { type Architecture, applies, architectures, type Catalog } from '../../catalog/index.js';
import type { FinishedJob } from '../../diagnose/index.js';
import type { Job } from '../job.js';
import { faultsSaid } from './machine-case.js';

/**
 * Which faults a finished job's machine had and had not, for the shop's own frequencies; undefined while it is not
 * finished or its kind of engine is not known.
 *
 * A fault that was decided on counts as decided. A machine that was repaired and handed over had none of the others:
 * it would not have passed its run-up. One that went as scrap, as a donor or unrepaired says nothing of the faults that
 * nobody looked for, and only the decided ones count.
 */
export function faultsOfJob(job: Job, catalog: Catalog): FinishedJob | undefined {
  const architecture = architectures.find((a): a is Architecture => a === job.intake.architecture);
  if (!job.handOver || architecture === undefined) return undefined;
  const said = Object.fromEntries(faultsSaid(job).map((f) => [f.fault, f.present]));
  const others = wasRepaired(job)
    ? catalog.faults.filter((f) => !(f.id in said) && applies(f.when, job.intake) !== 'no')
    : [];
  const faults = { ...Object.fromEntries(others.map((f) => [f.id, false])), ...said };
  return { architecture, faults, invented: job.invented };
}

function wasRepaired(job: Job): boolean {
  const last = job.decisions.findLast((d) => d.about === 'machine');
  const kept = last === undefined || last.choice === 'repair' || last.choice === 'ask-owner';
  return kept && [...job.runUp.values()].every((r) => r.result !== 'not-ok');
}

/** The finished jobs among these, ready to be counted. */
export function finishedJobs(jobs: readonly Job[], catalog: Catalog): FinishedJob[] {
  return jobs.flatMap((job) => faultsOfJob(job, catalog) ?? []);
}
