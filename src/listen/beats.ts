import { bandsOf } from './bands.js';
import { type Cycle, cycleOf, type EngineKind, firingHz } from './engine-kind.js';
import type { Sound } from './sound.js';
import type { TrackPoint } from './track.js';

/** How alike the firings of a stretch are. */
export interface Beats {
  readonly firings: number;
  /** standard deviation of the firings' loudness over its mean */
  readonly spread: number;
  /** share of the firings that were hardly there */
  readonly missedShare: number;
}

/** A firing with less than this share of the usual loudness was missed. Trade judgement, no source. */
const missedBelow = 0.4;
const fewestFirings = 8;

/**
 * Loudness of each firing, its length taken from the track.
 *
 * Method: root mean square of the sound over one firing at a time; the usual is the median of the eight on each side,
 * so that a sound that grows or fades misses nothing. Null with fewer than eight firings.
 * Validity: one firing must be told from the next, so beyond some 150 firings a second rooms and resonances blur them.
 */
export function beatsOf(sound: Sound, track: readonly TrackPoint[], engine: EngineKind): Beats | null {
  const { low, rate } = bandsOf(sound);
  const loudness = firingsOf(low, rate, track, cycleOf(engine));
  if (loudness.length < fewestFirings) return null;
  const relative = loudness.map(
    (own, i) => own / Math.max(1e-12, median(loudness.slice(Math.max(0, i - 8), i + 9))),
  );
  const mean = relative.reduce((a, b) => a + b, 0) / relative.length;
  const variance = relative.reduce((sum, r) => sum + (r - mean) ** 2, 0) / (relative.length - 1);
  return {
    firings: relative.length,
    spread: Math.sqrt(variance) / mean,
    missedShare: relative.filter((r) => r < missedBelow).length / relative.length,
  };
}

function firingsOf(low: Float32Array, rate: number, track: readonly TrackPoint[], cycle: Cycle): number[] {
  const found: number[] = [];
  let at = track[0]?.t ?? 0;
  for (const [i, { rpm }] of track.entries()) {
    const until = track[i + 1]?.t ?? at;
    while (at < until) {
      const next = at + 1 / firingHz(cycle, rpm);
      found.push(rootMeanSquare(low, Math.floor(at * rate), Math.floor(next * rate)));
      at = next;
    }
  }
  return found;
}

function rootMeanSquare(values: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < Math.min(values.length, to); i += 1) sum += values[i]! ** 2;
  return Math.sqrt(sum / Math.max(1, to - from));
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1]!;
}
