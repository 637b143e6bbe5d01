export { soundLeaks, usualGauge } from './class-engine.js';
export { type ClassifiedCompression, type CompressionReading, classifyCompression } from './classify.js';
export { type CrankingOptions, type CrankingResult, crank, type TracePoint } from './crank.js';
export { valveAreaMm2, valveTiming } from './exchange.js';
export {
  type CompressionConditions,
  type CompressionGeometry,
  type CompressionSpreads,
  type ExpectedCompression,
  expectedCompression,
  uncertaintyBesideLeak,
} from './expected.js';
export { type LeakFound, leakFromReading, readingWithLeak } from './find-leak.js';
export {
  type CompressionGauge,
  type CrankedEngine,
  type CrankingConditions,
  type Leaks,
  noLeaks,
} from './setup.js';
