export type { SpecLine } from './line.js';
export { readSpecLineAs, readSpecLines } from './read-spec-lines.js';
export { asPrinted, doubtOfSeen, type SeenWord } from './seen-line.js';
