export { type Access, accessFor, withWhatStandsBefore } from './advice/access.js';
export { type Enough, enoughToAct } from './advice/enough.js';
export {
  type EvidenceItem,
  type FaultFinding,
  type FaultSet,
  type Findings,
  findings,
} from './advice/findings.js';
export { type NextCheck, nextChecks, type Ranked, type Shop, valueAhead } from './advice/next.js';
export { type MeantOutcome, meantBy } from './advice/own-words.js';
export { complaintsMeant } from './advice/owner-words.js';
export { isLocked, needsRunning, type Runs, runs, tellsWhetherItRuns } from './advice/running.js';
export { type SafetyQuestion, safetyQuestions } from './advice/safety.js';
export { spoiledAlready } from './advice/spoils.js';
export { matters } from './advice/stakes.js';
export type { Unexplained } from './advice/unexplained.js';
export type { OutcomeProspect } from './advice/value.js';
export { type Act, type EngineNow, engineNow } from './engine/bars.js';
export type { KnownOfEngine, PieceTold } from './engine/known.js';
export type { EnginePiece, Fitted } from './engine/pieces.js';
export { type OpenQuestion, questionsAt } from './engine/questions.js';
export type { EngineState } from './engine/state.js';
export {
  addCounts,
  countedChance,
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
export { type LinkedPair, linkedPairs } from './machine/linked-pairs.js';
export type { MachineCheck, TakenReading } from './machine/machine.js';
export { type Machine, machineNetwork } from './machine/machine.js';
export { hiddenBy } from './machine/masks.js';
export { cannotTell, notNow, saidOfAnyCheck } from './machine/readings.js';
export { evidenceDestroyedBy } from './machine/spoils.js';
export { outcomeOfValue, type ValueUnit, valueLookedFor, valueUnit, whyNoValue } from './machine/values.js';
