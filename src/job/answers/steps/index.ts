export type { Coverage, WantedView } from './coverage.js';
export { freeHandle, inOrderDone, offNow } from './taken.js';
export { doneSteps, fastenerLabel, type Tally, tally } from './tally.js';
