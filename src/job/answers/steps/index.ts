export type { Coverage, WantedView } from './coverage.js';
export { type Film, type FilmMoment, momentAt, type ViewOnFilm } from './film.js';
export { freeHandle } from './taken.js';
export { doneSteps, fastenerLabel, type Tally } from './tally.js';
export type { TwoAccounts } from './two-accounts.js';
