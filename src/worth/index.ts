export { nothingKnown, type PartsKnown } from './bill.js';
export { type WorthStep, type WorthThen, worthHistory } from './history.js';
export type { Spread } from './spread.js';
export type { Stop, StopRule } from './stop.js';
export { usualMinutes } from './usual.js';
export { restWords, type WorthWords, worthWords } from './words.js';
export {
  type Driver,
  type Estimate,
  estimateOf,
  type Rest,
  type Service,
  type Worth,
  type WorthAsked,
  worthIt,
} from './worth.js';
