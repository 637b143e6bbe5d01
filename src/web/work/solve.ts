import type { ExpectedCompression } from '../../engine/index.js';
import type { CompressionQuestion } from '../../job/index.js';
import type { BenchProblem, BenchSchedule } from '../../plan/index.js';
import type { Alternatives, BasketProblem } from '../../supply/index.js';
import { byWorker } from './ask-worker.js';

export const solveBasket = byWorker<BasketProblem, Alternatives>(
  () => new Worker(new URL('./basket-worker.ts', import.meta.url), { type: 'module' }),
);

export const solveBench = byWorker<BenchProblem, BenchSchedule>(
  () => new Worker(new URL('./bench-worker.ts', import.meta.url), { type: 'module' }),
);

export const solveCompression = byWorker<CompressionQuestion, ExpectedCompression>(
  () => new Worker(new URL('./compression-worker.ts', import.meta.url), { type: 'module' }),
);
