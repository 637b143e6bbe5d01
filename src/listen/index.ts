export type { EngineKind } from './engine-kind.js';
export { ListenError } from './error.js';
export { loadSteps } from './load-steps.js';
export { listenToRun, type RunReport } from './run.js';
export type { SteadySegment } from './segments.js';
export type { Sound } from './sound.js';
export { orderLines, type Spectrogram, spectrogram } from './spectrogram.js';
export { readWav } from './wav.js';
