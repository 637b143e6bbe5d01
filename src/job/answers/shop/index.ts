export {
  catalogOf,
  givesWords,
  type ReadShopPack,
  readShopPack,
  type ShopPack,
  shopCatalog,
} from './catalog.js';
export {
  exportedFrequencies,
  type FinishedHere,
  finishedJobs,
  type OwnFrequencies,
  type OwnSay,
  ownFrequencies,
  ownSay,
  ownSayWords,
} from './learned.js';
export { type StepTime, shopMinutes, stepTimes } from './step-minutes.js';
export { dayNames, hoursText, readHours, usualHours, type WorkingHours, wallTime } from './working-hours.js';
