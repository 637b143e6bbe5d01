export { type Answers, type AnswersAsked, answersFor } from './answers/answers.js';
export * from './answers/assembly/index.js';
export type { Bell } from './answers/bells.js';
export * from './answers/bench/index.js';
export { type AgentAnswer, cleaningStates, waysToClean } from './answers/cleaning.js';
export * from './answers/findings/index.js';
export * from './answers/measure/index.js';
export * from './answers/parts/index.js';
export * from './answers/rested/index.js';
export * from './answers/run-up/index.js';
export * from './answers/shop/index.js';
export type { Gate } from './answers/stages/gates.js';
export * from './answers/steps/index.js';
export * from './answers/teardown/index.js';
export type { WorthVerdict } from './answers/worth-it.js';
export { attachedTo } from './attached.js';
export { barePicture } from './bare-picture.js';
export { canonical, canonicalLine } from './canonical.js';
export * from './case/index.js';
export { type DueDay, dueDay } from './due-day.js';
export {
  type Body,
  type EntryKind,
  type Fastener,
  type Limit,
  type RawEntry,
  type Stage,
  shopLog,
  stages,
  type Written,
} from './entry.js';
export { filmMinutesLeft, filmSeconds } from './film-time.js';
export * from './find/index.js';
export { fold, foldShop } from './fold.js';
export { boltOf, type From, type IntakeFacts, type Job, type LogLine, quantityOf, type Shop } from './job.js';
export { lineWords } from './line-words.js';
export { localTime } from './local-time.js';
export { inOrder, placeOf, rankAfter, whenOf } from './order.js';
export { isTooLarge, mostPixels, pictureFrame } from './picture-frame.js';
export {
  asksTheEngine,
  EntryError,
  entryVersion,
  readBody,
  readEntry,
  understand,
  written,
} from './read-entry.js';
export type { RuleContext } from './rules/rule.js';
export { stageNames } from './stage-names.js';
