import { applies, type Catalog } from '../../../catalog/index.js';
import type { Job } from '../../job.js';
import { assemblyGates } from '../assembly/asked-gates.js';
import { safetyFound } from '../findings/findings.js';
import { runUpOf } from '../run-up/run-up.js';
import { viewsOf } from '../steps/coverage.js';
import { architectureOf, piecesOf } from '../steps/taken.js';
import { type TeardownPlan, teardownPlanOf } from '../teardown/plan.js';
import type { GateRules } from './gates.js';

/**
 * The catalog's part in this machine's gates: what cannot concern it is left out, what may is kept.
 * @param frequencies the shop's own, so that the gate and the findings say the same
 */
export function gateRules(catalog: Catalog, job: Job, frequencies?: ReadonlyMap<string, number>): GateRules {
  return { ...listedRules(catalog, job), safetyFound: safetyFound(job, catalog, frequencies) };
}

/** The same without the safety faults that the evidence points to, which take an inference and bar only the hand-over. */
export function listedRules(catalog: Catalog, job: Job): GateRules {
  const facts = job.intake;
  const plan = teardownPlanOf(job, catalog);
  const ahead = plan.state === 'planned' ? aheadWords(plan) : undefined;
  const { items, stops } = runUpOf(job, catalog);
  return {
    safetyFound: [],
    ...(ahead !== undefined && { ahead }),
    missingViews: missingViews(job, catalog),
    toProve: gateListSigned(job) ? [] : openGates(job, catalog),
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

/** The first item of the run-up: whoever signs it has gone through all of them. */
const gateListSigned = (job: Job): boolean => job.runUp.get('gates-signed')?.result === 'ok';

function openGates(job: Job, catalog: Catalog): string[] {
  return assemblyGates(job, catalog)
    .filter((asked) => asked.state === 'asked')
    .map(({ gate }) => `${gate.name}: ${gate.demands.join(', ')}`);
}

/** "5 steps to reach Cylinder head, 24 min, 3 pictures first" */
function aheadWords({ steps, minutes, goals, coverage }: TeardownPlan): string | undefined {
  if (steps.length === 0) return undefined;
  const still = goals.filter((g) => g.state === 'wanted').map((g) => g.title);
  const named = still.length > 2 ? `${still.length} goals` : still.join(' and ');
  const views = coverage.missing.length;
  return [
    `${steps.length} ${steps.length === 1 ? 'step' : 'steps'} to reach ${named}`,
    `${Math.round(minutes)} min`,
    ...(views > 0 ? [`${views} ${views === 1 ? 'picture' : 'pictures'} first`] : []),
  ].join(', ');
}

function missingViews(job: Job, catalog: Catalog): Map<string, readonly string[]> {
  const architecture = architectureOf(job);
  const open = [...job.steps.values()].filter((s) => s.stage === 'teardown' && s.state === 'planned');
  return new Map(
    open.map((s) => {
      const components = piecesOf(s, catalog, architecture);
      const views = viewsOf(job, catalog, { step: s.step, title: s.title, components });
      return [s.step, views.filter((v) => !v.shown).map((v) => v.view)];
    }),
  );
}
