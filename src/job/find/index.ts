export { type Asked, askedFor, holds } from './asked.js';
export type { FoundJob } from './found.js';
export { type FoundPlace, jobTokens, placesFound, placesOf } from './places.js';
export { tokensOf } from './tokens.js';
