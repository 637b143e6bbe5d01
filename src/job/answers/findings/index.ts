export { type EvidenceLine, timesWords } from './evidence-log.js';
export type { BarredCheck, JobFindings } from './findings.js';
export type { LastMove, Moved } from './moved.js';
export { lookedFor, seenWords, type TypedValue, typedValue, valueAsked } from './typed-value.js';
