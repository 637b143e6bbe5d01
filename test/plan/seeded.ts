import { seeded as uniform } from '../../src/infer/index.js';

export { uniform };
export interface Draw {
  readonly chance: (p: number) => boolean;
  /** a whole number from … to */
  readonly whole: (from: number, to: number) => number;
  readonly some: <T>(list: readonly T[], count: number) => T[];
}

export function drawing(seed: number): Draw {
  const next = uniform(seed);
  const whole = (from: number, to: number) => from + Math.floor(next() * (to - from + 1));
  const some = <T>(list: readonly T[], count: number): T[] => {
    const left = [...list];
    return Array.from(
      { length: Math.min(count, list.length) },
      () => left.splice(whole(0, left.length - 1), 1)[0]!,
    );
  };
  return { chance: (p) => next() < p, whole, some };
}

export const times = <T>(n: number, make: (i: number) => T): T[] =>
  Array.from({ length: n }, (_, i) => make(i));
