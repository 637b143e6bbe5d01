export { type EvidenceLine, evidenceLog, timesWords } from './evidence-log.js';
export { findingsOf, type JobFindings } from './findings.js';
export { type LastMove, lastMove, type Moved } from './moved.js';
