import { ListenError, readWav } from '../listen/index.js';
import { ShopkeepError } from './error.js';

/** What is known of the sound of a spoken note once it was looked into. */
export interface SoundFacts {
  readonly mime: 'audio/wav';
  readonly bytes: number;
  /** a sound has none */
  readonly width: 0;
  readonly height: 0;
}

/** Whether the bytes begin as a WAV file does. */
export function isSound(bytes: Uint8Array): boolean {
  const sign = (at: number) => String.fromCharCode(...bytes.subarray(at, at + 4));
  return sign(0) === 'RIFF' && sign(8) === 'WAVE';
}

/** Two minutes of talk and what a slow machine adds to them, as the log takes them. */
const longestS = 150;

/** @throws ShopkeepError saying why it is no spoken note that a page can play */
export function inspectSound(bytes: Uint8Array): SoundFacts {
  const { samples, sampleRate, missingS } = read(bytes);
  const seconds = samples.length / sampleRate;
  if (missingS !== undefined) throw refused('This sound is cut off: its file promises more than it holds.');
  if (seconds > longestS)
    throw refused(`This sound lasts ${Math.round(seconds)} s; a spoken note may last ${longestS} s.`);
  return { mime: 'audio/wav', bytes: bytes.byteLength, width: 0, height: 0 };
}

function read(bytes: Uint8Array) {
  try {
    return readWav(bytes);
  } catch (error) {
    if (!(error instanceof ListenError)) throw error;
    throw refused(error.message);
  }
}

const refused = (why: string) =>
  new ShopkeepError('bad-picture', `${why} Send it again; nothing was stored.`, 'sound');
