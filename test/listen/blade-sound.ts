import { normal, random } from './engine-sound.js';

/**
 * Sounds of a blade that is let go, made from first causes, for tests: it shares no code with what listens. The engine
 * fires until the control is let go; then a brake of constant torque and the air slow the shaft. What is heard of a turn:
 * firing, then compression and the rush of the blade's two ends, each as loud as its speed allows, in noise.
 */
export interface BladeSound {
  readonly rpm: number;
  /** when it is let go */
  readonly letGo: number;
  /** from there until it stands */
  readonly stopS: number;
  /** the air's part of the slowing at full speed: 0 the brake alone */
  readonly airShare: number;
  readonly seconds: number;
  readonly seed: number;
  /** decibels of the running machine over the noise */
  readonly snrDb: number;
  /** the beat once a turn over that of its two ends, as one end that is worn or bent gives it; 0.5 when left out */
  readonly onceATurn?: number;
  readonly sampleRate?: number;
}

export function bladeSound(of: BladeSound): { readonly samples: Float32Array; readonly sampleRate: number } {
  const sampleRate = of.sampleRate ?? 8000;
  const count = Math.round(of.seconds * sampleRate);
  const uniform = random(of.seed);
  const speed = speedOver(of, count, sampleRate);
  const out = new Float64Array(count);
  let turns = uniform();
  let fired = Math.floor(turns / 2);
  for (let i = 0; i < count; i += 1) {
    const share = speed[i]! / (of.rpm / 60);
    turns += speed[i]! / sampleRate;
    const rush =
      0.5 + 0.5 * Math.cos(4 * Math.PI * turns) + 0.5 * (of.onceATurn ?? 0.5) * Math.cos(2 * Math.PI * turns);
    out[i]! += 0.5 * share ** 2.2 * rush * normal(uniform);
    if (Math.floor(turns / 2) > fired && share > 0.02) {
      fired = Math.floor(turns / 2);
      const fires = i / sampleRate < of.letGo;
      puff(out, i, fires ? 3 + 0.4 * normal(uniform) : 1.6 * share ** 0.7, sampleRate, uniform);
    }
  }
  return { samples: withNoise(out, of, sampleRate, uniform), sampleRate };
}

/** Turns a second: ω' = −(brake + air·ω²), integrated step by step, the brake such that it stands in time. */
function speedOver(of: BladeSound, count: number, sampleRate: number): Float64Array {
  const full = of.rpm / 60;
  const k = Math.sqrt(of.airShare / Math.max(1e-9, 1 - of.airShare));
  // closed form of the time to rest: atan(k)/k of that of the brake alone
  const brake = of.airShare === 0 ? full / of.stopS : ((full / of.stopS) * Math.atan(k)) / k;
  const air = (brake * k ** 2) / full ** 2;
  const out = new Float64Array(count);
  let now = full;
  for (let i = 0; i < count; i += 1) {
    if (i / sampleRate >= of.letGo) now = Math.max(0, now - (brake + air * now * now) / sampleRate);
    out[i] = now;
  }
  return out;
}

function puff(
  out: Float64Array,
  at: number,
  strength: number,
  sampleRate: number,
  uniform: () => number,
): void {
  const length = Math.round(0.012 * sampleRate);
  for (let j = 0; j < length && at + j < out.length; j += 1) {
    const t = j / sampleRate;
    const body = Math.sin(2 * Math.PI * 180 * t) + 0.6 * Math.sin(2 * Math.PI * 610 * t);
    out[at + j]! += strength * Math.exp(-t / 0.003) * (body + 0.4 * normal(uniform));
  }
}

function withNoise(
  out: Float64Array,
  of: BladeSound,
  sampleRate: number,
  uniform: () => number,
): Float32Array {
  const running = out.subarray(0, Math.round(of.letGo * sampleRate));
  const loud = Math.sqrt(running.reduce((sum, x) => sum + x * x, 0) / running.length);
  const noise = loud * 10 ** (-of.snrDb / 20);
  let slow = 0;
  return Float32Array.from(out, (x) => {
    const white = normal(uniform);
    slow = 0.95 * slow + 0.31 * white;
    return Math.max(-1, Math.min(1, (x + noise * (0.7 * white + 0.7 * slow)) / (10 * loud)));
  });
}
