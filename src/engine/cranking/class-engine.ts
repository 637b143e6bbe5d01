import { requirePositive } from '../error.js';
import type { CrankGeometry } from '../slider-crank.js';
import { type Exchange, valveAreaMm2, valveTiming } from './exchange.js';
import type { CompressionGauge, Leaks, Release } from './setup.js';

export const architectures = ['side-valve', 'overhead-valve', 'two-stroke'] as const;
export type EngineArchitecture = (typeof architectures)[number];

/** What stands for an engine of the class where its own figure is not known. Never this engine's own. */
export interface ClassEngine {
  readonly compressionRatio: number;
  /** standard uncertainty of the ratio, when the class figure is used */
  readonly ratioSpread: number;
}

/** Small air-cooled singles of about 2 to 13 hp: trade judgement, no source. The two-stroke's is over the full stroke. */
export const classEngines: Readonly<Record<EngineArchitecture, ClassEngine>> = {
  'side-valve': { compressionRatio: 6, ratioSpread: 0.4 },
  'overhead-valve': { compressionRatio: 8.3, ratioSpread: 0.35 },
  'two-stroke': { compressionRatio: 9, ratioSpread: 0.8 },
};

/** Rod over crank throw 3.5: usual in the class (trade judgement, no source). Example: stroke 62: 108.5 mm. */
export function classRodMm(strokeMm: number): number {
  return 1.75 * requirePositive(strokeMm, 'stroke');
}

/**
 * Valve timing or ports usual in the class (trade judgement, no source): intake closes 55° after bottom, which at pull
 * speed pushes a tenth of the charge back out. Valves 0.38 and 0.33 of the bore, lift a quarter of the valve.
 */
export function classExchange(architecture: EngineArchitecture, { boreMm }: CrankGeometry): Exchange {
  if (architecture === 'two-stroke') {
    const window = 0.012 * boreMm * boreMm;
    return {
      cycle: 'two-stroke',
      exhaustOpensDeg: 103,
      transferOpensDeg: 118,
      exhaustAreaMm2: 4 * window,
      transferAreaMm2: 4 * window,
    };
  }
  const valve = (part: number) => valveAreaMm2(part * boreMm, 0.25 * part * boreMm);
  return valveTiming({
    intakeOpensBeforeTop: 15,
    intakeClosesAfterBottom: 55,
    exhaustOpensBeforeBottom: 50,
    exhaustClosesAfterTop: 15,
    intakeAreaMm2: valve(0.38),
    exhaustAreaMm2: valve(0.33),
  });
}

/**
 * The leak of a sound cylinder, effective mm²: 0.6 at a 65 mm bore and in proportion to it (rings leak along their
 * length). It is what a leak-down of about 14 % is on an 80 psi tester with a 0.040 in orifice, the worse end of
 * what the trade calls good on small air-cooled engines, cold and dry as they are cranked; take it within a factor of 2.7 (k = 2). Trade judgement, no source.
 */
export function soundLeaks(boreMm: number): Leaks {
  const perMm = requirePositive(boreMm, 'bore') / 65;
  return {
    ringsMm2: 0.4 * perMm,
    intakeValveMm2: 0.08 * perMm,
    exhaustValveMm2: 0.08 * perMm,
    headGasketMm2: 0.04 * perMm,
  };
}

/** A release bump of the usual kind: 0.5 mm of valve lift until 45° before top (trade judgement, no source). */
export function classRelease(boreMm: number): Release {
  return {
    opensBeforeTop: 120,
    closesBeforeTop: 45,
    areaMm2: 0.6 * Math.PI * 0.33 * boreMm * 0.5,
    outAboveRpm: 700,
  };
}

/** A screw-in gauge with a soft-spring valve core at the plug end and a 300 mm hose (trade judgement, no source). */
export const usualGauge: CompressionGauge = { hoseMl: 8, adapterMl: 2, valveMm2: 1.5, opensAtPa: 5000 };

/**
 * On Woschni's wall heat at pull speed. His correlation was fitted on running engines and falls short at low speed;
 * Hohenberg's (SAE 790825, from memory) gives about three times as much there. 2.5 stands, within a factor of 2.7
 * (k = 2): trade judgement, no source.
 */
export const usualHeatFactor = 2.5;
