import { ListenError } from './error.js';

/** One channel of sound, samples as a fraction of full scale. */
export interface Sound {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  /** seconds that its file promises and does not hold: it was cut short */
  readonly missingS?: number;
}

/** Below this an idling engine has not gone through enough cycles to be told from a rattle. */
export const shortestSoundS = 0.2;

const slowestSampling = 4000;
const fastestSampling = 768_000;

export const seconds = ({ samples, sampleRate }: Sound): number => samples.length / sampleRate;

/** Throws a ListenError for a sampling rate, a length or a sample that nothing can be heard in. */
export function requireSound(sound: Sound): Sound {
  const { sampleRate, samples } = sound;
  if (!(sampleRate >= slowestSampling && sampleRate <= fastestSampling))
    throw new ListenError(
      `The sampling rate must lie between ${slowestSampling} and ${fastestSampling} a second; got ${sampleRate}.`,
      'sampleRate',
      sampleRate,
    );
  if (seconds(sound) < shortestSoundS)
    throw new ListenError(
      `The sound must last at least ${shortestSoundS} s; it lasts ${seconds(sound).toFixed(3)} s.`,
      'samples',
      samples.length,
    );
  const bad = firstThatIsNone(samples);
  if (bad >= 0) throw new ListenError(`Sample ${bad} is ${samples[bad]}, not a number.`, 'samples', bad);
  return sound;
}

/** A plain loop: minutes of sound have millions of samples. */
function firstThatIsNone(samples: Float32Array): number {
  for (let i = 0; i < samples.length; i += 1) if (!Number.isFinite(samples[i])) return i;
  return -1;
}
