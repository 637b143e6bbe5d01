export { geopotentialM, type StandardAir, standardAir, standardAirAtMapHeight } from './atmosphere.js';
export * from './cranking/index.js';
export { EngineError } from './error.js';
export * from './firing/index.js';
export {
  ethanolBlend,
  fuelAge,
  leaningOnBlend,
  stoichiometricAir,
  twoStrokeOil,
  waterToleranceE10,
} from './fuel.js';
export { clearanceForRatio, compressionRatio, ottoEfficiency, ratioAfterMilling } from './geometry.js';
export { coilGap, keyOffsetMm, sparkShiftDeg } from './ignition.js';
export {
  faaOrificeMm,
  faaSupplyPa,
  heldPressure,
  type LeakTester,
  leakArea,
  leakDown,
  leakPercent,
} from './leak-down.js';
export { jetFor, jetForBlend, richening, richeningByDensity } from './mixture.js';
export {
  approximateAirDensity,
  dryAirDensity,
  magnusPressure,
  moistAirDensity,
  saturationPressure,
} from './moist-air.js';
export {
  crankingDrag,
  gradeLine,
  gradesFor,
  isoClasses,
  isoClassOf,
  leastHighShear,
  leastOfOldSae20,
  oilGrades,
  summerGrades,
  summerGradesOf,
  winterGrades,
} from './oil-grades.js';
export { criticalRatio, flowFunction, holeAreaMm2, holeDiameterMm, orificeFlow } from './orifice.js';
export { type OttoCycle, ottoCycle } from './otto-cycle.js';
export { iso1585Factor, saeJ1349Factor } from './power-correction.js';
export { angleAtTravelDeg, cylinderVolumeCc, displacementCc, pistonTravelMm } from './slider-crank.js';
export {
  beltDrive,
  droop,
  generatorHz,
  meanPistonSpeed,
  rpmAtTipSpeed,
  rpmForHz,
  tipSpeed,
  tipSpeedLimit,
} from './speeds.js';
export { viscosityAt, viscosityLine } from './viscosity.js';
export { referenceViscosities, viscosityIndex } from './viscosity-index.js';
export { worksheets } from './worksheets.js';
