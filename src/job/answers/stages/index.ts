export { type Gate, gates } from './gates.js';
export { gateRules } from './rules.js';
