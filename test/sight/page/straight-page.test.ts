import { describe, expect, test } from 'vitest';
import { type Picture, pageRefusal, straightPage } from '../../../src/sight/index.js';
import { pageCorners } from '../../../src/sight/page/page-corners.js';

interface At {
  readonly x: number;
  readonly y: number;
}
type Four = readonly [At, At, At, At];

/**
 * A square page 1 × 1 seen through a pinhole: the corners from the camera's own equations, not from a plane-to-plane
 * matrix as the program has it. Turned by `turn`, leaning back by `tilt` (radians).
 */
function seenAt(
  u: number,
  v: number,
  { turn, tilt, width, height }: { turn: number; tilt: number; width: number; height: number },
): At {
  const [a, b] = [u - 0.5, v - 0.5];
  const [p, q] = [a * Math.cos(turn) - b * Math.sin(turn), a * Math.sin(turn) + b * Math.cos(turn)];
  const depth = 2.2 - q * Math.sin(tilt);
  const scale = 1.35 * Math.min(width, height);
  return { x: width / 2 + (scale * p) / depth, y: height / 2 + (scale * q * Math.cos(tilt)) / depth };
}

const view = { turn: 0.16, tilt: 0.4, width: 900, height: 700 };
const corners = [seenAt(0, 0, view), seenAt(1, 0, view), seenAt(1, 1, view), seenAt(0, 1, view)] as const;

/** Paints by asking of every pixel whether it lies inside the four corners and near a mark. */
function painted(
  four: Four,
  marks: readonly At[],
  { paper = 235, ink = 30, bench = 70, lamp = 0 } = {},
): Picture {
  const { width, height } = view;
  const data = new Uint8Array(width * height * 3);
  const inside = ({ x, y }: At) =>
    four.every((a, i) => {
      const b = four[(i + 1) % 4]!;
      return (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x) >= 0;
    });
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const at = { x: x + 0.5, y: y + 0.5 };
      const isInk = marks.some((mark) => Math.hypot(mark.x - at.x, mark.y - at.y) < 10);
      const value = inside(at) ? (isInk ? ink : paper) : bench;
      data.fill(value * (1 - (lamp * x) / width), 3 * (y * width + x), 3 * (y * width + x) + 3);
    }
  return { width, height, channels: 3, data };
}

/** The middles of the dark patches of a page laid straight, as shares of its width and height. */
function marksOn({ width, height, data }: Picture): At[] {
  const found: { x: number; y: number; n: number }[] = [];
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      if (data[4 * (y * width + x)]! > 120) continue;
      const near = found.find((f) => Math.hypot(f.x / f.n - x, f.y / f.n - y) < 60);
      if (near) [near.x, near.y, near.n] = [near.x + x, near.y + y, near.n + 1];
      else found.push({ x, y, n: 1 });
    }
  return found.filter(({ n }) => n > 100).map(({ x, y, n }) => ({ x: x / n / width, y: y / n / height }));
}

const places = [0.2, 0.5, 0.8].flatMap((v) => [0.2, 0.5, 0.8].map((u) => ({ u, v })));
const marks = places.map(({ u, v }) => seenAt(u, v, view));

describe('a page in a photograph', () => {
  test.each([
    ['a bright page on a dark bench', {}],
    ['a dark plate on a bright bench', { paper: 40, ink: 220, bench: 190 }],
    ['a dark plate with bright letters on a dark bench', { paper: 30, ink: 225, bench: 90 }],
    ['a page with the lamp to one side', { lamp: 0.45 }],
  ])('%s: its corners are found within two pixels', (_, look) => {
    const found = pageCorners(painted(corners, marks, look));
    expect(found).toBeDefined();
    for (const [i, { x, y }] of found!.entries())
      expect(Math.hypot(x - corners[i]!.x, y - corners[i]!.y)).toBeLessThan(2.9); // two steps of the coarse picture
  });

  test('rounded corners come out sharp', () => {
    const picture = painted(corners, []);
    const data = Uint8Array.from(picture.data);
    for (const { x, y } of corners)
      for (let dy = -9; dy <= 9; dy += 1)
        for (let dx = -9; dx <= 9; dx += 1)
          if (Math.abs(dx) + Math.abs(dy) < 10)
            data.fill(
              70,
              3 * (Math.round(y + dy) * 900 + Math.round(x + dx)),
              3 * (Math.round(y + dy) * 900 + Math.round(x + dx)) + 3,
            );
    const found = pageCorners({ ...picture, data })!;
    for (const [i, { x, y }] of found.entries())
      expect(Math.hypot(x - corners[i]!.x, y - corners[i]!.y)).toBeLessThan(6);
  });

  test('nothing four-sided: no corners, and the picture is evened as it is', () => {
    const plain = painted(
      [
        { x: -1, y: -1 },
        { x: 2000, y: -1 },
        { x: 2000, y: 2000 },
        { x: -1, y: 2000 },
      ],
      marks,
    );
    expect(pageCorners(plain)).toBeUndefined();
    expect(straightPage(plain).hasEdges).toBe(false);
  });

  test.each([
    ['bright', {}],
    ['in uneven light', { lamp: 0.45 }],
    ['dark with bright marks', { paper: 30, ink: 225, bench: 90 }],
  ])(
    '%s and leaning by 23°, it is laid straight: nine marks stand where they were put, within half a percent',
    (_, look) => {
      const { picture, hasEdges } = straightPage(painted(corners, marks, look));
      expect(hasEdges).toBe(true);
      const found = marksOn(picture);
      expect(found).toHaveLength(9);
      // the program looks a hair's breadth inside the edges: 0.6 % on every side
      const share = (value: number) => (value - 0.006) / 0.988;
      for (const { u, v } of places)
        expect(Math.min(...found.map(({ x, y }) => Math.hypot(x - share(u), y - share(v))))).toBeLessThan(
          0.005,
        );
    },
  );

  test('shade is taken out: the paper is as bright on the dark side as on the bright one', () => {
    const { picture } = straightPage(painted(corners, [], { lamp: 0.5 }));
    const at = (u: number) =>
      picture.data[4 * (Math.round(0.5 * picture.height) * picture.width + Math.round(u * picture.width))]!;
    expect(at(0.1)).toBeGreaterThan(235);
    expect(at(0.9)).toBeGreaterThan(235);
  });
});

describe('a page as it was read', () => {
  const line = (text: string, sure: number) => ({
    text,
    box: { x: 0, y: 0, width: 9, height: 9 },
    words: text.split(' ').map((word) => ({ text: word, sure })),
  });
  test('letters that are guessed are refused, with what to do', () => {
    expect(pageRefusal([line('MODEL 1l8', 41), line('CO0E 77', 60)], true)).toMatchObject({
      why: expect.stringContaining('cannot be read with any certainty'),
      do: expect.stringContaining('Type what stands there'),
    });
  });
  test('an empty picture is refused, and where no edges were seen that is said too', () => {
    expect(pageRefusal([line('— |', 90)], false)).toMatchObject({
      why: 'No printed letters are seen in this picture.',
      do: expect.stringContaining('all four corners'),
    });
  });
  test('what is read well is not refused, one smudged unit notwithstanding', () => {
    expect(pageRefusal([line('Cylinder head bolts 190', 95), line('in-1b', 20)], true)).toBeUndefined();
  });
});
