import type { Stage } from './entry.js';

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
