import { type Bands, cut } from './bands.js';
import { loudnessOf } from './loudness.js';

/** A part of a recording, with the moment at which it begins. */
export interface Excerpt {
  readonly bands: Bands;
  readonly from: number;
}

/** Nobody pulls or speaks for so long without a drop in loudness. Trade judgement, no source. */
const longEnoughS = 4;
/** A recording that goes on for more than this share is taken whole. */
const nearlyAll = 0.85;
/** Windows of loudness hold two turns of a slow idle. */
const slowTurnS = 0.2;

/**
 * The part in which the engine runs on, where pulls of the rope and the quiet between them fill much of the rest: they
 * say nothing of its speed, and would make a hard start look like something that comes and goes. The whole recording
 * where nothing goes on for four seconds, or where nearly all of it does.
 */
export function goingOn(bands: Bands): Excerpt {
  const { levelsDb, stepS, topDb, longestS } = loudnessOf(bands, slowTurnS);
  const all = levelsDb.length * stepS;
  if (longestS < longEnoughS || longestS > nearlyAll * all) return { bands, from: 0 };
  const count = Math.round(longestS / stepS);
  const first = firstRun(levelsDb, topDb - 12, count);
  const from = first * stepS;
  return { bands: cut(bands, from, from + longestS + stepS), from };
}

/** Where so many levels in a row first lie above the floor. */
function firstRun(levels: readonly number[], floor: number, count: number): number {
  let run = 0;
  const end = levels.findIndex((level) => {
    run = level > floor ? run + 1 : 0;
    return run === count;
  });
  return Math.max(0, end - count + 1);
}
