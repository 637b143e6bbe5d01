import type { Sound } from '../../src/listen/index.js';

const rate = 16_000;

/** Two resonances of the mouth in Hz; from memory, as vowels have them in every book on speech. */
const vowels = { a: [750, 1200], e: [500, 1900], i: [300, 2300], o: [500, 900], u: [320, 800] } as const;
type Vowel = keyof typeof vowels;

export interface Manner {
  /** of one vowel, seconds */
  readonly vowelS?: number;
  readonly pitchHz?: number;
  readonly loud?: number;
}

/** A made voice that says vowels: pulses of the throat through two resonances that glide from one vowel to the next. */
export function saying(
  text: string,
  { vowelS = 0.16, pitchHz = 120, loud = 0.1 }: Manner = {},
): Float32Array {
  const letters = [...text] as Vowel[];
  const length = Math.round(letters.length * vowelS * rate);
  const out = new Float32Array(length);
  const past = [
    [0, 0],
    [0, 0],
  ];
  let turn = 0;
  for (let n = 0; n < length; n += 1) {
    const at = n / rate / vowelS - 0.5;
    const i = Math.max(0, Math.min(letters.length - 1, Math.floor(at)));
    const part = Math.max(0, Math.min(1, 2 * (at - i) - 0.5));
    const [here, next] = [vowels[letters[i]!], vowels[letters[Math.min(letters.length - 1, i + 1)]!]];
    turn += pitchHz / rate;
    let signal = turn >= 1 ? 1 : 0;
    turn %= 1;
    for (const k of [0, 1] as const) {
      const hz = here[k] + part * (next[k] - here[k]);
      const r = Math.exp((-Math.PI * 90) / rate);
      const [y1, y2] = past[k] as [number, number];
      const y = signal + 2 * r * Math.cos((2 * Math.PI * hz) / rate) * y1 - r * r * y2;
      past[k] = [y, y1];
      signal = y;
    }
    out[n] = signal;
  }
  const top = Math.max(...out.map(Math.abs));
  return out.map((each) => (each * loud) / top);
}

export function noise(seconds: number, loud: number, seed = 1): Float32Array {
  let state = seed;
  return new Float32Array(Math.round(seconds * rate)).map(() => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return loud * (state / 2 ** 31 - 1);
  });
}

/** The voice in the midst of so much noise, a third of a second before and after it. */
export function inRoom(voice: Float32Array, loud = 2e-4, seed = 3): Sound {
  const samples = noise(voice.length / rate + 0.66, loud, seed);
  const from = Math.round(0.33 * rate);
  voice.forEach((each, n) => {
    samples[from + n]! += each;
  });
  return { samples, sampleRate: rate };
}

export const sounding = (samples: Float32Array): Sound => ({ samples, sampleRate: rate });
