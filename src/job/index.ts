export { type AcceptanceRow, acceptanceOf } from './answers/acceptance.js';
export { type AskedGate, assemblyGates } from './answers/assembly-gates.js';
export {
  type AssemblyPlan,
  assemblyPlanOf,
  type BackStep,
  type Renewal,
  type StepTorque,
  type WaitsFor,
} from './answers/assembly-plan.js';
export {
  type BenchAsked,
  type BenchBlock,
  type BenchPlan,
  benchPlanOf,
  benchProblemOf,
  type PlacedBlock,
  type PlannedJob,
} from './answers/bench.js';
export { type BillLine, billOfParts, type FlaggedLookAlike } from './answers/bill.js';
export {
  type BoreAnswer,
  type BoringPlan,
  boreAnswers,
  boreMeasure,
  nextSize,
  skirtMeasure,
  usualBoring,
  type WorkedFigure,
} from './answers/bore.js';
export {
  type AgentAnswer,
  type CleaningAsked,
  cleaningAnswers,
  cleaningRefused,
  cleaningStates,
  waysToClean,
} from './answers/cleaning.js';
export {
  bandWords,
  type CompressionAnswer,
  type CompressionQuestion,
  compressionOf,
  compressionQuestion,
} from './answers/compression.js';
export { type Coverage, coverageOf, viewKey, type WantedView } from './answers/coverage.js';
export { decisionHandle, overheadValve, sideValve, valveOf } from './answers/decision-handle.js';
export { type EarlyWait, penetrant } from './answers/early.js';
export { type EngineGraph, engineGraph, isGraph, type NoGraph } from './answers/engine-graph.js';
export { type EvidenceLine, evidenceLog, timesWords } from './answers/evidence-log.js';
export {
  type FaceAnswer,
  type FaceMeasure,
  type FaceWay,
  faceAnswers,
  faceHandle,
  faceMeasures,
  milled,
} from './answers/face.js';
export { type FindingsOptions, findingsOf, type JobFindings } from './answers/findings.js';
export { type Gate, type GateRules, gate, gates } from './answers/gates.js';
export { type HeardRow, heardOf, loadOn } from './answers/heard.js';
export { type Hearing, hearing } from './answers/hearing.js';
export {
  exportedFrequencies,
  type FinishedHere,
  faultsOfJob,
  finishedJobs,
  type OwnFrequencies,
  type OwnSay,
  ownFrequencies,
  ownSay,
  ownSayWords,
} from './answers/learned.js';
export { type ClassLimit, classLimits, sheetLimit, standingLimit } from './answers/limit-for.js';
export { decisionOf, type LimitAnswer, limitAnswer, limitAnswers } from './answers/limits.js';
export { type LineWords, lineWords } from './answers/line-words.js';
export { faultsSaid, machineOf } from './answers/machine-case.js';
export { type LastMove, lastMove, type Moved } from './answers/moved.js';
export {
  type BasketAsked,
  basketProblemOf,
  dayAfter,
  type Orders,
  orderEntries,
  ordersOf,
  partName,
  toBuy,
} from './answers/order.js';
export { dueFromProvisionals, type Provisional, provisionalsOf } from './answers/provisional.js';
export {
  amountOf,
  poolReadings,
  type ReadingGroup,
  readingGroups,
  standingGroups,
} from './answers/readings.js';
export { factsOf, gateRules } from './answers/rules.js';
export { type RunUp, type RunUpItem, type RunUpLimit, type RunUpState, runUpOf } from './answers/run-up.js';
export {
  catalogOf,
  givesWords,
  type ReadShopPack,
  readShopPack,
  type ShopCatalog,
  type ShopPack,
  shopCatalog,
} from './answers/shop-catalog.js';
export { type StepTime, shopMinutes, stepTimes } from './answers/step-minutes.js';
export { type JobSummary, jobSummary } from './answers/summary.js';
export { freeHandle, inOrderDone, offNow, piecesOf } from './answers/taken.js';
export { doneSteps, type FastenerCount, fastenerLabel, type Tally, tally } from './answers/tally.js';
export {
  type GoalChoice,
  goalChoices,
  type TeardownGoal,
  type WantedGoal,
} from './answers/teardown-goals.js';
export {
  type PlannedStep,
  type PlanOptions,
  type StepFastener,
  stepBy,
  type TeardownPlan,
  teardownPlanOf,
} from './answers/teardown-plan.js';
export {
  type BoltTurn,
  boltTurns,
  type TighteningProgress,
  tightening,
  turnTorque,
} from './answers/tightening.js';
export { type ValveAnswer, valveAnswers } from './answers/valves.js';
export { type Spent, type WorthVerdict, worthHistoryOf, worthOf } from './answers/verdict.js';
export { type JobWork, workOf } from './answers/work-left.js';
export {
  dayNames,
  hoursText,
  readHours,
  usualHours,
  type WorkingHours,
  wallMinute,
  wallTime,
} from './answers/working-hours.js';
export {
  type Body,
  bodies,
  type Entry,
  type EntryKind,
  type EntryOf,
  type Fastener,
  type Limit,
  type RawEntry,
  type Stage,
  shopLog,
  stages,
  type Written,
} from './entry.js';
export { fold, foldShop, inOrder } from './fold.js';
export { type From, type IntakeFacts, type Job, type LogLine, quantityOf, type Shop } from './job.js';
export { localTime } from './local-time.js';
export { EntryError, entryVersion, isKnownKind, readEntry, written } from './read-entry.js';
