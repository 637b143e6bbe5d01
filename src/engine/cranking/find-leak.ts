import { EngineError, requireNotNegative, requireWithin } from '../error.js';
import { holeDiameterMm } from '../orifice.js';
import { crank } from './crank.js';
import { type CompressionGauge, type CrankedEngine, type CrankingConditions, noLeaks } from './setup.js';

export type LeakFound =
  | {
      readonly informative: true;
      /** effective: hole × discharge coefficient; all paths together */
      readonly areaMm2: number;
      /** the round hole of that area, were its coefficient 1 */
      readonly holeMm: number;
      /** at k = 2 */
      readonly leastMm2: number;
      readonly mostMm2: number;
    }
  | {
      readonly informative: false;
      readonly reason: string;
      /** what can be said all the same */
      readonly leastMm2?: number;
      readonly mostMm2?: number;
    };

export interface LeakQuestion {
  readonly readingPa: number;
  /** standard uncertainty of reading and of everything but the leak, as a part of the reading */
  readonly relativeU: number;
}

/** Ends of the search; under the least no gauge shows a leak, over the most no gauge shows anything. */
const leastMm2 = 0.01;
const mostMm2 = 60;
/** a range between its ends wider than this says little */
const widest = 6;

/**
 * What leak explains this reading: the effective area of all paths together, or why the reading does not tell.
 *
 * Method: the reading falls as the leak grows; it is inverted in the logarithm of the area by bracketed false position
 * (Illinois) to 1e-4 of the reading, for the reading itself and for its ends at k = 2. The leak is put as one orifice
 * to the outside, whichever way it goes: a gauge cannot tell rings from valves. Where informative, a leak put in is
 * found again within 2 % (tested); the range says what the gauge and the engine's own doubts leave.
 *
 * Not informative, with the reason: the reading is no lower than without any leak; hardly any pressure; or the range
 * spans over a factor of six, as with a release that lets most of the charge go.
 * Example: 65 × 62 mm, ratio 8: 110 psi after 6 pulls at 300 rpm is a leak of about 1.50 mm².
 */
export function leakFromReading(
  engine: CrankedEngine,
  gauge: CompressionGauge,
  conditions: CrankingConditions,
  { readingPa, relativeU }: LeakQuestion,
): LeakFound {
  requireNotNegative(readingPa, 'reading');
  requireWithin(relativeU, 0, 1, 'uncertainty');
  const curve = new FallingCurve((areaMm2) => readingWithLeak(engine, gauge, conditions, areaMm2));
  const tight = curve.at(leastMm2);
  const low = readingPa * Math.exp(-2 * relativeU);
  const high = readingPa * Math.exp(2 * relativeU);
  if (low >= tight) return { informative: false, reason: noLeakNeeded };
  if (readingPa < floorPa)
    return { informative: false, reason: nothingLeft, leastMm2: curve.areaFor(floorPa) };
  const most = curve.areaFor(low);
  if (readingPa >= tight) return { informative: false, reason: noLeakNeeded, mostMm2: most };
  if (high >= tight) return { informative: false, reason: flatWords(engine), mostMm2: most };
  const least = curve.areaFor(high);
  if (most > widest * least)
    return { informative: false, reason: flatWords(engine), leastMm2: least, mostMm2: most };
  const areaMm2 = curve.areaFor(readingPa);
  return { informative: true, areaMm2, holeMm: holeDiameterMm(areaMm2), leastMm2: least, mostMm2: most };
}

/** A gauge is not read to better than this near its stop: 21 kPa, 3 psi. */
const floorPa = 21e3;
const noLeakNeeded =
  'The reading is no lower than this engine would show without any leak, within what is known: no leak need be supposed.';
const nothingLeft =
  'There is hardly any pressure: any leak larger than the least given here, a valve standing open or a broken drive to it would read the same.';

function flatWords({ release }: CrankedEngine): string {
  return release
    ? 'The release lets so much go that the leak hardly changes the reading: it says little about the seal. Make a leak-down.'
    : 'The reading lies where it hardly changes with the leak, within what is known about the engine and the gauge: it cannot tell a sound cylinder from a small leak. Make a leak-down.';
}

/** The reading with one leak of this effective area in place of the engine's own. */
export function readingWithLeak(
  engine: CrankedEngine,
  gauge: CompressionGauge,
  conditions: CrankingConditions,
  areaMm2: number,
): number {
  const leaking = { ...engine, leaks: { ...noLeaks, ringsMm2: areaMm2 } };
  return crank(leaking, gauge, conditions).readingPa;
}

/** Reading over area, which falls; every point once computed narrows the next search. */
class FallingCurve {
  /** logarithm of the area and of the reading, in order of area */
  private readonly points: [number, number][] = [];

  constructor(private readonly read: (areaMm2: number) => number) {
    this.at(leastMm2);
    this.at(mostMm2);
  }

  at(areaMm2: number): number {
    const reading = Math.max(1, this.read(areaMm2));
    this.points.push([Math.log(areaMm2), Math.log(reading)]);
    this.points.sort((p, q) => p[0] - q[0]);
    return reading;
  }

  /** The area with this reading; the end of the search when it lies beyond. */
  areaFor(wantedPa: number): number {
    const wanted = Math.log(wantedPa);
    const after = this.points.findIndex(([, reading]) => reading <= wanted);
    if (after <= 0) return after === 0 ? leastMm2 : mostMm2;
    return Math.exp(this.falsePosition(wanted, this.points[after - 1]!, this.points[after]!));
  }

  /** Illinois: false position that halves the end which stays, so that both ends close in. */
  private falsePosition(wanted: number, [a0, y0]: [number, number], [b0, y1]: [number, number]): number {
    let [a, fa, b, fb] = [a0, y0 - wanted, b0, y1 - wanted];
    let stayed = 0;
    for (let i = 0; i < 60; i += 1) {
      const x = fa === fb ? (a + b) / 2 : (a * fb - b * fa) / (fb - fa);
      const fx = Math.log(this.at(Math.exp(x))) - wanted;
      if (Math.abs(fx) < closeEnough || b - a < 1e-5) return x;
      if (fx > 0) {
        [a, fa] = [x, fx];
        if (stayed === 1) fb /= 2;
        stayed = 1;
      } else {
        [b, fb] = [x, fx];
        if (stayed === -1) fa /= 2;
        stayed = -1;
      }
    }
    throw new EngineError('no leak with this reading was found in 60 steps', 'reading', Math.exp(wanted));
  }
}

/** of the logarithm of the reading: far under what the integration leaves (3e-4) would chase its noise */
const closeEnough = 1e-4;
