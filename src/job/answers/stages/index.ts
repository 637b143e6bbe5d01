export { type Gate, type GateRules, gates } from './gates.js';
export { gateRules } from './rules.js';
