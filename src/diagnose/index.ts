export { type Access, accessFor } from './advice/access.js';
export { type Enough, enoughToAct } from './advice/enough.js';
export {
  type EvidenceItem,
  type FaultFinding,
  type FaultSet,
  type Findings,
  findings,
} from './advice/findings.js';
export { type NextCheck, nextChecks, type Ranked, type Shop } from './advice/next.js';
export { isLocked, needsRunning, type Runs, runs, tellsWhetherItRuns } from './advice/running.js';
export { type SafetyQuestion, safetyQuestions } from './advice/safety.js';
export { spoiledAlready } from './advice/spoils.js';
export { matters } from './advice/stakes.js';
export type { Unexplained } from './advice/unexplained.js';
export type { OutcomeProspect } from './advice/value.js';
export { NetworkError, type NetworkErrorCode } from './error.js';
export { type EvidenceWeight, evidenceWeights } from './evidence.js';
export { type ExplainOptions, type Explanation, type Explanations, explanations } from './explain.js';
export type { FindingView } from './finding.js';
export {
  type Answer,
  answerOf,
  type BoundedInference,
  byFault,
  type ExactInference,
  type Inference,
  infer,
  inferExactly,
  type Limits,
  usualLimits,
} from './infer.js';
export {
  addCounts,
  countFaults,
  type FaultCount,
  type FinishedJob,
  frequenciesFor,
  type Learned,
  type LearnedFrequency,
  learnedFromCounts,
  learnedPriors,
} from './learning/learn.js';
export type { CaseHistory, MachineFacts, Repair, SeenCheck } from './machine/case.js';
export { clears, stillShows } from './machine/differential.js';
export type { MachineFault } from './machine/faults.js';
export type { MachineCheck, TakenReading } from './machine/machine.js';
export { type Machine, machineNetwork } from './machine/machine.js';
export { hiddenBy } from './machine/masks.js';
export { releaseVariant } from './machine/release.js';
export { evidenceDestroyedBy } from './machine/spoils.js';
export { type Known, type Network, networkSchema, type Reading, readNetwork, type Sign } from './network.js';
export {
  entropyBits,
  informationBits,
  jointInformationBits,
  leastProbability,
  type Outcome,
  outlook,
  type Prospect,
  prospects,
} from './outlook.js';
export { type Attempt, byProbabilityPerCost, expectedCost } from './repair-order.js';
export type { PartsKnown } from './worth/bill.js';
export { type WorthStep, type WorthThen, worthHistory } from './worth/history.js';
export type { Spread } from './worth/spread.js';
export type { Stop, StopRule } from './worth/stop.js';
export { hours, type WorthWords, worthWords } from './worth/words.js';
export { type Driver, type Worth, type WorthAsked, worthIt } from './worth/worth.js';
