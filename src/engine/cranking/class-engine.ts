import { requirePositive } from '../error.js';
import { faaOrificeMm, faaSupplyPa, heldAtPercent, leakArea } from '../leak-down.js';
import type { CrankGeometry } from '../slider-crank.js';
import { type Exchange, valveAreaMm2, valveTiming } from './exchange.js';
import { ropeFullDeg } from './pull-speed.js';
import type { CompressionGauge, Leaks, Release, Sag } from './setup.js';

export const architectures = ['side-valve', 'overhead-valve', 'two-stroke'] as const;
export type EngineArchitecture = (typeof architectures)[number];

/** What stands for an engine of the class where its own figure is not known. Never this engine's own. */
export interface ClassEngine {
  readonly compressionRatio: number;
  /** standard uncertainty of the ratio, when the class figure is used */
  readonly ratioSpread: number;
  /** opening of the chamber over the bore's area: a side-valve's lies over its valves too */
  readonly openingPart: number;
  /** radius at which the rope pulls: of a drum that grows with the engine, between the smallest and the largest used */
  readonly drum: { readonly at200ccMm: number; readonly leastMm: number; readonly mostMm: number };
  /** crank, flywheel and what hangs on them at 200 cc, kg·m² */
  readonly inertiaAt200cc: number;
}

/** The rope of a four-stroke lies on a drum of 50 to 55 mm radius (common practice). */
const fourStrokeDrum = { at200ccMm: 55, leastMm: 50, mostMm: 55 } as const;

/** Small air-cooled singles of about 2 to 13 hp: trade judgement, no source. The two-stroke's is over the full stroke. */
export const classEngines: Readonly<Record<EngineArchitecture, ClassEngine>> = {
  'side-valve': {
    ...{ compressionRatio: 6, ratioSpread: 0.4, openingPart: 1.6 },
    ...{ drum: fourStrokeDrum, inertiaAt200cc: 0.012 },
  },
  'overhead-valve': {
    ...{ compressionRatio: 8.3, ratioSpread: 0.35, openingPart: 1 },
    ...{ drum: fourStrokeDrum, inertiaAt200cc: 0.012 },
  },
  'two-stroke': {
    ...{ compressionRatio: 9, ratioSpread: 0.8, openingPart: 1 },
    ...{ drum: { at200ccMm: 40, leastMm: 20, mostMm: 45 }, inertiaAt200cc: 0.006 },
  },
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

/** On an 80 psi tester with a 0.040 in orifice, at a 65 mm bore: the worse end of what the trade calls good, under 15 %. */
const soundPercent = 14;
/** How it is shared out: rings, each valve, gasket (trade judgement, no source). */
const soundShares = { rings: 2 / 3, valve: 2 / 15, gasket: 1 / 15 } as const;

/**
 * The leak of a sound cylinder, effective mm²: what a leak-down of 14 % is at a 65 mm bore, and in proportion to the
 * bore (rings leak along their length).
 *
 * Under 15 % is what the trade calls good on small air-cooled engines (common practice); the worse end of it stands,
 * because the compression is taken cold and dry and of engines in use. Take it within a factor of 2.7 (k = 2): trade
 * judgement, no source. The rings' gaps are but a twentieth of it (`ringGapLeakMm2`): the rest passes their faces
 * and sides and the seats. Example: 65 mm: 0.61 mm².
 */
export function soundLeaks(boreMm: number): Leaks {
  const tester = { supplyPa: faaSupplyPa, orificeMm: faaOrificeMm.under5In };
  const total =
    (leakArea(tester, heldAtPercent(tester, soundPercent)) * requirePositive(boreMm, 'bore')) / 65;
  return {
    ringsMm2: soundShares.rings * total,
    intakeValveMm2: soundShares.valve * total,
    exhaustValveMm2: soundShares.valve * total,
    headGasketMm2: soundShares.gasket * total,
  };
}

/** Radial clearance of the lands, cold, over the bore (trade judgement, no source). */
const landClearance = 0.0025;

/**
 * A release of the usual kind: 0.22 mm of exhaust valve lift at a 65 mm bore until 45° before top (trade judgement, no
 * source). It is made to let the same part of the charge go at pull speed on an engine of any size, so that its area grows
 * with the displacement and its lift with the square of the bore. Example: 65 mm: 8.9 mm²; 51 mm: 4.3 mm².
 */
export function classRelease(boreMm: number): Release {
  const liftMm = 0.22 * (boreMm / 65) ** 2;
  return {
    opensBeforeTop: 120,
    closesBeforeTop: 45,
    areaMm2: 0.6 * Math.PI * 0.33 * boreMm * liftMm,
    outAboveRpm: 700,
  };
}

/** A screw-in gauge with a soft-spring valve core at the plug end and a 300 mm hose (trade judgement, no source). */
export const usualGauge: CompressionGauge = { hoseMl: 8, adapterMl: 2, valveMm2: 1.5, opensAtPa: 5000 };

/**
 * The gauge that is usual on the kind: 2 ml before its check valve would be as much as half the chamber of a hand-held
 * two-stroke, so that one with its valve in the very tip is used there (common practice; its 1 ml trade judgement, no
 * source).
 */
export const classGauge = (architecture: EngineArchitecture): CompressionGauge =>
  architecture === 'two-stroke' ? { ...usualGauge, adapterMl: 1 } : usualGauge;

/**
 * A hand on a rope pulls with 390 N where nothing moves and none at 2.75 m/s, and heaves the piston over top at 0.5 m/s at
 * the slowest (trade judgement, no source).
 */
const hand = { stallN: 390, idleMetersPerSecond: 2.75, slowestMetersPerSecond: 0.5 } as const;
/** An electric starter, its moment at 200 cc: it is sized with the engine (trade judgement, no source). */
const starter = { rpm: 350, stallNm: 24, idleRpm: 700, slowestRpm: 120 } as const;
/** What cold oil and rings take of a starter's moment, which is sized with the engine (trade judgement, no source). */
const coldFriction = 0.15;
/**
 * The same against a hand, which is not: mean effective pressure of an air-cooled single turned cold, Pa (trade judgement,
 * no source). 206 cc: 3.3 N·m of the hand's 21.5; 400 cc: 6.4.
 */
const coldFrictionPa = 2e5;
const handFrictionNm = (sweptCc: number, handNm: number) =>
  Math.min(handNm / 2, (coldFrictionPa * sweptCc * 1e-6) / (4 * Math.PI)); // beyond 650 cc nobody pulls a rope

const byStarter = (by: 'rope' | 'starter', architecture: EngineArchitecture) =>
  by === 'starter' && architecture !== 'two-stroke';
const rpmOfRope = (metersPerSecond: number, drumMm: number) =>
  (30_000 * metersPerSecond) / (Math.PI * drumMm);

/** Radius at which the rope of an engine of this size pulls, mm. Examples: four-stroke, 206 cc: 55; 50 cc two-stroke: 25.2. */
export function classDrumMm(architecture: EngineArchitecture, sweptCc: number): number {
  const { at200ccMm, leastMm, mostMm } = classEngines[architecture].drum;
  return Math.min(mostMm, Math.max(leastMm, at200ccMm * Math.cbrt(sweptCc / 200)));
}

/**
 * Pull speed where none is measured, before the compression holds it back: what the hand brings the flywheel to over the
 * turn in which a rope speeds up, by its own force less friction; a heavy one lags.
 *
 * Method: I·dω/dt = M·(1 − ω/ω₀) − F over that turn; its solution θ = ω₁·(t − τ·(1 − e^(−t/τ))), with ω₁ = ω₀·(1 − F/M) and
 * τ = I·ω₀/M, halved down to the moment at which the turn is out.
 * Examples, by rope: a four-stroke of 100 cc 482 rpm, of 206 cc 403, of 400 cc 317; a two-stroke of 50 cc 958; a starter 350.
 */
export function classSpeed(
  by: 'rope' | 'starter',
  architecture: EngineArchitecture,
  sweptCc: number,
): number {
  if (byStarter(by, architecture)) return starter.rpm;
  const { inertiaKgM2, stallNm, idleRpm } = classSag(by, architecture, sweptCc);
  const idle = (idleRpm * Math.PI) / 30;
  const moment = handMomentNm(architecture, sweptCc);
  const top = (idle * stallNm) / moment;
  const lag = (inertiaKgM2 * idle) / moment;
  const turnedAfter = (s: number) => top * (s - lag * (1 - Math.exp(-s / lag)));
  const turn = (ropeFullDeg * Math.PI) / 180;
  const seconds = halved(turnedAfter, turn, turn / top + lag);
  return (top * (1 - Math.exp(-seconds / lag)) * 30) / Math.PI;
}

const handMomentNm = (architecture: EngineArchitecture, sweptCc: number) =>
  (hand.stallN * classDrumMm(architecture, sweptCc)) / 1000;

/** Where a rising function reaches a value between 0 and `most`, to the last bit that matters. */
function halved(rising: (x: number) => number, value: number, most: number): number {
  let [low, high] = [0, most];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (rising(middle) < value) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * What keeps the crank turning against the compression: the flywheel grows with the fifth power of an engine's size,
 * hence the 5/3 power of its displacement; hand or starter with their moment. Example: 206 cc by rope: 0.0126 kg·m²,
 * 18.2 N·m at standstill.
 */
export function classSag(by: 'rope' | 'starter', architecture: EngineArchitecture, sweptCc: number): Sag {
  const drumMm = classDrumMm(architecture, sweptCc);
  const handNm = handMomentNm(architecture, sweptCc);
  const { inertiaAt200cc } = classEngines[architecture];
  const size = sweptCc / 200;
  const inertiaKgM2 = inertiaAt200cc * size ** (5 / 3);
  const turned = byStarter(by, architecture)
    ? { ...starter, stallNm: starter.stallNm * size * (1 - coldFriction) }
    : {
        stallNm: handNm - handFrictionNm(sweptCc, handNm),
        idleRpm: rpmOfRope(hand.idleMetersPerSecond, drumMm),
        slowestRpm: rpmOfRope(hand.slowestMetersPerSecond, drumMm),
      };
  const { stallNm, idleRpm, slowestRpm } = turned;
  return { inertiaKgM2, stallNm, idleRpm, slowestRpm };
}

/**
 * Walls round the clearance volume, mm²: floor and roof over the opening and the wall between them, as of a round
 * recess. Example: side-valve, 65 mm, 41 cc: 12 610 mm², against 6637 of two bore areas.
 */
export function classChamberMm2(
  architecture: EngineArchitecture,
  boreMm: number,
  clearanceCc: number,
): number {
  const opening = classEngines[architecture].openingPart * (Math.PI / 4) * boreMm * boreMm;
  return (
    2 * opening + (1000 * clearanceCc * 4) / (boreMm * Math.sqrt(classEngines[architecture].openingPart))
  );
}

/**
 * Narrow spaces that a burette does not see, ml: a top land 8 % of the bore high with 0.25 % of it radial clearance,
 * cold, and six tenths of that again behind and under the rings (trade judgement, no source; *Internal Combustion Engine
 * Fundamentals* 1988, §8.6, has one to two hundredths of the clearance volume, from memory). Example: 65 mm: 0.28 ml.
 */
export function classCreviceMl(boreMm: number): number {
  return (1.6 * Math.PI * 0.08 * landClearance * boreMm ** 3) / 1000;
}
