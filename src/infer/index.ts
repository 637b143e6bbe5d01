export { type Next, seeded } from './chance.js';
export { NetworkError, type NetworkErrorCode } from './error.js';
export { type EvidenceWeight, evidenceWeights } from './evidence.js';
export { drawStates } from './exact/sample.js';
export { type ExplainOptions, type Explanation, type Explanations, explanations } from './explain.js';
export type { FindingView } from './finding.js';
export {
  type Answer,
  answerOf,
  type BoundedInference,
  byFault,
  byFunction,
  type ExactInference,
  type Inference,
  infer,
  inferExactly,
  type Limits,
  usualLimits,
} from './infer.js';
export {
  faultCauses,
  type Known,
  type Network,
  type NetworkFunction,
  nameOf,
  networkSchema,
  type Reading,
  readNetwork,
  type Sign,
  type SignCause,
} from './network.js';
export {
  leastProbability,
  type Outcome,
  outlook,
  type Prospect,
  prospects,
} from './outlook.js';
export { type Attempt, byProbabilityPerCost, expectedCost } from './repair-order.js';
export { chanceTogether } from './together.js';
