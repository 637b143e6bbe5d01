import { describe, expect, test } from 'vitest';
import { compare, type Plate } from '../../src/sight/index.js';

/**
 * Two parts laid over each other. The truth is geometry: a shape is drawn from its numbers, moved by a known pose, changed
 * in one thing by a known amount.
 */
interface Shape {
  readonly holes: readonly (readonly [x: number, y: number, d: number])[];
  /** half sides of the outline, and where a bump sticks out of its right side, by how much */
  readonly half: readonly [number, number];
  readonly bump?: { readonly y: number; readonly by: number };
}
interface Lying {
  readonly turn?: number;
  readonly x?: number;
  readonly y?: number;
  readonly over?: boolean;
}

function lying({ holes, half, bump }: Shape, { turn = 0, x = 0, y = 0, over = false }: Lying = {}): Plate {
  const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const put = (px: number, py: number) => {
    const mx = over ? -px : px;
    return { x: c * mx - s * py + x, y: s * mx + c * py + y };
  };
  const [a, b] = half;
  const right = Array.from({ length: 81 }, (_, i) => -b + (2 * b * i) / 80).map((at) => {
    const inBump = bump && Math.abs(at - bump.y) < 5 ? bump.by : 0;
    return put(a + inBump, at);
  });
  return {
    outline: [...right, put(-a, b), put(-a + 3, -b)],
    holes: holes.map(([hx, hy, d]) => ({ ...put(hx, hy), d, u: 0.08 })),
    cutouts: [],
    thickness: { mm: 1, u: 0.03 },
    hiddenBelow: 0.5,
  };
}

const gasket: Shape = {
  half: [40, 55],
  holes: [
    [-30, 45, 8.5],
    [31, 44, 8.5],
    [30, -46, 8.5],
    [-29, -45, 8.5],
    [2, 5, 50],
  ],
};
const other: Lying = { turn: 172, x: 4, y: -7 };

describe('two parts', () => {
  test('of one shape: no difference, the turn told', () => {
    const found = compare(lying(gasket), lying(gasket, other));
    expect(found).toMatchObject({ differences: [], turnedOver: false, eitherWayUp: false, turns: 1 });
    expect(found.turn).toBeCloseTo(360 - 172, 1);
  });

  test('of which one lies the other way up are one shape', () => {
    const found = compare(lying(gasket), lying(gasket, { ...other, over: true }));
    expect(found).toMatchObject({ differences: [], turnedOver: true, eitherWayUp: false });
  });

  test.each([
    ['hole moved', [[-30.35, 45.35, 8.5], ...gasket.holes.slice(1)], 0.5],
    ['hole wider', [[-30, 45, 9], ...gasket.holes.slice(1)], 0.5],
    ['hole narrower', [[-30, 45, 8], ...gasket.holes.slice(1)], 0.5],
    ['hole only in first', gasket.holes.slice(1), 8.5],
    ['hole only in second', [...gasket.holes, [20, -20, 5]], 5],
  ] as const)('%s: told, where and by how much, and nothing else', (what, holes, by) => {
    const changed: Shape = { ...gasket, holes: holes as Shape['holes'] };
    const { differences } = compare(lying(gasket), lying(changed, other));
    expect(differences).toHaveLength(1);
    expect(differences[0]!.what).toBe(what);
    expect(differences[0]!.by).toBeCloseTo(by, 1);
    const where = what === 'hole only in second' ? { x: 20, y: -20 } : { x: -30, y: 45 };
    expect(Math.hypot(differences[0]!.inFirst.x - where.x, differences[0]!.inFirst.y - where.y)).toBeLessThan(
      0.5,
    );
  });

  test('a narrow hole that the wall of the other may hide is no difference, and is said', () => {
    const lacking = lying({ ...gasket, holes: gasket.holes.slice(1) }, other);
    expect(compare(lying(gasket), { ...lacking, hiddenBelow: 9 })).toMatchObject({
      differences: [],
      maybeHidden: 1,
    });
    expect(compare(lying(gasket), lacking)).toMatchObject({ maybeHidden: 0 });
  });

  test('an edge half a millimetre off is told on both mats', () => {
    const { differences } = compare(lying(gasket), lying({ ...gasket, bump: { y: 12, by: 0.5 } }, other));
    expect(differences.map(({ what }) => what)).toEqual(['edge']);
    const [{ inFirst, inSecond, by }] = differences as [(typeof differences)[number]];
    expect(by).toBeCloseTo(0.5, 1);
    expect(inFirst.x).toBeCloseTo(40, 0);
    expect(Math.abs(inFirst.y - 12)).toBeLessThan(6);
    const back = lying({ ...gasket, holes: [[40.5, inFirst.y, 1]] }, other).holes[0]!;
    expect(Math.hypot(back.x - inSecond.x, back.y - inSecond.y)).toBeLessThan(0.6);
  });

  test('that look the same either way up, or in two turns, are said to', () => {
    const even: Shape = {
      half: [40, 55],
      holes: [
        [-30, 45, 8.5],
        [30, 45, 8.5],
        [30, -45, 8.5],
        [-30, -45, 8.5],
      ],
    };
    const straight = (shape: Shape, how?: Lying) => {
      const plate = lying(shape, how);
      // the corner that is cut in is put straight
      const square = lying({ ...shape, holes: [[-40, -55, 1]] }, how).holes[0]!;
      return { ...plate, outline: [...plate.outline.slice(0, -1), { x: square.x, y: square.y }] };
    };
    expect(compare(straight(even), straight(even, other))).toMatchObject({
      differences: [],
      turnedOver: false,
      eitherWayUp: true,
      turns: 2,
    });
  });
});
