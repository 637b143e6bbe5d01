import type { Sound } from '../listen/index.js';

/** Zero crossings of the sinc on each side, at the lower of the two rates. */
const lobes = 12;

/**
 * The sound at another rate of sampling. Method: Hann-tapered sinc with its edge at 0.45 of the lower rate, evaluated where a
 * sample is wanted; silent beyond its ends.
 */
export function atRate({ samples, sampleRate }: Sound, rate: number): Sound {
  if (sampleRate === rate) return { samples, sampleRate };
  const edge = 0.9 * Math.min(1, rate / sampleRate);
  const reach = lobes / edge;
  const kept = new Float32Array(Math.floor((samples.length * rate) / sampleRate));
  for (let n = 0; n < kept.length; n += 1) {
    const center = (n * sampleRate) / rate;
    let sum = 0;
    for (let i = Math.max(0, Math.ceil(center - reach)); i <= center + reach && i < samples.length; i += 1) {
      const x = i - center;
      const sinc = x === 0 ? edge : Math.sin(Math.PI * edge * x) / (Math.PI * x);
      sum += samples[i]! * sinc * (0.5 + 0.5 * Math.cos((Math.PI * x) / reach));
    }
    kept[n] = sum;
  }
  return { samples: kept, sampleRate: rate };
}
