import { describe, expect, test } from 'vitest';
import type { Place } from '../../src/sight/index.js';
import type { EdgePoint } from '../../src/sight/plate/edge.js';
import { outlineOf } from '../../src/sight/plate/outline.js';

/**
 * A part 2.4 mm high with a notch of 30° in its right side, as a camera 260 mm above the mat sees it. Where each upper
 * rim and each foot is seen is worked out by similar triangles; of a wall that faces away the upper rim is what is seen,
 * and it hides whatever of the other side lies under it.
 */
const height = 2.4;
const eye = { x: -70, y: -60, z: 260 };
const tip = { x: 12, y: 0 };
const notch = (15 * Math.PI) / 180;
const mouth = { x: 30, half: 18 * Math.tan(notch) };
const corners: readonly Place[] = [
  { x: -20, y: -25 },
  { x: 30, y: -25 },
  { x: mouth.x, y: -mouth.half },
  tip,
  { x: mouth.x, y: mouth.half },
  { x: 30, y: 25 },
  { x: -20, y: 25 },
];

const farFrom = (place: Place): number =>
  Math.min(
    ...corners.map((a, i) => {
      const b = corners[(i + 1) % corners.length]!;
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const t = ((place.x - a.x) * dx + (place.y - a.y) * dy) / (dx * dx + dy * dy);
      const s = Math.min(1, Math.max(0, t));
      return Math.hypot(place.x - a.x - s * dx, place.y - a.y - s * dy);
    }),
  );

/** The places along one side, each where it is seen. */
function sideSeen(a: Place, b: Place): EdgePoint[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [nx, ny] = [(b.y - a.y) / length, -(b.x - a.x) / length];
  const count = Math.round(length / 0.35);
  return Array.from({ length: count }, (_, i) => {
    const t = (i + 0.5) / count;
    const at = { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
    const rim = nx * (at.x - eye.x) + ny * (at.y - eye.y) > 0 ? 'top' : 'foot';
    // the ray from the eye through the upper rim meets the mat further out
    const far = rim === 'top' ? eye.z / (eye.z - height) : 1;
    const seen = { x: eye.x + far * (at.x - eye.x), y: eye.y + far * (at.y - eye.y) };
    return { ...seen, nx, ny, rim, paper: 1, material: 0, clean: true };
  });
}

describe('the outline of a part with a deep inner corner', () => {
  const sides = corners.map((a, i) => sideSeen(a, corners[(i + 1) % corners.length]!));
  // on the mat the notch's upper rim (its side 2) lies over the foot of its side 3 wherever that foot is beyond it
  const [below, above] = [sides[2]!, sides[3]!];
  const [p, q] = [below[0]!, below.at(-1)!];
  const isHidden = ({ x, y }: Place) => (q.x - p.x) * (y - p.y) - (q.y - p.y) * (x - p.x) > 0;
  const [r, s] = [above[0]!, above.at(-1)!];
  const isPast = ({ x, y }: Place) => (s.x - r.x) * (y - r.y) - (s.y - r.y) * (x - r.x) > 0;
  const seen = [
    ...sides.slice(0, 2).flat(),
    ...below.filter((place) => !isPast(place)),
    ...above.filter((place) => !isHidden(place)),
    ...sides.slice(4).flat(),
  ];

  test('one side of it hides a piece of the other', () => {
    expect([below[0]!.rim, above[0]!.rim].toSorted()).toEqual(['foot', 'top']);
    expect(seen.length).toBeLessThan(sides.flat().length);
  });

  test('runs into the corner, not across it', () => {
    const outline = outlineOf(seen, eye, height);
    for (const [i, a] of outline.entries()) {
      const b = outline[(i + 1) % outline.length]!;
      for (let t = 0; t < 1; t += 0.02) {
        const at = { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
        if (Math.hypot(at.x - tip.x, at.y - tip.y) < 8) expect(farFrom(at)).toBeLessThan(0.15);
      }
    }
    expect(Math.min(...outline.map(({ x, y }) => Math.hypot(x - tip.x, y - tip.y)))).toBeLessThan(0.25);
  });
});
