import { soundLeaks, usualGauge } from '../../src/engine/cranking/class-engine.js';
import { valveAreaMm2, valveTiming } from '../../src/engine/cranking/exchange.js';
import type { CompressionGauge, CrankedEngine, CrankingConditions } from '../../src/engine/cranking/setup.js';

/** An ordinary overhead-valve single, for tests and benchmarks. */
export const usualEngine: CrankedEngine = {
  boreMm: 65,
  strokeMm: 62,
  rodMm: 108.5,
  compressionRatio: 8,
  exchange: valveTiming({
    intakeOpensBeforeTop: 15,
    intakeClosesAfterBottom: 55,
    exhaustOpensBeforeBottom: 50,
    exhaustClosesAfterTop: 15,
    intakeAreaMm2: valveAreaMm2(25, 6),
    exhaustAreaMm2: valveAreaMm2(21, 5),
  }),
  leaks: soundLeaks(65),
  creviceMl: 0.28,
};

export const gauge: CompressionGauge = usualGauge;

export const tenPulls: CrankingConditions = {
  ambientPa: 101_325,
  airK: 293.15,
  wallK: 293.15,
  rpm: 300,
  by: 'rope',
  pulls: 10,
  turnsPerPull: 4,
  heatFactor: 1,
};
