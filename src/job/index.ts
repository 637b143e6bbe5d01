export { type AskedGate, assemblyGates } from './answers/assembly/asked-gates.js';
export {
  type AssemblyPlan,
  assemblyPlanOf,
  type BackStep,
  type Renewal,
  type StepTorque,
  type WaitsFor,
} from './answers/assembly/plan.js';
export { dueFromProvisionals, type Provisional, provisionalsOf } from './answers/assembly/provisional.js';
export {
  type BoltTurn,
  boltTurns,
  type TighteningProgress,
  tightening,
  turnTorque,
} from './answers/assembly/tightening.js';
export {
  type BenchAsked,
  type BenchBlock,
  type BenchPlan,
  benchPlanOf,
  benchProblemOf,
  type PlacedBlock,
  type PlannedJob,
} from './answers/bench/plan.js';
export { type JobSummary, jobSummary } from './answers/bench/summary.js';
export { type JobWork, workOf } from './answers/bench/work-left.js';
export {
  type AgentAnswer,
  type CleaningAsked,
  cleaningAnswers,
  cleaningRefused,
  cleaningStates,
  waysToClean,
} from './answers/cleaning.js';
export { type EvidenceLine, evidenceLog, timesWords } from './answers/findings/evidence-log.js';
export { type FindingsOptions, findingsOf, type JobFindings } from './answers/findings/findings.js';
export { faultsSaid, machineOf } from './answers/findings/machine-case.js';
export { type LastMove, lastMove, type Moved } from './answers/findings/moved.js';
export {
  type BoreAnswer,
  type BoringPlan,
  boreAnswers,
  boreMeasure,
  nextSize,
  skirtMeasure,
  usualBoring,
  type WorkedFigure,
} from './answers/measure/bore.js';
export { bandWords, type CompressionAnswer, compressionOf } from './answers/measure/compression.js';
export { decisionHandle, overheadValve, sideValve, valveOf } from './answers/measure/decision-handle.js';
export {
  type FaceAnswer,
  type FaceMeasure,
  type FaceWay,
  faceAnswers,
  faceHandle,
  faceMeasures,
  milled,
} from './answers/measure/face.js';
export { type ClassLimit, classLimits, sheetLimit, standingLimit } from './answers/measure/limit-for.js';
export { decisionOf, type LimitAnswer, limitAnswer, limitAnswers } from './answers/measure/limits.js';
export {
  amountOf,
  poolReadings,
  type ReadingGroup,
  readingGroups,
  standingGroups,
} from './answers/measure/readings.js';
export { type ValveAnswer, valveAnswers } from './answers/measure/valves.js';
export { type BillLine, billOfParts, type FlaggedLookAlike } from './answers/parts/bill.js';
export {
  type BasketAsked,
  basketProblemOf,
  dayAfter,
  type Orders,
  orderEntries,
  ordersOf,
  partName,
  toBuy,
} from './answers/parts/order.js';
export { type AcceptanceRow, acceptanceOf } from './answers/run-up/acceptance.js';
export { type HeardRow, heardOf, loadOn } from './answers/run-up/heard.js';
export { type Hearing, hearing } from './answers/run-up/hearing.js';
export {
  type RunUp,
  type RunUpItem,
  type RunUpLimit,
  type RunUpState,
  runUpOf,
} from './answers/run-up/run-up.js';
export {
  catalogOf,
  givesWords,
  type ReadShopPack,
  readShopPack,
  type ShopCatalog,
  type ShopPack,
  shopCatalog,
} from './answers/shop/catalog.js';
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
} from './answers/shop/learned.js';
export { type StepTime, shopMinutes, stepTimes } from './answers/shop/step-minutes.js';
export {
  dayNames,
  hoursText,
  readHours,
  usualHours,
  type WorkingHours,
  wallMinute,
  wallTime,
} from './answers/shop/working-hours.js';
export { type Gate, type GateRules, gate, gates } from './answers/stages/gates.js';
export { factsOf, gateRules } from './answers/stages/rules.js';
export { type Coverage, coverageOf, viewKey, type WantedView } from './answers/steps/coverage.js';
export { freeHandle, inOrderDone, offNow, piecesOf } from './answers/steps/taken.js';
export { doneSteps, type FastenerCount, fastenerLabel, type Tally, tally } from './answers/steps/tally.js';
export { type EarlyWait, penetrant } from './answers/teardown/early.js';
export { type EngineGraph, engineGraph, isGraph, type NoGraph } from './answers/teardown/engine-graph.js';
export {
  type GoalChoice,
  goalChoices,
  type TeardownGoal,
  type WantedGoal,
} from './answers/teardown/goals.js';
export {
  type PlannedStep,
  type PlanOptions,
  type StepFastener,
  stepBy,
  type TeardownPlan,
  teardownPlanOf,
} from './answers/teardown/plan.js';
export { type Spent, type WorthVerdict, worthHistoryOf, worthOf } from './answers/worth-it.js';
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
export { type LineWords, lineWords } from './line-words.js';
export { localTime } from './local-time.js';
export { EntryError, entryVersion, isKnownKind, readEntry, written } from './read-entry.js';
