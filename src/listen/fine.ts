import type { Path } from './path.js';
import { complexSpectrum, hann } from './transform.js';
import { sampleAt, warpOf } from './warp.js';

/** A path with the relative standard uncertainty of each knot. */
export interface FinePath extends Path {
  readonly relativeU: Float64Array;
}

const windowAimS = 0.3;
const fewestTurns = 4;

/**
 * The path made exact: the sound is resampled to equal turns of the path, and what each order's phase still drifts
 * from window to window is the path's error.
 *
 * Method: Hann windows of a whole number of turns, so that each order falls on a bin; phase advance over half a window,
 * orders weighed by their power over the noise between them, unwrapped from the lowest upward around the value so far.
 * Repeated: what a window averages away of a fast change is found by the next pass.
 * Uncertainty: scatter of the orders about the common value, with the path's own unsteadiness from knot to knot.
 */
export function refine(
  values: Float32Array,
  rate: number,
  path: Path,
  start: number,
  end: number,
  passes: number,
): FinePath | null {
  let at: FinePath | null = null;
  let from: Path = path;
  for (let pass = 0; pass < passes; pass += 1) {
    at = onePass(values, rate, from, start, end);
    if (at === null) return null;
    from = at;
  }
  return at;
}

function onePass(
  values: Float32Array,
  rate: number,
  path: Path,
  start: number,
  end: number,
): FinePath | null {
  const mean = path.hz.reduce((sum, hz) => sum + hz, 0) / path.hz.length;
  const perTurn = samplesPerTurn(rate / mean);
  const wanted = Math.max(fewestTurns, 2 ** Math.round(Math.log2(windowAimS * mean)));
  const { times } = warpOf(path, start, end, perTurn);
  const fit = 2 ** Math.floor(Math.log2((times.length / perTurn) * 0.8));
  const turns = Math.min(wanted, fit);
  if (turns < 2) return null;
  const warped = sampleAt(values, rate, times);
  const size = turns * perTurn;
  const hop = size / 4;
  const taper = hann(size);
  const spectra: Orders[] = [];
  for (let from = 0; from + size <= warped.length; from += hop)
    spectra.push(ordersOf(warped, from, taper, turns, ordersAmong(perTurn, rate / mean)));
  if (spectra.length < 2) return null;
  const reach = spectra.length >= 3 ? 1 : 0.5;
  const t: number[] = [];
  const hz: number[] = [];
  const relativeU: number[] = [];
  const local = (index: number) => 1 / (perTurn * (times[index + 1]! - times[index]!));
  for (let n = 0; n + 2 * reach < spectra.length; n += 1) {
    const a = spectra[n]!;
    const b = spectra[n + 2 * reach]!;
    const { drift, u } = driftBetween(a, b, (2 * reach * hop) / perTurn);
    const middle = Math.min(times.length - 2, Math.round(n * hop + size / 2 + reach * hop));
    t.push(times[middle]!);
    hz.push(local(middle) * (1 + drift));
    relativeU.push(u);
  }
  return { t: Float64Array.from(t), hz: Float64Array.from(hz), relativeU: Float64Array.from(relativeU) };
}

interface Orders {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly snr: Float64Array;
}

const mostOrders = 40;
/** As many tell a path as well as more of them: the higher ones are smeared first. */
const enoughOrders = 32;
/** The band ends here, as a share of its own rate: what lies above half of the samples to a turn folds down from there. */
const bandTop = 0.45;

/** The fewest samples to a turn, a power of two, at which nothing folds down upon enough orders. */
function samplesPerTurn(bandSamples: number): number {
  const fewest = Math.min(0.8 * bandSamples, bandTop * bandSamples + enoughOrders + 0.5);
  return 2 ** Math.max(3, Math.ceil(Math.log2(fewest)));
}

const ordersAmong = (perTurn: number, bandSamples: number): number =>
  Math.floor(Math.min(mostOrders, 0.42 * perTurn, perTurn - bandTop * bandSamples - 0.5));

function ordersOf(
  warped: Float64Array,
  from: number,
  taper: Float64Array,
  turns: number,
  count: number,
): Orders {
  const spectrum = complexSpectrum(taper.length, warped, from, taper);
  const re = new Float64Array(count + 1);
  const im = new Float64Array(count + 1);
  const snr = new Float64Array(count + 1);
  let before = powerRound(spectrum, Math.round(0.5 * turns));
  for (let k = 1; k <= count; k += 1) {
    const bin = k * turns;
    re[k] = spectrum[2 * bin]!;
    im[k] = spectrum[2 * bin + 1]!;
    const after = powerRound(spectrum, Math.round((k + 0.5) * turns));
    const noise = (before + after) / 6 + 1e-20;
    snr[k] = Math.max(0, (re[k]! * re[k]! + im[k]! * im[k]!) / noise - 1);
    before = after;
  }
  return { re, im, snr };
}

/** Of a bin and its two neighbors. */
function powerRound(spectrum: ArrayLike<number>, bin: number): number {
  let sum = 0;
  for (let i = 2 * (bin - 1); i < 2 * (bin + 2); i += 1) sum += spectrum[i]! * spectrum[i]!;
  return sum;
}

/** Hann windows half overlapping share part of their noise; found by simulation in white noise. */
const phaseVariance = 0.7;

function driftBetween(a: Orders, b: Orders, turns: number): { drift: number; u: number } {
  let sumW = 0;
  let sum = 0;
  let square = 0;
  let used = 0;
  for (let k = 1; k < a.re.length; k += 1) {
    const snr = Math.min(a.snr[k]!, b.snr[k]!, 300);
    if (snr < 2) continue;
    const phase = Math.atan2(
      a.re[k]! * b.im[k]! - a.im[k]! * b.re[k]!,
      a.re[k]! * b.re[k]! + a.im[k]! * b.im[k]!,
    );
    const scale = 2 * Math.PI * k * turns;
    const guess = sumW > 0 ? sum / sumW : 0;
    const wraps = Math.round((guess * scale - phase) / (2 * Math.PI));
    const value = (phase + 2 * Math.PI * wraps) / scale;
    const w = snr * scale * scale;
    if (sumW > 0 && Math.abs(value - guess) * scale > 2) continue;
    sumW += w;
    sum += w * value;
    square += w * value * value;
    used += 1;
  }
  if (used === 0) return { drift: 0, u: 0.02 };
  const drift = sum / sumW;
  const scatter = used > 1 ? Math.max(0, square - sum * drift) / (used - 1) : 1;
  return {
    drift: Math.max(-0.06, Math.min(0.06, drift)),
    u: Math.sqrt((phaseVariance * Math.max(1, scatter)) / sumW),
  };
}
