export { geopotentialM, type StandardAir, standardAir, standardAirAtMapHeight } from './atmosphere.js';
export { ringGapLeakMm2, soundLeaks, usualGauge } from './cranking/class-engine.js';
export {
  type ClassifiedCompression,
  type CompressionReading,
  classifyCompression,
  compressionRungs,
} from './cranking/classify.js';
export { type CrankingOptions, type CrankingResult, crank, type TracePoint } from './cranking/crank.js';
export { valveAreaMm2, valveTiming } from './cranking/exchange.js';
export {
  type CompressionConditions,
  type CompressionGeometry,
  type CompressionSpreads,
  type ExpectedCompression,
  expectedCompression,
  uncertaintyBesideLeak,
} from './cranking/expected.js';
export { type LeakFound, leakFromReading, readingWithLeak } from './cranking/find-leak.js';
export {
  type CompressionGauge,
  type CrankedEngine,
  type CrankingConditions,
  type Leaks,
  noLeaks,
} from './cranking/setup.js';
export { annandCoefficient, hohenbergCoefficient, wallHeatCoefficient } from './cranking/wall-heat.js';
export { DormandPrince, type Slope, type Tolerance } from './dormand-prince.js';
export { EngineError } from './error.js';
export { burnedPart, durationPartAt } from './firing/burn.js';
export {
  type ExpectedFiring,
  type ExpectedPower,
  expectedFiring,
  expectedPower,
  type FiringGeometry,
  type FiringGiven,
  likelyFiring,
  likelyPower,
  standardWeather,
} from './firing/expected-firing.js';
export { type Burn, type Charge, type FiredEngine, type FiringConditions, fire } from './firing/fire.js';
export { automotiveFriction } from './firing/friction.js';
export { airAlone, airFuelRatio, gasolineCharge } from './firing/gas.js';
export { type HeadLoad, headLoad } from './firing/head-load.js';
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
export { gammaOfAir, type OttoCycle, ottoCycle } from './otto-cycle.js';
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
