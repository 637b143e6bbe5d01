export { type Architecture, architectures } from './fields/when.js';
export type { JudgementId } from './judgement.js';
export type { RoleId } from './role.js';
export { type BenchTask, stageIds } from './stage.js';
