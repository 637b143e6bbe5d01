import { type Fall, rateHz, turnsAt, turnsHeard } from './blade-turns.js';
import { median } from './quantile.js';
import { meanSquare } from './resample.js';
import { seconds as lengthOf, requireSound, type Sound } from './sound.js';
import type { TrackPoint } from './track.js';

/** How long a blade turned on after its control was let go, as far as the sound tells. */
export type BladeStop =
  | {
      readonly told: true;
      /** when the speed began to fall, seconds from the start of the sound */
      readonly from: number;
      /** from there until it stands */
      readonly seconds: number;
      /** standard uncertainty of `seconds` */
      readonly u: number;
      /** how it slowed, and how many turns a second it made before */
      readonly alpha: number;
      readonly turnsPerS: number;
    }
  | { readonly told: false; readonly why: string };

const shortestS = 0.4;
const longestS = 12;
/** So much of the recording must lie behind it. */
const quietS = 0.3;
/** Log-likelihood by which a run-down must stand out of noise, and by which it must beat any other. */
const leastGain = 25;
const leastLead = 20;
/** And by which its second half must stand out by itself: a time stretched too long has nothing there. */
const leastLate = 6;
const worstU = 0.05;
/** The turns are counted for so long before the speed falls as well: where they cease to be even, it begins. */
const beforeS = 1;

/**
 * How long a blade took to stop: from the moment at which its speed begins to fall to the moment at which it stands, though
 * the last turns are too quiet to be heard.
 *
 * Method: a shaft that a brake slows with constant torque and air with the square of its speed falls as
 * ω(x) = ω₀·tan(α(1 − x))/tan α, x the share of the time to rest, α → 0 for the brake alone: moment, time and α are the
 * three that are sought. Whatever is heard of a turn recurs with the angle so turned through; the loudness, held against
 * its own mean, is fitted by sines of every other turn (compression), each turn (blade) and each half turn (its two ends), and the triple that leaves least is taken
 * (least squares, coarse to fine from the last even second of the track on). Its uncertainty is the curvature of
 * the log-likelihood there. Error: within 0.1 s on made sounds (`test/listen/blade-stop.test.ts`); a lag between hand
 * and brake before the speed falls is not heard. Not told: where the sines stand out of the noise by too little, where
 * another time does nearly as well, or where the standard uncertainty is above 0.05 s.
 *
 * @param track the speed that was heard of the whole recording
 * @throws ListenError for a sound in which nothing can be heard
 */
export function bladeStop(sound: Sound, track: readonly TrackPoint[]): BladeStop {
  requireSound(sound);
  const about = heldBefore(track);
  if (!about) return { told: false, why: 'no second of even running is heard before it' };
  if (lengthOf(sound) - about.from < shortestS + quietS)
    return { told: false, why: 'it runs on to the end of the recording' };
  if (!growsQuiet(sound, about.from)) return { told: false, why: 'nothing grows quiet after it' };
  const heard = turnsHeard(sound);
  const end = Math.min(heard.length / rateHz, about.from + longestS);
  const start = Math.max(0, about.from - beforeS);
  const square = heard
    .subarray(Math.round(start * rateHz), Math.round(end * rateHz))
    .reduce((sum, x) => sum + x * x, 0);
  const window: Window = { heard, start, end, turnsPerS: 0, square };
  const even = { ...window, turnsPerS: evenTurns(window, about) };
  const found = searched(even, about.from);
  if (!found || found.gain < leastGain)
    return { told: false, why: 'the turns do not stand out of the noise while it slows down' };
  if (found.gain - found.rival < leastLead)
    return { told: false, why: 'more than one stop time fits what is heard' };
  const u = spreadOf(even, found.fall);
  if (lateGain(even, found.fall) < leastLate || !(u <= worstU))
    return { told: false, why: 'the last turns are too quiet to say when it stood' };
  return { told: true, ...found.fall, u, turnsPerS: even.turnsPerS };
}

interface Held {
  /** about when the speed began to fall */
  readonly from: number;
  readonly fromRpm: number;
}

/** The last speed that was held for a second, and about until when. A jump or a hole in the track ends it. */
function heldBefore(track: readonly TrackPoint[]): Held | undefined {
  const usual = median(track.map(({ rpm }) => rpm));
  const runs: TrackPoint[][] = [];
  for (const point of track) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    const goesOn = last && point.t - last.t < 0.12 && Math.abs(point.rpm / usual - 1) < 0.03;
    if (run && goesOn) run.push(point);
    else runs.push([point]);
  }
  const held = runs.findLast((run) => run.at(-1)!.t - run[0]!.t >= beforeS);
  if (!held) return undefined;
  const from = held.at(-1)!.t;
  const second = held.filter(({ t }) => t > from - beforeS);
  return { from, fromRpm: median(second.map(({ rpm }) => rpm)) };
}

/** A machine that stands has left less than half of its power in the sound, be the room as loud as it may. */
const quieter = 0.5;

/** Whether for a moment after it the sound is by so much quieter than in the second before. */
function growsQuiet({ samples, sampleRate }: Sound, from: number): boolean {
  const power = (a: number, b: number): number =>
    meanSquare(samples, Math.max(0, Math.round(a * sampleRate)), Math.round(b * sampleRate));
  const before = power(from - beforeS, from - 0.1);
  const end = Math.min(samples.length / sampleRate, from + longestS);
  for (let t = from; t + quietS <= end; t += quietS / 3)
    if (power(t, t + quietS) < quieter * before) return true;
  return false;
}

/** The part of the sound that is looked at, and how fast the blade turned before. */
interface Window {
  readonly heard: Float64Array;
  readonly start: number;
  readonly end: number;
  readonly turnsPerS: number;
  /** all that there is to explain in it */
  readonly square: number;
}

/** What sines of the orders explain of a part, turns told by `turns`, each piece of `pieceS` with its own sines. */
function explained(
  { heard }: Window,
  [from, to]: readonly [number, number],
  turns: (t: number) => number,
  pieceS: number,
): number {
  const first = Math.max(0, Math.round(from * rateHz));
  const last = Math.min(heard.length, Math.round(to * rateHz));
  const piece = Math.max(1, Math.round(pieceS * rateHz));
  let sum = 0;
  for (let a = first; a < last; a += piece) {
    const b = Math.min(last, a + piece);
    if (b - a < 0.3 * piece && a > first) break;
    const sums = new Float64Array(6);
    for (let i = a; i < b; i += together) addSines(sums, heard, i, Math.min(b, i + together), turns);
    const power = sums.reduce((all, each) => all + each * each, 0);
    sum += (2 * power) / (b - a);
  }
  return sum;
}

/** Values over which the speed is taken to be even: 16 ms, within which no blade loses a thousandth of a turn. */
const together = 8;

/** Adds what a few values hold of the cosines and sines of every other turn, each turn and each half turn. */
function addSines(
  sums: Float64Array,
  heard: Float64Array,
  from: number,
  to: number,
  turns: (t: number) => number,
): void {
  const begins = Math.PI * turns(from / rateHz);
  const step = (Math.PI * turns(to / rateHz) - begins) / (to - from);
  let [cos, sin] = [Math.cos(begins), Math.sin(begins)];
  const [turnCos, turnSin] = [Math.cos(step), Math.sin(step)];
  for (let i = from; i < to; i += 1) {
    const value = heard[i]!;
    const cos2 = cos * cos - sin * sin;
    const sin2 = 2 * sin * cos;
    sums[0]! += value * cos;
    sums[1]! += value * sin;
    sums[2]! += value * cos2;
    sums[3]! += value * sin2;
    sums[4]! += value * (cos2 * cos2 - sin2 * sin2);
    sums[5]! += value * 2 * sin2 * cos2;
    const next = cos * turnCos - sin * turnSin;
    sin = sin * turnCos + cos * turnSin;
    cos = next;
  }
}

/** The speed before the fall to within what a second of turns tells. */
function evenTurns(window: Window, { from, fromRpm }: Held): number {
  const part = [Math.max(0, from - beforeS - 0.2), from - 0.15] as const;
  const rated = Array.from({ length: 61 }, (_, i) => (fromRpm / 60) * (1 + (i - 30) * 0.0007));
  return best(rated, (hz) => explained(window, part, (t) => hz * t, beforeS + 1));
}

function best(list: readonly number[], worth: (one: number) => number): number {
  let top = list[0]!;
  let most = Number.NEGATIVE_INFINITY;
  for (const one of list) {
    const value = worth(one);
    if (value > most) [top, most] = [one, value];
  }
  return top;
}

/** Log-likelihood gained by a fall over noise alone. Neighbors share their sound: every other value is news. */
function gainOf(window: Window, fall: Fall, pieceS: number): number {
  const { start, end, turnsPerS, square } = window;
  const { from, seconds } = fall;
  if (from <= start || from + seconds > end) return Number.NEGATIVE_INFINITY;
  const even = explained(window, [start, from], (t) => turnsPerS * t, pieceS);
  const falling = explained(
    window,
    [from, from + seconds],
    (t) => turnsAt(turnsPerS, fall, (t - from) / seconds),
    pieceS,
  );
  return (((end - start) * rateHz) / 4) * Math.log(square / Math.max(1e-9, square - even - falling));
}

interface Found {
  readonly fall: Fall;
  readonly gain: number;
  /** the best of all others that stand at another moment */
  readonly rival: number;
}

const alphas = [0.3, 0.8, 1.15, 1.4];
const coarseS = 0.15;
const kept = 24;
const finest = 8;

function searched(window: Window, about: number): Found | undefined {
  const coarse: { fall: Fall; gain: number }[] = [];
  for (let from = about - 0.45; from <= about + 0.151; from += 0.06)
    for (let seconds = shortestS; from + seconds < window.end; seconds *= 1.05)
      for (const alpha of alphas) {
        const fall = { from, seconds, alpha };
        coarse.push({ fall, gain: gainOf(window, fall, coarseS) });
      }
  const starts = apart(coarse.filter(({ gain }) => gain > 0).toSorted((a, b) => b.gain - a.gain));
  const nearer = starts
    .map(({ fall }) => refined(window, fall, 0.35))
    .map((fall) => ({ fall, gain: gainOf(window, fall, 0.7) }))
    .toSorted((a, b) => b.gain - a.gain)
    .slice(0, finest);
  const fine = nearer.map(({ fall }) => refined(window, refined(window, fall, 0.7), longestS * 2));
  const rated = fine
    .map((fall) => ({ fall, gain: gainOf(window, fall, longestS * 2) }))
    .toSorted((a, b) => b.gain - a.gain);
  const [top] = rated;
  if (!top) return undefined;
  const others = rated.filter(({ fall }) => Math.abs(stands(fall) - stands(top.fall)) > 0.1);
  return { ...top, rival: others[0]?.gain ?? 0 };
}

const stands = ({ from, seconds }: Fall): number => from + seconds;

/** What the sines gain in the second half of a fall alone, each half as if nothing were known of the other. */
function lateGain(window: Window, fall: Fall): number {
  const { from, seconds } = fall;
  const part = [from + seconds / 2, from + seconds] as const;
  const [first, last] = [Math.round(part[0] * rateHz), Math.round(part[1] * rateHz)];
  const square = window.heard.subarray(first, last).reduce((sum, x) => sum + x * x, 0);
  const turns = (t: number): number => turnsAt(window.turnsPerS, fall, (t - from) / seconds);
  const left = Math.max(1e-9, square - explained(window, part, turns, longestS * 2));
  return ((last - first) / 4) * Math.log(square / left);
}

/** The best, and others that are not merely its neighbors. */
function apart(list: readonly { readonly fall: Fall; readonly gain: number }[]) {
  const taken: { readonly fall: Fall; readonly gain: number }[] = [];
  for (const one of list) {
    const near = (o: { readonly fall: Fall }): boolean =>
      Math.abs(stands(o.fall) - stands(one.fall)) < 0.06 && Math.abs(o.fall.alpha - one.fall.alpha) < 0.3;
    if (taken.length < kept && !taken.some(near)) taken.push(one);
  }
  return taken;
}

/** Climbs along each of the three in steps that grow smaller. */
function refined(window: Window, start: Fall, pieceS: number): Fall {
  let at = start;
  let worth = gainOf(window, at, pieceS);
  const steps = { from: 0.02, seconds: 0.02 * start.seconds, alpha: 0.08 };
  for (let round = 0; round < 7; round += 1) {
    for (let again = 0; again < 6; again += 1) {
      const before = worth;
      for (const next of neighbors(at, steps, 0.5 ** round)) {
        const value = gainOf(window, next, pieceS);
        if (value > worth) [at, worth] = [next, value];
      }
      if (worth === before) break;
    }
  }
  return at;
}

function neighbors({ from, seconds, alpha }: Fall, steps: Fall, part: number): Fall[] {
  const within = (value: number): number => Math.min(1.5, Math.max(0, value));
  return [-1, 1].flatMap((sign) => {
    const [df, ds, da] = [steps.from, steps.seconds, steps.alpha].map((step) => sign * step * part) as [
      number,
      number,
      number,
    ];
    return [
      { from: from + df, seconds, alpha },
      // it stands at the same moment
      { from: from + df, seconds: seconds - df, alpha },
      { from, seconds: seconds + ds, alpha },
      { from, seconds, alpha: within(alpha + da) },
      { from, seconds: seconds + ds, alpha: within(alpha + da) },
      { from, seconds: seconds + ds, alpha: within(alpha - da) },
    ];
  });
}

/** How far the time may lie off: where the best of the others costs half a unit of log-likelihood. */
function spreadOf(window: Window, fall: Fall): number {
  const top = gainOf(window, fall, longestS * 2);
  const lost = (ds: number): number => {
    let most = Number.NEGATIVE_INFINITY;
    for (let df = -4; df <= 4; df += 1)
      for (let da = -4; da <= 4; da += 1) {
        const alpha = Math.min(1.5, Math.max(0, fall.alpha + 0.02 * da));
        const other = { from: fall.from + 0.005 * df, seconds: fall.seconds + ds, alpha };
        most = Math.max(most, gainOf(window, other, longestS * 2));
      }
    return top - most;
  };
  for (let u = 0.005; u <= 2 * worstU; u += 0.005) if (lost(u) >= 0.5 && lost(-u) >= 0.5) return u;
  return Number.POSITIVE_INFINITY;
}
