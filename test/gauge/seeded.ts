import { seeded as uniform } from '../../src/infer/index.js';

export { uniform };
/** Standard normal numbers from a seed (Box and Muller). */
export function normals(seed: number): () => number {
  const draw = uniform(seed);
  return () => Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
}

export const times = <T>(n: number, make: (i: number) => T): T[] =>
  Array.from({ length: n }, (_, i) => make(i));
