import { meanRpm, type TrackPoint } from './track.js';

/** A speed that swings to and fro. */
export interface Hunting {
  readonly hz: number;
  /** above and below the mean */
  readonly swingRpm: number;
}

const slowestHz = 0.15;
const fastestHz = 4;
/** The swing must make up this share of all unsteadiness, and this share of the speed, to be called one. */
const leastShare = 0.35;
const leastSwing = 0.004;

/**
 * The strongest sine in a stretch of track, or null if no one sine stands out of its unsteadiness.
 *
 * Method: least squares of mean, trend and one sine, the frequency from a grid a tenth of a resolution cell fine.
 * Validity: at least one and a half swings within the stretch.
 */
export function huntingOf(track: readonly TrackPoint[]): Hunting | null {
  if (track.length < 8) return null;
  const last = track.at(-1)!.t - track[0]!.t;
  const { rest, mean } = detrended(track);
  const power = rest.reduce((sum, r) => sum + r * r, 0);
  const low = Math.max(slowestHz, 1.5 / last);
  let best = { hz: 0, amplitude: 0 };
  for (let hz = low; hz <= fastestHz; hz += 0.1 / last) {
    const amplitude = sineAt(track, rest, hz);
    if (amplitude > best.amplitude) best = { hz, amplitude };
  }
  const explained = (best.amplitude ** 2 / 2) * rest.length;
  if (explained < leastShare * power || best.amplitude < leastSwing * mean) return null;
  return { hz: best.hz, swingRpm: best.amplitude };
}

function detrended(track: readonly TrackPoint[]): {
  readonly rest: readonly number[];
  readonly mean: number;
} {
  const n = track.length;
  const mean = meanRpm(track);
  const middle = track.reduce((sum, { t }) => sum + t, 0) / n;
  const slope =
    track.reduce((sum, { t, rpm }) => sum + (t - middle) * (rpm - mean), 0) /
    track.reduce((sum, { t }) => sum + (t - middle) ** 2, 0);
  return { mean, rest: track.map(({ t, rpm }) => rpm - mean - slope * (t - middle)) };
}

/** Amplitude of the sine of one frequency that fits best, sine and cosine solved together. */
function sineAt(track: readonly TrackPoint[], rest: readonly number[], hz: number): number {
  let [ss, cc, sc, sy, cy] = [0, 0, 0, 0, 0];
  track.forEach(({ t }, i) => {
    const s = Math.sin(2 * Math.PI * hz * t);
    const c = Math.cos(2 * Math.PI * hz * t);
    ss += s * s;
    cc += c * c;
    sc += s * c;
    sy += s * rest[i]!;
    cy += c * rest[i]!;
  });
  const det = ss * cc - sc * sc;
  return det < 1e-9 ? 0 : Math.hypot((sy * cc - cy * sc) / det, (cy * ss - sy * sc) / det);
}
