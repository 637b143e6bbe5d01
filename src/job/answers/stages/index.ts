export { type Gate, gates, safetyNotShown } from './gates.js';
export { gateRules } from './rules.js';
