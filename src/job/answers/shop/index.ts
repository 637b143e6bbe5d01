export {
  catalogOf,
  givesWords,
  type PackText,
  type ReadShopPack,
  readPacks,
  readShopPack,
  type ShopPack,
  shopCatalog,
} from './catalog.js';
export {
  countFinished,
  exportedFrequencies,
  type FinishedCounts,
  type FinishedHere,
  type JobsTaught,
  nothingTaught,
  type OwnFrequencies,
  type OwnSay,
  ownFrequencies,
  ownSayWords,
} from './learned.js';
export { type StepTime, shopMinutes } from './step-minutes.js';
export { hoursText, readHours, usualHours, type WorkingHours, wallTime } from './working-hours.js';
