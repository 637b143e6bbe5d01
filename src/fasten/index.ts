export { intoAluminum, neededEngagementMm, type TappedMetal } from './aluminum.js';
export { type Condition, conditions, factorsFor, type NutFactor, nutFactors } from './friction.js';
export { boltLoads, gradeNames, type Strength, strengthOf, unknownGrade } from './grades.js';
export { longFormClamp, longFormTorque, torqueParts } from './long-form.js';
export { correctForLubricant } from './lubricant.js';
export { type NamedThread, nameThread } from './name-thread.js';
export {
  type LooseningStep,
  looseningOrder,
  looseningSteps,
  type Pass,
  passes,
  passSchemes,
  type TighteningStep,
  tighteningSteps,
} from './passes.js';
export { checkOrder, type PatternRule, type TighteningOrder, tighteningOrder } from './pattern.js';
export { plausibleTorque, requirePlausibleTorque, torqueBounds } from './plausible.js';
export { proofShares, torqueForBolt } from './preload.js';
export { plugTorque } from './spark-plug.js';
export { tapDrill } from './tap-drill.js';
export {
  minorExternalMm,
  minorInternalMm,
  pitchDiameterMm,
  stressAreaMm2,
  type ThreadForm,
} from './thread-form.js';
export { type RepairOption, repairWays } from './thread-repair.js';
export { findThread, type StandardThread, threads, threadWords } from './threads.js';
export { clampForTorque, clampRange, torqueForClamp } from './torque.js';
export { worksheets } from './worksheets.js';
export { adapterSetting, appliedInterval, permittedDeviationPercent } from './wrench.js';
export { fitWrench, type Wrench, type WrenchFit } from './wrench-fit.js';
