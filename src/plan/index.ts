export { PlanError, type PlanErrorCode } from './error.js';
export type { BenchProblem } from './schedule/bench-problem.js';
export { type BenchSchedule, benchSchedule, type ScheduleOptions } from './schedule/schedule.js';
export { adapted, type GraphChange } from './teardown/adapt.js';
export { type AssemblyStep, assemblySteps, type HowFar, howFar } from './teardown/assembly.js';
export { type Assumed, type CatalogGraph, type ShopMinutes, teardownGraph } from './teardown/from-catalog.js';
export type { TeardownGraph } from './teardown/graph.js';
export { type Goal, type LeastTeardown, leastTeardown, type Removal, type Wait } from './teardown/least.js';
export { type TeardownStep, teardownSteps } from './teardown/steps.js';
