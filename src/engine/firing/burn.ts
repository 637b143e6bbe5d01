import { requireWithin } from '../error.js';

/** Wiebe's constants as the book has them: 0.99326 is burned at the end. From memory. */
const [a, m] = [5, 2];

/**
 * Part of the charge that has burned, 0 to 1, at a part of the burning's duration.
 *
 * Source: Wiebe's function as in *Internal Combustion Engine Fundamentals* 1988, §9.2.2, constants 5 and 2 from memory:
 * x = 1 − exp(−a·f^(m + 1)). 0 before it begins; past the end (f over 1) the last of it goes on. A curve of the right
 * form, not a law of nature. Example: half way: 0.46474; at the end 0.99326.
 */
export function burnedPart(durationPart: number): number {
  return durationPart <= 0 ? 0 : 1 - Math.exp(-a * durationPart ** (m + 1));
}

/** Its derivative, d(burned part)/d(duration part). Example: half way: 2.007. */
export function burningRate(durationPart: number): number {
  if (durationPart <= 0) return 0;
  return a * (m + 1) * durationPart ** m * Math.exp(-a * durationPart ** (m + 1));
}

/** Part of the duration at which this part has burned. Example: 0.5: 0.5175. */
export function durationPartAt(burned: number): number {
  requireWithin(burned, 0, 0.999999, 'burned');
  return (-Math.log(1 - burned) / a) ** (1 / (m + 1));
}
