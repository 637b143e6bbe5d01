export { type App, createApp } from './app.js';
export { type Exported, exportJob, type Imported, importBundle } from './bundle.js';
export { type Loaded, loadDemo, type RemovedDemo, removeDemo } from './demo.js';
export { ApiError, type ErrorAnswer } from './error.js';
export { type Packaged, packaged } from './package.js';
export type { Parts } from './parts.js';
export { type PrintedRecord, printRecord } from './record.js';
export { type Running, serve } from './serve.js';
export { type ListedJob, Summaries } from './summaries.js';
