/** Sounds for the bench of hearing, made or put together, the same ones each time. */
import type { Sound } from '../../src/listen/index.js';

export const rate = 16_000;

export type Draw = () => number;

/** Even numbers from 0 to 1. */
export function seeded(seed: number): Draw {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

const gauss = (draw: Draw): number =>
  Math.sqrt(-2 * Math.log(draw() + 1e-12)) * Math.cos(2 * Math.PI * draw());

export const silence = (seconds: number): Float32Array => new Float32Array(Math.round(seconds * rate));

export function joined(...parts: readonly Float32Array[]): Float32Array {
  const whole = new Float32Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

const rms = (samples: Float32Array): number =>
  Math.sqrt(samples.reduce((sum, each) => sum + each * each, 0) / samples.length);

/** of full scale, of what is said and of what it is mixed with */
const level = 0.08;
function atLevel(samples: Float32Array): Float32Array {
  const gain = level / rms(samples);
  return samples.map((each) => each * gain);
}

/** What is said in a recording, without the pauses about it, at the one level. */
export function saidIn(samples: Float32Array): Float32Array {
  const step = rate / 100;
  const powers = Array.from({ length: Math.floor(samples.length / step) }, (_, n) =>
    rms(samples.subarray(n * step, (n + 1) * step)),
  );
  const least = 0.03 * Math.max(...powers);
  const from = powers.findIndex((each) => each > least);
  const to = powers.findLastIndex((each) => each > least);
  return atLevel(samples.slice(Math.max(0, from - 4) * step, (to + 6) * step));
}

export const noises = ['compressor', 'vacuum', 'radio', 'hammer'] as const;
export type Noise = (typeof noises)[number];

type Make = (length: number, draw: Draw, talk: readonly Float32Array[]) => Float32Array;

/** Made: a hiss like that of rushing air, falling towards high tones. */
function rush(length: number, draw: Draw): Float32Array {
  let [slow, middle, quick] = [0, 0, 0];
  return new Float32Array(length).map(() => {
    const each = gauss(draw);
    slow = 0.997 * slow + 0.03 * each;
    middle = 0.96 * middle + 0.1 * each;
    quick = 0.6 * quick + 0.3 * each;
    return slow + middle + quick + 0.1 * each;
  });
}

const tone = (hz: number, n: number) => Math.sin((2 * Math.PI * hz * n) / rate);

const makers: Readonly<Record<Noise, Make>> = {
  compressor: (length, draw) => rush(length, draw).map((each, n) => each * (0.6 + 0.4 * tone(24, n))),
  vacuum: (length, draw) =>
    rush(length, draw).map((each, n) => each + 0.3 * tone(380, n) + 0.2 * tone(760, n)),
  radio: (length, draw, talk) => {
    const parts: Float32Array[] = [];
    for (let held = 0; held < length; held += parts.at(-1)!.length)
      parts.push(talk[Math.floor(draw() * talk.length)]!);
    return joined(...parts).slice(0, length);
  },
  hammer: (length, draw) => {
    const blows = new Float32Array(length);
    for (let at = Math.floor(draw() * 6000); at < length; at += 6000 + Math.floor(draw() * 8000))
      for (let n = 0; n < 2400 && at + n < length; n += 1)
        blows[at + n]! += gauss(draw) * Math.exp(-n / 500) + 2 * tone(1900, n) * Math.exp(-n / 700);
    return blows;
  },
};

export const noiseOf = (
  noise: Noise,
  length: number,
  draw: Draw,
  talk: readonly Float32Array[],
): Float32Array => atLevel(makers[noise](length, draw, talk));

/** Half a second of noise before the press, and the phrase in it; without a noise, the hiss of a microphone. */
export function inNoise(
  said: Float32Array,
  db: number | undefined,
  noise: Noise,
  draw: Draw,
  talk: readonly Float32Array[],
): { readonly before: Sound; readonly sound: Sound } {
  const before = rate / 2;
  const length = before + said.length;
  const made = db === undefined ? silence(0) : noiseOf(noise, length, draw, talk);
  const gain = db === undefined ? 0 : 10 ** (-db / 20);
  const whole = Float32Array.from(
    { length },
    (_, n) => (said[n - before] ?? 0) + gain * (made[n] ?? 0) + 2e-4 * gauss(draw),
  );
  const part = (from: number, to?: number): Sound => ({ samples: whole.slice(from, to), sampleRate: rate });
  return { before: part(0, before), sound: part(before) };
}
