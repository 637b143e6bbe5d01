import { normalBelow } from '../../gauge/index.js';
import { requireNotNegative, requirePositive } from '../error.js';
import type { ExpectedCompression } from './expected.js';

/** The rungs of a dry compression reading, best first. */
export const compressionRungs = ['normal', 'down-twenty-percent', 'down-forty-percent', 'near-zero'] as const;
export type CompressionRung = (typeof compressionRungs)[number];

/** Reading over a sound engine's, half way between neighboring rungs: 0, 20, 40 and 100 % down. */
const boundaries = [0.9, 0.7, 0.3] as const;

export type ClassifiedCompression =
  | {
      readonly informative: true;
      /** how strongly the reading speaks for each rung; they sum to 1 */
      readonly weights: Readonly<Record<CompressionRung, number>>;
      readonly words: string;
    }
  | {
      readonly informative: false;
      /** all alike: the reading moves nothing */
      readonly weights: Readonly<Record<CompressionRung, number>>;
      readonly reason: string;
    };

export interface CompressionReading {
  /** gauge pressure */
  readonly pa: number;
  /** standard uncertainty of the gauge; 2 % of the reading and 7 kPa (1 psi) stand, in quadrature */
  readonly uPa?: number;
}

type Band = Pick<ExpectedCompression, 'lowPa' | 'likelyPa' | 'highPa' | 'release'>;

/**
 * A gauge reading as likelihood weights over the ordered outcomes of the dry compression check, for *this* engine.
 *
 * Method: the sound engine's reading H is log-normal about `likelyPa` with a standard deviation of its own on either
 * side (half of ln(likely/low) and of ln(high/likely)); the gauge's own uncertainty is added in quadrature. The weight
 * of a rung is the probability that reading/H lies between the rung's boundaries (0.9, 0.7, 0.3: half way between 0,
 * 20, 40 and 100 % down). A wide band thus spreads the weights by itself. They are meant as soft evidence: the
 * likelihood of a fault is Σ weight(rung)·P(rung | faults).
 *
 * Not informative, all weights alike, with the reason: an automatic release that may act; a band wider than a factor
 * of three between its ends; a reading half as much again as its upper end. Throws EngineError for a reading below 0 or a band out of order.
 * Example: band 97–157–210 psi, reading 165: normal 0.86, 20 % down 0.14; reading 60: 40 % down 0.94.
 */
export function classifyCompression(reading: CompressionReading, band: Band): ClassifiedCompression {
  requireNotNegative(reading.pa, 'reading');
  requirePositive(band.lowPa, 'low');
  const silent = whyNot(band) ?? tooMuch(reading, band);
  if (silent) return { informative: false, weights: alike(), reason: silent };
  const chance = reading.pa < 1 ? () => 0 : chanceOver(reading.pa, gaugeU(reading), band);
  const over = [...boundaries.map(chance), 1];
  const weights = compressionRungs.map((rung, i) => [rung, over[i]! - (over[i - 1] ?? 0)] as const);
  return {
    informative: true,
    weights: Object.fromEntries(weights) as Record<CompressionRung, number>,
    words: wordsFor(reading.pa, band),
  };
}

/** Probability that the reading is more than this part of what the sound engine would show. */
function chanceOver(pa: number, u: number, { lowPa, likelyPa, highPa }: Band): (part: number) => number {
  const gauge = u / pa;
  return (part) => {
    const soundPa = pa / part;
    const side = soundPa < likelyPa ? Math.log(likelyPa / lowPa) / 2 : Math.log(highPa / likelyPa) / 2;
    return normalBelow(Math.log(soundPa / likelyPa) / Math.hypot(side, gauge));
  };
}

function gaugeU({ pa, uPa }: CompressionReading): number {
  return uPa === undefined ? Math.hypot(0.02 * pa, 7e3) : requireNotNegative(uPa, 'u');
}

function alike(): Record<CompressionRung, number> {
  const each = 1 / compressionRungs.length;
  return { normal: each, 'down-twenty-percent': each, 'down-forty-percent': each, 'near-zero': each };
}

/** Half as much again as the band's upper end is no cylinder of this geometry. */
function tooMuch({ pa }: CompressionReading, { highPa }: Band): string | undefined {
  if (pa <= 1.5 * highPa) return undefined;
  return 'That is more than a cylinder of this geometry can show: oil or fuel lies on the piston, the gauge is wrong, or a figure is.';
}

function whyNot({ lowPa, highPa, release }: Band): string | undefined {
  if (release === 'may act')
    return 'An automatic release may hold a valve open at pull speed: a low reading then says how much it lets go, not how well the cylinder seals. Spin it backward and feel for rebound, or make a leak-down.';
  if (highPa > 3 * lowPa)
    return 'Too little is known about this engine: a sound one could read anything between the ends of the band. Measure the bore, the stroke and the chamber, or make a leak-down.';
  return undefined;
}

function wordsFor(pa: number, { lowPa, likelyPa, highPa }: Band): string {
  const part = Math.round((100 * pa) / likelyPa);
  if (pa > highPa)
    return `${part} % of what a sound engine of this geometry shows, and over its band: carbon, a milled head, oil in the cylinder, or a wrong figure.`;
  if (pa >= lowPa) return `${part} % of what a sound engine of this geometry shows: inside its band.`;
  return `${part} % of what a sound engine of this geometry shows: under its band.`;
}
