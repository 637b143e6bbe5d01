export { type App, createApp } from './app.js';
export { answerToName, type BenchName } from './bench-name.js';
export { type Network, ownAddresses } from './door.js';
export { ApiError, type ErrorAnswer } from './error.js';
export { keptTrust } from './kept-trust.js';
export type { Parts } from './parts.js';
export { type Running, serve } from './serve.js';
