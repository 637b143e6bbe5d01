export { decisionHandle, valveOf, valveWay } from '../../valve.js';
export {
  type BoreAnswer,
  type BoringPlan,
  nextSize,
  skirtMeasure,
  usualBoring,
  type WorkedFigure,
} from './bore.js';
export { bandWords, type CompressionQuestion } from './compression.js';
export {
  type FaceAnswer,
  type FaceWay,
  faceHandle,
  milled,
} from './face.js';
export { classLimits, sheetLimit } from './limit-for.js';
export { decisionOf, type LimitAnswer, limitAnswer } from './limits.js';
export { amountOf, poolReadings, type ReadingGroup } from './readings.js';
export type { ValveAnswer } from './valves.js';
