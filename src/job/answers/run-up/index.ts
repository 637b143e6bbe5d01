export { droopBetween, topSpeedSaid } from './droop.js';
export { loadOn, toolHeard } from './heard.js';
export { engineHeard, type Hearing, hearing, mostRpm, settledSpeed } from './hearing.js';
export type { RunUpItem, RunUpLimit } from './run-up.js';
