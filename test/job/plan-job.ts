import { type Architecture, builtInCatalog } from '../../src/catalog/index.js';
import { type Body, fold, type Job, type PlannedStep, type TeardownPlan } from '../../src/job/index.js';
import { door } from './door.js';
import { jobId, log } from './entries.js';

export const catalog = builtInCatalog();

/** An engine of a kind on the bench, with what the test says of it. */
export function bench(architecture: Architecture, facts: Body<'intake'> = {}) {
  const { add, lines } = log();
  add('open', { tag: 7, title: 'invented' });
  add('intake', { machine: 'invented machine', architecture, ...facts });
  const job = (): Job => fold(jobId, lines);
  const want = (component: string) =>
    add('goal', { component, title: component.replaceAll('-', ' '), why: 'wanted by hand', state: 'wanted' });
  const plan = (now?: string): TeardownPlan => {
    const found = now === undefined ? door(job()).teardown : door(job()).teardownAt(now);
    if (found.state !== 'planned') throw new Error(found.words);
    return found;
  };
  const takeOff = (step: PlannedStep, more: Partial<Body<'step'>> = {}) =>
    add('step', {
      step: step.step,
      stage: 'teardown',
      title: step.name,
      components: [...step.components],
      state: 'done',
      ...more,
    });
  const putBack = (step: string, more: Partial<Body<'step'>> = {}) =>
    add('step', {
      step: `${step}-back`,
      stage: 'assembly',
      title: step,
      state: 'done',
      putsBack: step,
      ...more,
    });
  return { add, lines, job, want, plan, takeOff, putBack };
}
