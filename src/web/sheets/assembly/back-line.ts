import type { BackStep, Body } from '../../../job/index.js';

/** What of a step is back as it should be: every bolt in, every plug out, every check so. */
export function backLine(step: BackStep): Body<'step'> {
  const { off } = step;
  return {
    step: step.step,
    stage: 'assembly',
    title: `${step.title}: back on`,
    state: 'done',
    putsBack: off.step,
    ...(off.component !== undefined && { component: off.component }),
    fasteners: [...step.fasteners],
    unplugged: [...step.unplug],
    checked: [...new Set(step.checks.map((c) => c.words))],
  };
}
