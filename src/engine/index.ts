export { standardAirAtMapHeight } from './atmosphere.js';
export { type ClassifiedCompression, classifyCompression } from './cranking/classify.js';
export {
  type CompressionGeometry,
  type ExpectedCompression,
  expectedCompression,
} from './cranking/expected.js';
export { EngineError } from './error.js';
export { clearanceForRatio, ratioAfterMilling } from './geometry.js';
export { displacementCc } from './slider-crank.js';
