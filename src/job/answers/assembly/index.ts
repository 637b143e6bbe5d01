export type { AskedGate } from './asked-gates.js';
export {
  type AssemblyPlan,
  assemblyPlanOf,
  type BackStep,
  type Renewal,
  type StepTorque,
  type WaitsFor,
} from './plan.js';
export { dueFromProvisionals, provisionalsOf } from './provisional.js';
export { type BoltTurn, type TighteningProgress, tightening, turnTorque } from './tightening.js';
