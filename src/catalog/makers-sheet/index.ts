export type { SpecLine } from './line.js';
export { readSpecLineAs, readSpecLines } from './read-spec-lines.js';
