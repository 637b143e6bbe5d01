export { type Condition, conditions, factorsFor } from './friction.js';
export { type Pass, passes, passSchemes, type TighteningStep, tighteningSteps } from './passes.js';
export { checkOrder, type TighteningOrder, tighteningOrder } from './pattern.js';
export { requirePlausibleTorque } from './plausible.js';
export type { ThreadForm } from './thread-form.js';
export { findThread, type StandardThread } from './threads.js';
export { clampForTorque, clampRange } from './torque.js';
export { worksheets } from './worksheets.js';
export { fitWrench, type Wrench, type WrenchFit } from './wrench-fit.js';
