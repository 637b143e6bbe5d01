export { type LastDone, lastDoneOf } from './last-done.js';
export {
  type BenchAsked,
  type BenchPlan,
  benchPlanOf,
  benchProblemOf,
  type PlacedBlock,
  type PlannedJob,
} from './plan.js';
export { type JobSummary, jobSummary } from './summary.js';
