import { type Cycle, cycleOf, type EngineKind, firingHz } from './engine-kind.js';
import { median } from './quantile.js';
import { meanSquare, type Signal } from './resample.js';
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
const missedBelow = 0.5;
const fewestFirings = 8;

/** The track's ends reach into the silence before and after by part of a window. */
const edgeS = 0.25;
const longEnoughS = 1.5;
/** Firings that share one choice of where they begin. */
const together = 12;
const slices = 8;

/**
 * Loudness of each firing, its length taken from the track.
 *
 * Method: root mean square of the sound over one firing at a time, begun at the quietest eighth of the cycle, so that
 * no window holds the end of one bang and the beginning of the next; the usual is the median of the eight on each
 * side, so that a sound that grows or fades misses nothing. Null with fewer than eight firings.
 * Validity: one firing must be told from the next, so beyond some 150 firings a second rooms and resonances blur them;
 * where a bang rings on for a whole cycle fewer are found than were missed, so that the share is a least one.
 */
export function beatsOf(low: Signal, track: readonly TrackPoint[], engine: EngineKind): Beats | null {
  const loudness = firingsOf(low, withoutEdges(track), cycleOf(engine));
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

function withoutEdges(track: readonly TrackPoint[]): readonly TrackPoint[] {
  const first = track[0]?.t ?? 0;
  const last = track.at(-1)?.t ?? 0;
  if (last - first < longEnoughS) return track;
  return track.filter(({ t }) => t >= first + edgeS && t <= last - edgeS);
}

interface Firing {
  readonly at: number;
  readonly lasts: number;
}

function firingsOf({ values, rate }: Signal, track: readonly TrackPoint[], cycle: Cycle): number[] {
  const all = nominalFirings(track, cycle);
  const groups = Array.from({ length: Math.ceil(all.length / together) }, (_, g) =>
    all.slice(g * together, (g + 1) * together),
  );
  return groups.flatMap((group) => {
    const shift = quietest({ values, rate }, group);
    return group.map(({ at, lasts }) => {
      const from = at + shift * lasts;
      return Math.sqrt(meanSquare(values, Math.floor(from * rate), Math.floor((from + lasts) * rate)));
    });
  });
}

/** One after the other along the track, wherever in the cycle the first begins. */
function nominalFirings(track: readonly TrackPoint[], cycle: Cycle): Firing[] {
  const found: Firing[] = [];
  let at = track[0]?.t ?? 0;
  for (const [i, { rpm }] of track.entries()) {
    const until = track[i + 1]?.t ?? at;
    for (const lasts = 1 / firingHz(cycle, rpm); at < until; at += lasts) found.push({ at, lasts });
  }
  return found;
}

/** The share of the cycle after which the sound of all these firings is least. */
function quietest({ values, rate }: Signal, group: readonly Firing[]): number {
  const shares = Array.from({ length: slices }, (_, k) => k / slices);
  const energy = shares.map((share) =>
    group.reduce((sum, { at, lasts }) => {
      const from = at + share * lasts;
      return sum + meanSquare(values, Math.floor(from * rate), Math.floor((from + lasts / slices) * rate));
    }, 0),
  );
  return shares[energy.indexOf(Math.min(...energy))]!;
}
