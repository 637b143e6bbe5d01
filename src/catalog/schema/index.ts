export { type Architecture, architectures, uses } from './fields/when.js';
export type { JudgementId } from './judgement.js';
export { stageIds } from './stage.js';
