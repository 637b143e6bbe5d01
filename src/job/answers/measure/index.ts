export {
  type BoreAnswer,
  type BoringPlan,
  boreMeasure,
  nextSize,
  skirtMeasure,
  usualBoring,
  type WorkedFigure,
} from './bore.js';
export { bandWords, type CompressionQuestion } from './compression.js';
export { decisionHandle, valveOf } from './decision-handle.js';
export {
  type FaceAnswer,
  type FaceMeasure,
  type FaceWay,
  faceHandle,
  faceMeasures,
  milled,
} from './face.js';
export { classLimits, sheetLimit } from './limit-for.js';
export { decisionOf, type LimitAnswer, limitAnswer } from './limits.js';
export { amountOf, poolReadings, type ReadingGroup } from './readings.js';
export type { ValveAnswer } from './valves.js';
