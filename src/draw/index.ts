export { type Axis, axisOver, roundStep } from './axis.js';
export { type BorePanel, type BoreRoom, type BoreView, boreDrawing } from './bore.js';
export { type HoleDrawing, type HoleMark, type HoleRoom, holesDrawing, roomFor } from './holes.js';
export {
  area,
  type Box,
  circle,
  type Drawing,
  level,
  line,
  type Place,
  rect,
  type Shape,
  short,
  text,
  upright,
} from './shape.js';
export {
  type SpeedPoint,
  type SpeedSpan,
  type SpeedView,
  speedCurve,
  speedDrawing,
  speedSpan,
} from './speed.js';
export { type SpreadView, spreadDrawing } from './spread.js';
export { limitStrip, type StripView } from './strip.js';
