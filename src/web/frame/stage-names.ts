import type { Stage } from '../../job/index.js';

/** The trade's words for the stages. */
export const stageNames: Readonly<Record<Stage, string>> = {
  intake: 'Intake',
  findings: 'Findings',
  'worth-it': 'Worth it?',
  parts: 'Parts',
  teardown: 'Teardown',
  measure: 'Measure',
  assembly: 'Assembly',
  'run-up': 'Run-up',
  'hand-over': 'Hand-over',
};
