export { type App, createApp } from './app.js';
export { ownAddresses } from './door.js';
export { ApiError, type ErrorAnswer } from './error.js';
export type { Parts } from './parts.js';
export { type Running, serve } from './serve.js';
