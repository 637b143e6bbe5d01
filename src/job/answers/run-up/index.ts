export { loadOn } from './heard.js';
export { type Hearing, hearing } from './hearing.js';
export type { RunUpItem, RunUpLimit } from './run-up.js';
