import { applies } from '../../../catalog/index.js';
import { counted } from '../../../phrase/index.js';
import type { Answers } from '../answers.js';
import { viewsOf } from '../steps/coverage.js';
import { piecesOf } from '../steps/taken.js';
import type { TeardownPlan } from '../teardown/plan.js';
import type { GateRules } from './gates.js';

/**
 * The catalog's part in this machine's gates: what cannot concern it is left out, what may is kept. The safety faults that
 * the evidence points to are not in it: they take an inference and bar only the hand-over.
 */
export function listedRules(answers: Answers): GateRules {
  const { catalog, teardown, runUp } = answers;
  const { facts } = answers.engine;
  const ahead = teardown.state === 'planned' ? aheadWords(teardown) : undefined;
  const { items, stops } = runUp;
  return {
    safetyFound: [],
    ...(ahead !== undefined && { ahead }),
    missingViews: missingViews(answers),
    toProve: gateListSigned(answers) ? [] : openGates(answers),
    firstLooks: catalog.firstLooks
      .filter((f) => applies(f.when, facts) !== 'no')
      .map((f) => ({ title: f.title, checks: f.checks })),
    runUp: items.map(({ step, state, asked }) => ({
      title: step.title,
      barsHandOver: step.barsHandOver ?? false,
      isAsked: asked === 'safety' || asked === 'touched',
      state,
    })),
    stops,
  };
}

/** Whoever signs that item of the run-up has gone through all of them. */
const gateListSigned = ({ job, catalog }: Answers): boolean =>
  catalog.runUp.some(({ id, provesAssembly }) => provesAssembly && job.runUp.get(id)?.result === 'ok');

function openGates({ assemblyGates }: Answers): string[] {
  return assemblyGates
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
    `${counted(steps.length, 'step')} to reach ${named}`,
    `${Math.round(minutes)} min`,
    ...(views > 0 ? [`${counted(views, 'picture')} first`] : []),
  ].join(', ');
}

function missingViews(answers: Answers): Map<string, readonly string[]> {
  const open = [...answers.job.steps.values()].filter((s) => s.stage === 'teardown' && s.state === 'planned');
  return new Map(
    open.map((s) => {
      const components = piecesOf(answers, s);
      const views = viewsOf(answers, { step: s.step, title: s.title, components });
      return [s.step, views.filter((v) => !v.shown).map((v) => v.view)];
    }),
  );
}
