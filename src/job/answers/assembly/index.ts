export type { AskedGate } from './asked-gates.js';
export type { LastAct } from './last-act.js';
export type { AssemblyPlan, BackStep, Renewal, StepTorque, WaitsFor } from './plan.js';
export { type BoltTurn, type TighteningProgress, turnFrom, turnTorque } from './tightening.js';
