import type { Place } from '../mat/mat.js';
import type { Plate } from '../plate/read-plate.js';

/** Everything of a plate that has an edge and is no round hole, as closed lines. */
export const linesOf = ({ outline, cutouts }: Plate): readonly (readonly Place[])[] => [outline, ...cutouts];

const cell = 8;

/** The pieces of closed lines by the squares they touch, so that the nearest place on them is found without looking at all. */
export class Boundary {
  readonly #pieces: readonly (readonly [Place, Place])[];
  readonly #cells = new Map<string, number[]>();

  constructor(lines: readonly (readonly Place[])[]) {
    this.#pieces = lines.flatMap((line) =>
      line.map((from, i) => [from, line[(i + 1) % line.length]!] as const),
    );
    this.#pieces.forEach(([a, b], i) => {
      const [left, right] = [Math.min(a.x, b.x), Math.max(a.x, b.x)].map((v) => Math.floor(v / cell));
      const [low, high] = [Math.min(a.y, b.y), Math.max(a.y, b.y)].map((v) => Math.floor(v / cell));
      for (let x = left!; x <= right!; x += 1)
        for (let y = low!; y <= high!; y += 1) {
          const key = `${x} ${y}`;
          const there = this.#cells.get(key);
          if (there) there.push(i);
          else this.#cells.set(key, [i]);
        }
    });
  }

  /** The nearest place of the lines within `reach` millimetres, and how far it is. */
  nearest(place: Place, reach: number): { at: Place; far: number } | undefined {
    let best: { at: Place; far: number } | undefined;
    const far = Math.ceil(reach / cell);
    const [cx, cy] = [Math.floor(place.x / cell), Math.floor(place.y / cell)];
    for (let ring = 0; ring <= far; ring += 1) {
      // what lies in farther squares is at least so far away
      if (best && best.far <= (ring - 1) * cell) break;
      for (const i of this.#ring(cx, cy, ring)) {
        const at = nearestOn(this.#pieces[i]!, place);
        const distance = Math.hypot(at.x - place.x, at.y - place.y);
        if (distance <= reach && (!best || distance < best.far)) best = { at, far: distance };
      }
    }
    return best;
  }

  *#ring(cx: number, cy: number, ring: number): Iterable<number> {
    for (let x = cx - ring; x <= cx + ring; x += 1) {
      const rim = Math.abs(x - cx) === ring;
      for (let y = cy - ring; y <= cy + ring; y += rim ? 1 : 2 * ring || 1)
        yield* this.#cells.get(`${x} ${y}`) ?? [];
    }
  }
}

function nearestOn([a, b]: readonly [Place, Place], { x, y }: Place): Place {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / length));
  return { x: a.x + share * dx, y: a.y + share * dy };
}
