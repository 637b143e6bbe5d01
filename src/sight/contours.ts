import type { Place } from './mat/mat.js';

/** Values over a plane at even steps. */
export interface Field {
  readonly width: number;
  readonly height: number;
  readonly x0: number;
  readonly y0: number;
  readonly step: number;
  readonly values: Float32Array;
}

/**
 * The closed lines along which a field crosses a level, with what is under it on the left (so the outline of something
 * low goes against the clock, its holes with it). Lines that run into the rim are left out.
 *
 * Marching squares: W. Lorensen and H. Cline, SIGGRAPH 1987, in the plane; saddles are told by the mean of the four.
 */
export function contours({ width, height, x0, y0, step, values }: Field, level: number): Place[][] {
  const next = new Map<number, number>();
  // an edge of the grid: 2 i goes right from pixel i, 2 i + 1 goes up from it
  for (let row = 0; row < height - 1; row += 1)
    for (let column = 0; column < width - 1; column += 1) {
      const i = row * width + column;
      const a = values[i]! < level ? 1 : 0;
      const b = values[i + 1]! < level ? 2 : 0;
      const c = values[i + width + 1]! < level ? 4 : 0;
      const d = values[i + width]! < level ? 8 : 0;
      const kind = a + b + c + d;
      if (kind === 0 || kind === 15) continue;
      const edges = [2 * i, 2 * (i + 1) + 1, 2 * (i + width), 2 * i + 1] as const;
      const mean = (values[i]! + values[i + 1]! + values[i + width]! + values[i + width + 1]!) / 4;
      for (const [from, to] of ways(kind, mean < level)) next.set(edges[from]!, edges[to]!);
    }
  const at = (edge: number): Place => {
    const i = edge >> 1;
    const other = edge % 2 === 0 ? i + 1 : i + width;
    const share = (level - values[i]!) / (values[other]! - values[i]!);
    const column = i % width;
    const row = (i - column) / width;
    return edge % 2 === 0
      ? { x: x0 + (column + share) * step, y: y0 + row * step }
      : { x: x0 + column * step, y: y0 + (row + share) * step };
  };
  return chained(next).map((edges) => edges.map(at));
}

/** Bottom 0, right 1, top 2, left 3: from where to where a line crosses a cell, what is low on its left. */
const single: Readonly<Record<number, readonly (readonly [number, number])[]>> = {
  1: [[0, 3]],
  2: [[1, 0]],
  3: [[1, 3]],
  4: [[2, 1]],
  6: [[2, 0]],
  7: [[2, 3]],
  8: [[3, 2]],
  9: [[0, 2]],
  11: [[1, 2]],
  12: [[3, 1]],
  13: [[0, 1]],
  14: [[3, 0]],
};

function ways(kind: number, middleIsLow: boolean): readonly (readonly [number, number])[] {
  if (kind === 5)
    return middleIsLow
      ? [
          [0, 1],
          [2, 3],
        ]
      : [
          [0, 3],
          [2, 1],
        ];
  if (kind === 10)
    return middleIsLow
      ? [
          [3, 0],
          [1, 2],
        ]
      : [
          [1, 0],
          [3, 2],
        ];
  return single[kind]!;
}

function chained(next: Map<number, number>): number[][] {
  const out: number[][] = [];
  while (next.size > 0) {
    const start = next.keys().next().value!;
    const line: number[] = [];
    let at: number | undefined = start;
    while (at !== undefined) {
      line.push(at);
      const to: number | undefined = next.get(at);
      next.delete(at);
      at = to;
      if (at === start) {
        out.push(line);
        break;
      }
    }
  }
  return out;
}

/** Above 0 against the clock (y up). */
export const signedArea = (polygon: readonly Place[]): number => {
  let sum = 0;
  for (let i = 0; i < polygon.length; i += 1) {
    const a = polygon[i]!;
    const b = polygon[(i + 1) % polygon.length]!;
    sum += a.x * b.y - b.x * a.y;
  }
  return sum / 2;
};

/** Whether a place lies inside a closed line. */
export function encloses(polygon: readonly Place[], { x, y }: Place): boolean {
  let inside = false;
  for (let i = 0, k = polygon.length - 1; i < polygon.length; k = i, i += 1) {
    const a = polygon[i]!;
    const b = polygon[k]!;
    if (a.y > y !== b.y > y && x < ((b.x - a.x) * (y - a.y)) / (b.y - a.y) + a.x) inside = !inside;
  }
  return inside;
}

export interface Bead extends Place {
  /** of the line, to its right: away from what is low */
  readonly nx: number;
  readonly ny: number;
}

/** Places at even spaces along a closed line, each with the direction across it, smoothed over `smooth` millimetres. */
export function beads(line: readonly Place[], space: number, smooth: number): Bead[] {
  const even = spaced(line, space);
  const n = even.length;
  const reach = Math.max(1, Math.round(smooth / space));
  return even.map(({ x, y }, i) => {
    const a = even[(i - reach + n) % n]!;
    const b = even[(i + reach) % n]!;
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    return { x, y, nx: (b.y - a.y) / length, ny: -(b.x - a.x) / length };
  });
}

/** Places at even spaces along a closed line, about so far apart, twelve at least. */
export function spaced(line: readonly Place[], space: number): Place[] {
  const lengths = line.map((a, i) => {
    const b = line[(i + 1) % line.length]!;
    return Math.hypot(b.x - a.x, b.y - a.y);
  });
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  const count = Math.max(12, Math.round(whole / space));
  const out: Place[] = [];
  let i = 0;
  let before = 0;
  for (let k = 0; k < count; k += 1) {
    const want = (k / count) * whole;
    while (i < line.length - 1 && before + lengths[i]! < want) before += lengths[i++]!;
    const share = lengths[i]! > 0 ? (want - before) / lengths[i]! : 0;
    const a = line[i]!;
    const b = line[(i + 1) % line.length]!;
    out.push({ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) });
  }
  return out;
}
