export {
  type ExpectedFiring,
  type ExpectedPower,
  expectedFiring,
  expectedPower,
  type FiringGeometry,
  type FiringGiven,
  likelyFiring,
  likelyPower,
} from './expected-firing.js';
export { type Burn, type Charge, type FiredEngine, type FiringConditions, fire } from './fire.js';
export { airFuelRatio, gasolineCharge } from './gas.js';
export { type HeadLoad, headLoad } from './head-load.js';
