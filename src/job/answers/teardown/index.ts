export type { EarlyWait } from './early.js';
export type { EngineGraph } from './engine-graph.js';
export type { GoalChoice, TeardownGoal, WantedGoal } from './goals.js';
export type { PlannedStep, StepFastener, TeardownPlan } from './plan.js';
