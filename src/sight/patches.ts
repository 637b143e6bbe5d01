import type { Place } from './mat/mat.js';

/** Pixels that hang together by their sides. */
export interface Patch {
  readonly count: number;
  /** of each of its rows the first pixel and the last */
  readonly ends: ReadonlyMap<number, readonly [number, number]>;
}

/** The patches of the pixels that are 1 in `mask`, which is used up: they are 2 afterwards. */
export function* patchesOf(mask: Uint8Array, width: number, height: number): Generator<Patch> {
  const stack = new Int32Array(width * height);
  for (let start = 0; start < mask.length; start += 1) {
    if (mask[start] !== 1) continue;
    let depth = 0;
    let count = 0;
    const ends = new Map<number, [number, number]>();
    stack[depth++] = start;
    mask[start] = 2;
    while (depth > 0) {
      const at = stack[--depth]!;
      count += 1;
      const x = at % width;
      const y = (at - x) / width;
      const end = ends.get(y);
      if (!end) ends.set(y, [x, x]);
      else if (x < end[0]) end[0] = x;
      else if (x > end[1]) end[1] = x;
      if (x > 0 && mask[at - 1] === 1) stack[depth++] = mark(mask, at - 1);
      if (x < width - 1 && mask[at + 1] === 1) stack[depth++] = mark(mask, at + 1);
      if (y > 0 && mask[at - width] === 1) stack[depth++] = mark(mask, at - width);
      if (y < height - 1 && mask[at + width] === 1) stack[depth++] = mark(mask, at + width);
    }
    yield { count, ends };
  }
}

function mark(mask: Uint8Array, at: number): number {
  mask[at] = 2;
  return at;
}

/** The corners of the outermost pixels of each row: a convex hull around them is one around the patch. */
export const outlineOf = ({ ends }: Patch): Place[] =>
  [...ends].flatMap(([y, [from, to]]) => [
    { x: from, y },
    { x: to + 1, y },
    { x: from, y: y + 1 },
    { x: to + 1, y: y + 1 },
  ]);
