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

/** Hunting that comes and goes is looked for in windows so long and so far apart; there it must be the plainer. */
const windowS = 6;
const leastShareInWindow = 0.6;
const fewestSwings = 2.5;

/**
 * The strongest sine in a stretch of track, or null if no one sine stands out of its unsteadiness; where none does in
 * the whole, the strongest in any six seconds of it.
 *
 * Method: least squares of mean, trend and one sine, the frequency from a grid a tenth of a resolution cell fine.
 * Validity: at least one and a half swings within the stretch, two and a half within six seconds of a longer one.
 */
export function huntingOf(track: readonly TrackPoint[]): Hunting | null {
  const lasting = (track.at(-1)?.t ?? 0) - (track[0]?.t ?? 0);
  const count = Math.ceil(lasting / longestS);
  if (count <= 1) return huntingWithin(track);
  const each = Math.ceil(track.length / count);
  return plainest(
    Array.from({ length: count }, (_, n) => track.slice(n * each, (n + 1) * each)),
    huntingWithin,
  );
}

/** Longer ones are taken in equal pieces, so that an hour costs sixty times a minute. */
const longestS = 40;

function plainest(
  parts: readonly (readonly TrackPoint[])[],
  look: (part: readonly TrackPoint[]) => Hunting | null,
): Hunting | null {
  const found = parts.flatMap((part) => look(part) ?? []);
  return found.toSorted((a, b) => b.swingRpm - a.swingRpm)[0] ?? null;
}

function huntingWithin(track: readonly TrackPoint[]): Hunting | null {
  const whole = sineIn(track, 1.5, leastShare);
  const first = track[0]?.t ?? 0;
  const lasting = (track.at(-1)?.t ?? 0) - first;
  if (whole !== null || lasting < 1.5 * windowS) return whole;
  const begins = Array.from(
    { length: Math.floor((2 * lasting) / windowS) - 1 },
    (_, n) => first + (n * windowS) / 2,
  );
  const windows = begins.map((from) => track.filter(({ t }) => t >= from && t <= from + windowS));
  return plainest(windows, (window) => sineIn(window, fewestSwings, leastShareInWindow));
}

function sineIn(track: readonly TrackPoint[], swings: number, share: number): Hunting | null {
  if (track.length < 8) return null;
  const last = track.at(-1)!.t - track[0]!.t;
  const { rest, mean } = detrended(track);
  const power = rest.reduce((sum, r) => sum + r * r, 0);
  const low = Math.max(slowestHz, swings / last);
  let best = { hz: 0, amplitude: 0 };
  for (let hz = low; hz <= fastestHz; hz += 0.1 / last) {
    const amplitude = sineAt(track, rest, hz);
    if (amplitude > best.amplitude) best = { hz, amplitude };
  }
  const explained = (best.amplitude ** 2 / 2) * rest.length;
  if (explained < share * power || best.amplitude < leastSwing * mean) return null;
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

/**
 * Amplitude of the sine of one frequency that fits best, sine and cosine solved together.
 *
 * Method: the phase is turned on from point to point, anew only where a point is missing.
 */
function sineAt(track: readonly TrackPoint[], rest: readonly number[], hz: number): number {
  const step = track[1]!.t - track[0]!.t;
  const [turnS, turnC] = [Math.sin(2 * Math.PI * hz * step), Math.cos(2 * Math.PI * hz * step)];
  let [ss, cc, sc, sy, cy] = [0, 0, 0, 0, 0];
  let [s, c, last] = [0, 0, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < track.length; i += 1) {
    const { t } = track[i]!;
    if (Math.abs(t - last - step) > 1e-6)
      [s, c] = [Math.sin(2 * Math.PI * hz * t), Math.cos(2 * Math.PI * hz * t)];
    else {
      const next = s * turnC + c * turnS;
      c = c * turnC - s * turnS;
      s = next;
    }
    last = t;
    ss += s * s;
    cc += c * c;
    sc += s * c;
    sy += s * rest[i]!;
    cy += c * rest[i]!;
  }
  const det = ss * cc - sc * sc;
  return det < 1e-9 ? 0 : Math.hypot((sy * cc - cy * sc) / det, (cy * ss - sy * sc) / det);
}
