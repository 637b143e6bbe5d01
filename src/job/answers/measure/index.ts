export {
  type BoreAnswer,
  type BoringPlan,
  boreAnswers,
  boreMeasure,
  nextSize,
  skirtMeasure,
  usualBoring,
  type WorkedFigure,
} from './bore.js';
export {
  bandWords,
  type CompressionAnswer,
  type CompressionQuestion,
  compressionOf,
  compressionQuestion,
} from './compression.js';
export { decisionHandle, valveOf } from './decision-handle.js';
export {
  type FaceAnswer,
  type FaceMeasure,
  type FaceWay,
  faceAnswers,
  faceHandle,
  faceMeasures,
  milled,
} from './face.js';
export { classLimits, sheetLimit, standingLimit } from './limit-for.js';
export { decisionOf, type LimitAnswer, limitAnswer, limitAnswers } from './limits.js';
export { amountOf, poolReadings, type ReadingGroup, readingGroups } from './readings.js';
export { type ValveAnswer, valveAnswers } from './valves.js';
