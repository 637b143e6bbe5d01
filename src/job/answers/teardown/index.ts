export { type EarlyWait, penetrant } from './early.js';
export type { EngineGraph } from './engine-graph.js';
export { type GoalChoice, goalChoices, type TeardownGoal, type WantedGoal } from './goals.js';
export { type PlannedStep, type StepFastener, stepBy, type TeardownPlan, teardownPlanOf } from './plan.js';
