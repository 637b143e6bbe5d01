import { smallest } from './quantile.js';

/** How far each place of a spectrum stands out of what surrounds it, 0 to 1, and where that is so. */
export interface Salience {
  /** hertz (or orders) from one bin to the next */
  readonly step: number;
  readonly values: Float64Array;
  readonly levelsDb: Float64Array;
  /** sum over the peaks: what a comb has to explain */
  readonly mass: number;
  /** between these bins lies nearly all of the mass */
  readonly lowBin: number;
  readonly highBin: number;
}

/** A line this far below the strongest line near it counts for nothing: it is not a firing order of the same engine. */
const depthDb = 26;
/** The lower quartile of noise power (exponentially distributed) lies this far below its mean. */
const quartileBelowMeanDb = 5.41;
/** Noise stands this far out of its own mean in one bin of a thousand. */
const marginDb = 6;

export interface Scale {
  readonly step: number;
  /** the width over which the floor is judged, in the unit of `step` */
  readonly floorWidth: number;
  /** spectra averaged: noise stands out less the more there are */
  readonly averages: number;
}

/**
 * Method: decibels over a floor, which is the higher of the noise (lower quartile of a block, interpolated) and the
 * strongest line in the neighborhood less 26 dB. Silence has no salience.
 */
export function salienceOf(power: Float64Array, { step, floorWidth, averages }: Scale): Salience {
  const db = power.map((each) => (10 / Math.LN10) * Math.log(each + 1e-16));
  const spread = 1 / Math.sqrt(averages);
  const noise = noiseFloor(db, Math.max(8, Math.round(floorWidth / step)));
  const crest = crestOf(db, Math.max(4, Math.round((0.7 * floorWidth) / step)));
  const overNoise = (quartileBelowMeanDb + marginDb) * spread;
  const values = new Float64Array(db.length);
  for (let i = 0; i < db.length; i += 1) {
    const floor = Math.max(noise[i]! + overNoise, crest[i]! - depthDb);
    values[i] = Math.min(1, Math.max(0, (db[i]! - floor) / depthDb));
  }
  values[0] = 0;
  return { step, values, levelsDb: db, ...massOf(values) };
}

/** Memory that is used again from spectrum to spectrum; nothing in it outlives one. */
interface Scratch {
  held: Float64Array;
}
const [floors, blocks, crests, squared]: readonly [Scratch, Scratch, Scratch, Scratch] = [
  { held: new Float64Array() },
  { held: new Float64Array() },
  { held: new Float64Array() },
  { held: new Float64Array() },
];

function scratch(kept: Scratch, length: number): Float64Array {
  if (kept.held.length < length) kept.held = new Float64Array(length);
  return kept.held.subarray(0, length);
}

/** Lower quartile of each block, blocks growing with frequency, linearly joined from middle to middle. */
function noiseFloor(db: Float64Array, width: number): Float64Array {
  const floor = scratch(floors, db.length);
  let lastCenter = 0;
  let last = Number.NaN;
  for (let from = 1; from < db.length; ) {
    const size = Math.max(width, Math.round(from * 0.2));
    const to = Math.min(db.length, from + size);
    const block = scratch(blocks, to - from);
    block.set(db.subarray(from, to));
    const quartile = smallest(block, Math.floor((to - from) / 4));
    const center = (from + to) >> 1;
    if (Number.isNaN(last)) last = quartile;
    for (let i = lastCenter; i < center; i += 1)
      floor[i] = last + ((quartile - last) * (i - lastCenter)) / Math.max(1, center - lastCenter);
    last = quartile;
    lastCenter = center;
    from = to;
  }
  floor.fill(last, lastCenter);
  return floor;
}

/** The strongest level within a reach that grows with frequency. */
function crestOf(db: Float64Array, reach: number): Float64Array {
  const block = Math.max(1, reach >> 1);
  const peaks = Float64Array.from({ length: Math.ceil(db.length / block) }, (_, b) => {
    let peak = Number.NEGATIVE_INFINITY;
    for (let i = Math.max(1, b * block); i < Math.min(db.length, (b + 1) * block); i += 1)
      peak = Math.max(peak, db[i]!);
    return peak;
  });
  const crest = peaks.map((_, b) => {
    const around = Math.max(2, Math.round((b + 0.5) * 0.15));
    let peak = Number.NEGATIVE_INFINITY;
    const to = Math.min(peaks.length - 1, b + around);
    for (let near = Math.max(0, b - around); near <= to; near += 1) peak = Math.max(peak, peaks[near]!);
    return peak;
  });
  const out = scratch(crests, db.length);
  for (let i = 0; i < out.length; i += 1) out[i] = crest[Math.floor(i / block)]!;
  return out;
}

/** A peak that stands out less is as likely noise; noise has very many peaks. */
const leastPeak = 0.08;

/** Peaks count by the square in saying where the lines lie: many small ones far up are noise, not orders. */
function massOf(values: Float64Array): { mass: number; lowBin: number; highBin: number } {
  const squares = scratch(squared, values.length).fill(0);
  let mass = 0;
  let square = 0;
  for (let i = 1; i < values.length - 1; i += 1) {
    const value = values[i]!;
    if (value < leastPeak || value < values[i - 1]! || value <= values[i + 1]!) continue;
    mass += value;
    squares[i] = value * value;
    square += value * value;
  }
  return { mass, lowBin: binAtShare(squares, 0.02 * square), highBin: binAtShare(squares, 0.95 * square) };
}

/** The first bin up to which the sum reaches an amount; 1 where there is nothing to sum. */
function binAtShare(squares: Float64Array, amount: number): number {
  let sum = 0;
  for (let i = 1; i < squares.length; i += 1) {
    sum += squares[i]!;
    if (sum > 0 && sum >= amount) return i;
  }
  return 1;
}
