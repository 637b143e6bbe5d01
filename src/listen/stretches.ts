import type { CoarsePoint } from './coarse.js';
import { type FinePath, refine } from './fine.js';
import type { Path } from './path.js';

/** A stretch of the sound in which one path of the firing rate holds. */
export interface Stretch {
  readonly path: Path;
  readonly start: number;
  readonly end: number;
  /** relative standard uncertainty at each knot of the path */
  readonly relativeU: Float64Array;
}

/** Relative uncertainty of a path that could not be made finer than the grid it was found on. */
const gridU = 0.006;

/** Runs of frames in which something periodic was heard, each reaching half a window beyond its outer frames. */
export function stretchesOf(
  coarse: readonly CoarsePoint[],
  reachS: number,
  soundS: number,
): readonly Stretch[] {
  const runs: { t: number; hz: number }[][] = [];
  let open = false;
  for (const { t, firingHz } of coarse) {
    if (firingHz !== null) {
      if (!open) runs.push([]);
      runs.at(-1)!.push({ t, hz: firingHz });
    }
    open = firingHz !== null;
  }
  if (runs.length === 0) return [];
  return runs.map((run) => ({
    path: { t: Float64Array.from(run, ({ t }) => t), hz: Float64Array.from(run, ({ hz }) => hz) },
    start: Math.max(0, run[0]!.t - reachS),
    end: Math.min(soundS, run.at(-1)!.t + reachS),
    relativeU: new Float64Array(run.length).fill(gridU),
  }));
}

/** More would follow fast swings more closely, and noise too. */
const usualPasses = 3;

/** Each stretch with its path made exact against the signal; one too short for that is left as it is. */
export function refined(
  values: Float32Array,
  rate: number,
  stretches: readonly Stretch[],
  passes = usualPasses,
): readonly Stretch[] {
  return stretches.map((stretch) => {
    const fine = refine(values, rate, stretch.path, stretch.start, stretch.end, passes);
    if (!fine) return stretch;
    const { relativeU, ...path } = toItsEnds(fine, withUnsteadiness(fine), stretch.start, stretch.end);
    return { ...stretch, path, relativeU };
  });
}

/** Neighboring windows share most of their sound, so that their errors hardly differ: set on made sounds. */
const sharedSound = 1.05;
const reach = 4;

/** Firings that jitter together move all orders alike; it shows only in how the path bends from knot to knot. */
function withUnsteadiness({ hz, relativeU }: FinePath): Float64Array {
  const bends = hz.map((own, i) =>
    Math.log(own ** 2 / (hz[Math.max(0, i - 1)]! * hz[Math.min(hz.length - 1, i + 1)]!)),
  );
  return relativeU.map((u, i) => {
    const near = bends.subarray(Math.max(1, i - reach), Math.min(bends.length - 1, i + reach + 1));
    const square = near.reduce((sum, bend) => sum + bend * bend, 0) / Math.max(1, near.length);
    return Math.hypot(u, sharedSound * Math.sqrt(square / 6));
  });
}

/** Knots from which the slope at an end is read. */
const slopeKnots = 2;
/** How far a change of speed may be trusted to go on unseen: set on made sounds that hunt. */
const unforeseen = 0.5;

/**
 * Knots stand at the middles of windows; half a window beyond the outer ones the path goes on as it last went, so far as
 * that stands out of its own uncertainty.
 */
function toItsEnds(path: Path, relativeU: Float64Array, start: number, end: number): FinePath {
  const n = path.t.length - 1;
  const far = Math.min(n, slopeKnots);
  const onwards = (from: number, inner: number, at: number) => {
    if (far < slopeKnots) return { hz: path.hz[from]!, u: 2 * relativeU[from]! };
    const change = Math.log(path.hz[from]! / path.hz[inner]!);
    const trust = change ** 2 / (change ** 2 + (surelyChanged * relativeU[from]!) ** 2);
    const beyond = (trust * change * (at - path.t[from]!)) / (path.t[from]! - path.t[inner]!);
    return {
      hz: path.hz[from]! * Math.exp(beyond),
      u: Math.hypot(2 * relativeU[from]!, unforeseen * beyond),
    };
  };
  const first = onwards(0, far, Math.min(start, path.t[0]!));
  const last = onwards(n, n - far, Math.max(end, path.t[n]!));
  return {
    t: Float64Array.of(Math.min(start, path.t[0]!), ...path.t, Math.max(end, path.t[n]!)),
    hz: Float64Array.of(first.hz, ...path.hz, last.hz),
    relativeU: Float64Array.of(first.u, ...relativeU, last.u),
  };
}

/** A change between knots of so many standard uncertainties is as likely real as not. */
const surelyChanged = 4;

export function scaled(stretches: readonly Stretch[], factor: number): readonly Stretch[] {
  return stretches.map((stretch) => ({
    ...stretch,
    path: { t: stretch.path.t, hz: stretch.path.hz.map((hz) => hz * factor) },
  }));
}

/** Mean over time of the paths, each knot standing for the time around it. */
export function meanHz(stretches: readonly Stretch[]): number {
  let turns = 0;
  let time = 0;
  for (const { path, start, end } of stretches) {
    const mean = path.hz.reduce((sum, hz) => sum + hz, 0) / path.hz.length;
    turns += mean * (end - start);
    time += end - start;
  }
  return turns / time;
}
