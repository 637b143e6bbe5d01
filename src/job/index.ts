export { type EvidenceLine, evidenceLog, timesWords } from './answers/evidence-log.js';
export { type FindingsOptions, findingsOf, type JobFindings } from './answers/findings.js';
export { type Gate, type GateRules, gate, gates } from './answers/gates.js';
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
export { type LimitAnswer, limitAnswer, outsideLimit } from './answers/limits.js';
export { type LineWords, lineWords } from './answers/line-words.js';
export { faultsSaid, machineOf } from './answers/machine-case.js';
export { type LastMove, lastMove, type Moved } from './answers/moved.js';
export { factsOf, gateRules } from './answers/rules.js';
export {
  catalogOf,
  givesWords,
  type ReadShopPack,
  readShopPack,
  type ShopCatalog,
  type ShopPack,
  shopCatalog,
} from './answers/shop-catalog.js';
export { type JobSummary, jobSummary } from './answers/summary.js';
export { doneSteps, type FastenerCount, fastenerLabel, type Tally, tally } from './answers/tally.js';
export {
  type BoltTurn,
  boltTurns,
  type TighteningProgress,
  tightening,
  turnTorque,
} from './answers/tightening.js';
export { type Spent, type WorthVerdict, worthHistoryOf, worthOf } from './answers/verdict.js';
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
