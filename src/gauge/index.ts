export { type BoreCell, type BoreLimits, type BoreMap, type BoreReadings, boreMap } from './bore-map.js';
export { type Budget, type BudgetLine, budget, coverageFactor, type UncertaintySource } from './budget.js';
export { type ClassFigure, classFigures, classLimit, classOrigin, notThisEngines } from './class-figures.js';
export { type Clearance, clearance, clearanceFromWobble } from './clearance.js';
export {
  type Decision,
  decide,
  type Limit,
  type Measured,
  standardConfidence,
  type Verdict,
} from './decide.js';
export { decidingU } from './deciding-u.js';
export { GaugeError } from './error.js';
export { type FacePoint, type Flatness, flatness } from './flatness.js';
export { type Instrument, type Pooled, pool, type Reading, standardU } from './instrument.js';
export { normalBelow, normalQuantile } from './normal.js';
export { chooseOversize, type OversizeAnswer } from './oversize.js';
export { pooledScatter, type Repeats, repeats } from './pooled.js';
export { type Fit, fitLinear } from './regression.js';
export { classRingGap, gapClosing, gapInBore, growthFromGaps } from './ring-gap.js';
export { type Roundness, roundness } from './roundness.js';
export { type BetterTool, noNumberOfRepeats, type Settlement, settle, type Unsettled } from './settle.js';
export { decideExtreme, decideSpread } from './spread.js';
export { feelerGap, type StraightedgeAnswer, straightedgeSurvey } from './straightedge.js';
export { studentBelow, studentQuantile } from './student.js';
export { atReference, expansions, hotClearance, type Material, materials } from './thermal.js';
export { chooseThickness, type ThicknessAnswer } from './thickness-choice.js';
export { adjusterTurn, cutAgrees, type StemAnswer, stemShortening } from './valve-clearance.js';
export { worksheets } from './worksheets.js';
