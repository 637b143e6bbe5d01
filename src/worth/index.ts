export type { PartsKnown } from './bill.js';
export { type WorthStep, type WorthThen, worthHistory } from './history.js';
export type { Spread } from './spread.js';
export type { Stop, StopRule } from './stop.js';
export { type WorthWords, worthWords } from './words.js';
export { type Driver, type Worth, type WorthAsked, worthIt } from './worth.js';
