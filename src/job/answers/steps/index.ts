export type { Coverage, WantedView } from './coverage.js';
export { freeHandle } from './taken.js';
export { doneSteps, fastenerLabel, type Tally } from './tally.js';
export type { TwoAccounts } from './two-accounts.js';
