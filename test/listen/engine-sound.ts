import { seeded as random } from '../../src/infer/index.js';

export { random };
/**
 * Sounds of engines made from first causes, for tests: it shares no code with the tracker.
 * Crank angle is integrated from a speed law; each firing is a burst into resonators; fan, spark clicks, noise,
 * a phone's high-pass and clipping follow.
 */
export interface EngineSound {
  readonly strokes: 2 | 4;
  readonly cylinders?: number;
  readonly rpm: (t: number) => number;
  readonly seconds: number;
  readonly sampleRate?: number;
  readonly seed: number;
  /** standard deviation of each firing's moment, as a share of the cycle */
  readonly jitter?: number;
  /** standard deviation of each firing's strength */
  readonly strengthSpread?: number;
  /** where in the cycle each cylinder fires, as a share of it; evenly spaced when left out */
  readonly offsets?: readonly number[];
  /** strengths of the cylinders; equal when left out */
  readonly cylinderGains?: readonly number[];
  /** strength of every other cycle: 1 fires alike, 0 fires every other time */
  readonly alternate?: number;
  readonly resonancesHz?: readonly number[];
  /** blades on the crankshaft and the level of their tone */
  readonly fan?: { readonly blades: number; readonly level: number };
  /** level of a click at each turn, as a wasted spark gives */
  readonly sparkEachTurn?: number;
  /** decibels of the engine over broadband noise */
  readonly snrDb?: number;
  readonly highPassHz?: number;
  /** full scale over the root mean square at which peaks are cut */
  readonly clipAt?: number;
  /** when the engine fires at all */
  readonly fires?: (t: number) => boolean;
}

export function normal(uniform: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

export function engineSound(of: EngineSound): {
  readonly samples: Float32Array;
  readonly sampleRate: number;
} {
  const sampleRate = of.sampleRate ?? 16_000;
  const length = Math.round(of.seconds * sampleRate);
  const uniform = random(of.seed);
  const dry = firings(of, length, sampleRate, uniform);
  const engine = resonate(dry, of.resonancesHz ?? [90, 240, 610, 1300], sampleRate);
  addTones(engine, of, sampleRate);
  addNoise(engine, of.snrDb ?? 30, uniform);
  if (of.highPassHz !== undefined) highPass(engine, of.highPassHz, sampleRate);
  return { samples: scaled(engine, of.clipAt ?? 8), sampleRate };
}

function firings(of: EngineSound, length: number, sampleRate: number, uniform: () => number): Float64Array {
  const cylinders = of.cylinders ?? 1;
  const turnsPerCycle = of.strokes / 2;
  const out = new Float64Array(length + sampleRate);
  const dueTurns = (n: number) =>
    turnsPerCycle *
    (Math.floor(n / cylinders) + (of.offsets?.[n % cylinders] ?? (n % cylinders) / cylinders));
  let turns = 0;
  let next = 0;
  for (let i = 0; i < length; i += 1) {
    const t = i / sampleRate;
    const rate = of.rpm(t) / 60;
    turns += rate / sampleRate;
    while (turns >= dueTurns(next)) {
      const cycle = Math.floor(next / cylinders);
      const gain = (of.cylinderGains?.[next % cylinders] ?? 1) * (cycle % 2 === 1 ? (of.alternate ?? 1) : 1);
      const strength = gain * (1 + (of.strengthSpread ?? 0.15) * normal(uniform));
      const late = ((of.jitter ?? 0.004) * normal(uniform) * turnsPerCycle) / Math.max(rate, 1);
      const due = t - (turns - dueTurns(next)) / Math.max(rate, 1e-3);
      if (of.fires?.(t) ?? true) burst(out, (due + late) * sampleRate, strength, sampleRate, uniform);
      next += 1;
    }
  }
  return out.slice(0, length);
}

/** The exhaust opens: a short push of pressure with a rush of gas in it. */
function burst(
  out: Float64Array,
  at: number,
  strength: number,
  sampleRate: number,
  uniform: () => number,
): void {
  const width = 0.0015 * sampleRate;
  for (let i = Math.max(0, Math.ceil(at - width)); i < Math.min(out.length, at + 5 * width); i += 1) {
    const x = (i - at) / width;
    const push = x < 1 ? 0.5 * (1 + Math.cos(Math.PI * x)) : 0;
    const rush = x > 0 ? 0.25 * Math.exp(-x) * normal(uniform) : 0;
    out[i]! += strength * (push + rush);
  }
}

function resonate(dry: Float64Array, resonancesHz: readonly number[], sampleRate: number): Float64Array {
  const out = dry.map((x) => 0.3 * x);
  resonancesHz.forEach((hz, n) => {
    const r = Math.exp((-Math.PI * hz) / (3 * sampleRate));
    const a1 = -2 * r * Math.cos((2 * Math.PI * hz) / sampleRate);
    let y1 = 0;
    let y2 = 0;
    const gain = (1 - r) * (n % 2 === 0 ? 1 : 0.7);
    dry.forEach((x, i) => {
      const y = gain * x - a1 * y1 - r * r * y2;
      y2 = y1;
      y1 = y;
      out[i]! += 8 * y;
    });
  });
  return out;
}

function addTones(sound: Float64Array, of: EngineSound, sampleRate: number): void {
  const level = rms(sound);
  let turns = 0;
  sound.forEach((_, i) => {
    const before = turns;
    turns += of.rpm(i / sampleRate) / 60 / sampleRate;
    if (of.fan)
      sound[i]! += of.fan.level * level * Math.SQRT2 * Math.sin(2 * Math.PI * of.fan.blades * turns);
    if (of.sparkEachTurn && Math.floor(turns) !== Math.floor(before))
      sound[i]! += of.sparkEachTurn * level * 6;
  });
}

function addNoise(sound: Float64Array, snrDb: number, uniform: () => number): void {
  const level = rms(sound) * 10 ** (-snrDb / 20);
  let slow = 0;
  sound.forEach((_, i) => {
    const white = normal(uniform);
    slow = 0.95 * slow + 0.31 * white;
    sound[i]! += level * (0.7 * white + 0.7 * slow);
  });
}

/** Second-order Butterworth, by the bilinear transform. */
function highPass(sound: Float64Array, hz: number, sampleRate: number): void {
  const k = Math.tan((Math.PI * hz) / sampleRate);
  const norm = 1 / (1 + Math.SQRT2 * k + k * k);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  sound.forEach((x, i) => {
    const y = norm * (x - 2 * x1 + x2 - 2 * (k * k - 1) * y1 - (1 - Math.SQRT2 * k + k * k) * y2);
    [x1, x2, y1, y2] = [x, x1, y, y1];
    sound[i] = y;
  });
}

const rms = (sound: Float64Array): number =>
  Math.sqrt(sound.reduce((sum, x) => sum + x * x, 0) / sound.length) || 1;

function scaled(sound: Float64Array, clipAt: number): Float32Array {
  const full = rms(sound) * clipAt;
  return Float32Array.from(sound, (x) => Math.max(-1, Math.min(1, x / full)));
}
