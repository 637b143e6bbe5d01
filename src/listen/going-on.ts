import { loudnessOf } from './loudness.js';
import type { Signal } from './resample.js';

/** A part of a recording, seconds. */
export interface Part {
  readonly from: number;
  readonly to: number;
}

/** Nobody pulls or speaks for so long without a drop in loudness. Trade judgement, no source. */
const longEnoughS = 4;
/** A recording that goes on for more than this share is taken whole. */
const nearlyAll = 0.85;
/** Windows of loudness hold two turns of a slow idle. */
const slowTurnS = 0.2;
const drop = 12;

/**
 * The parts in which the engine runs on, where pulls of the rope and the quiet between them fill much of the rest: they
 * say nothing of its speed, and would make a hard start look like something that comes and goes. The whole recording
 * where nothing goes on for four seconds, or where nearly all of it does.
 */
export function goingOn(low: Signal): readonly Part[] {
  const { levelsDb, stepS, topDb, longestS } = loudnessOf(low, slowTurnS);
  const all = levelsDb.length * stepS;
  if (longestS < longEnoughS || longestS > nearlyAll * all)
    return [{ from: 0, to: low.values.length / low.rate }];
  const parts: Part[] = [];
  let begun = 0;
  for (let n = 0; n <= levelsDb.length; n += 1) {
    if (n < levelsDb.length && levelsDb[n]! > topDb - drop) continue;
    if ((n - begun) * stepS >= longEnoughS) parts.push({ from: begun * stepS, to: (n + 1) * stepS });
    begun = n + 1;
  }
  return parts;
}

/** Equal pieces of a part, none longer than this, so that an hour takes no more memory than a minute. */
export function pieces({ from, to }: Part, longestS: number): readonly Part[] {
  const count = Math.ceil((to - from) / longestS);
  const each = (to - from) / count;
  return Array.from({ length: count }, (_, n) => ({ from: from + n * each, to: from + (n + 1) * each }));
}
