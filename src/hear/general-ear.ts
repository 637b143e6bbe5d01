import type { Sound } from '../listen/index.js';
import type { GeneralEar } from './hear.js';

/** What is asked of a recognizer that follows a grammar; samples at 16,000 a second. */
export interface Decoder {
  set_grammar(grammar: string): void;
  start(): void;
  process_audio(samples: Float32Array, noSearch: boolean, wholeUtterance: boolean): number;
  stop(): void;
  get_text(): string;
  get_alignment(): { readonly w?: readonly { readonly t: string; readonly p: number }[] };
}

/** The same before it is asked: what it knows and can be taught. */
export interface Recognizer extends Decoder {
  initialize(): Promise<unknown>;
  lookup_word(word: string): string | null;
  add_words(...words: readonly (readonly [word: string, sound: string])[]): void;
}

export const decoderRate = 16_000;

/**
 * How the recognizer is set: a word costs little, for a phrase has few; noise is taken out before it or not at all; beams so
 * wide that a phrase always comes to its end, in which seconds of sound take a few hundredths of one.
 */
export const heardWell = {
  ...{ wip: 0.02, remove_noise: false, loglevel: 'FATAL' },
  ...{ beam: 1e-80, pbeam: 1e-80, wbeam: 1e-60 },
} as const;

/**
 * What a recognizer is given: the loudest sample at nine tenths of full scale, a fifth of a second of quiet on each side, and
 * over all a hiss of −54 dB, for digital silence leaves it without a measure. Chosen among five on the eighty words of
 * `test/hear/general-ear.test.ts`: 73 are told, as they come with a hiss of −48 dB 66.
 */
const given = { peak: 0.9, quietS: 0.2, hiss: 2e-3 } as const;

/** The general ear over a recognizer that is open; its doubt is the worst word's. */
export function generalEar(decoder: Decoder): GeneralEar {
  let ready = '';
  return (sound, phrases) => {
    const grammar = grammarOf(phrases);
    if (grammar !== ready) decoder.set_grammar(grammar);
    ready = grammar;
    decoder.start();
    decoder.process_audio(evened(sound), false, true);
    decoder.stop();
    const text = decoder.get_text().trim();
    const phrase = phrases.find((each) => each === text);
    if (phrase === undefined) return undefined;
    const words = (decoder.get_alignment().w ?? []).filter(({ t }) => phrase.split(' ').includes(t));
    return { phrase, doubt: 1 - Math.min(1, ...words.map(({ p }) => p)) };
  };
}

/** A closed set of phrases (JSGF, W3C note of 2000): one of them and nothing else. */
export function grammarOf(phrases: readonly string[]): string {
  return `#JSGF V1.0; grammar said; public <said> = ${phrases.join(' | ')};`;
}

/** The same hiss every time: a sound heard twice is heard as the same. */
function evened({ samples, sampleRate }: Sound): Float32Array {
  const loudest = samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
  const quiet = Math.round(given.quietS * sampleRate);
  const out = new Float32Array(samples.length + 2 * quiet);
  if (loudest > 0)
    out.set(
      samples.map((sample) => (given.peak / loudest) * sample),
      quiet,
    );
  let seed = 1;
  return out.map((sample) => {
    seed = (Math.imul(seed, 1_664_525) + 1_013_904_223) >>> 0;
    return sample + given.hiss * (seed / 2 ** 31 - 1);
  });
}
