export type { MissingMemory } from './memories.js';
export type { NextThing } from './next-things.js';
export { daysBetween, restDays, restWords } from './rest.js';
export type { OffNow, TorqueState, WhereWasI } from './where-was-i.js';
