import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  axisOver,
  type BoreView,
  boreDrawing,
  type Drawing,
  type HoleMark,
  holesDrawing,
  limitStrip,
  roomFor,
  type Shape,
  speedDrawing,
  speedSpan,
  spreadDrawing,
} from '../../src/draw/index.js';

const of = <K extends Shape['is']>({ shapes }: Drawing, is: K, look?: RegExp) =>
  shapes.filter(
    (s): s is Extract<Shape, { is: K }> => s.is === is && (look === undefined || look.test(s.look)),
  );
const wordsOf = (drawing: Drawing) => of(drawing, 'text').map((t) => t.words);
/** Every number of a path, in pairs. */
const placesOf = ({ d }: { readonly d: string }) =>
  [...d.matchAll(/(-?[\d.]+(?:e-?\d+)?) (-?[\d.]+(?:e-?\d+)?)/g)].map((m) => ({ x: +m[1]!, y: +m[2]! }));

/** What stands in a drawing stands within it, and nothing in it is no number. */
function within(drawing: Drawing, slack = 0.01): void {
  const places = drawing.shapes.flatMap((s) =>
    s.is === 'path'
      ? placesOf(s)
      : s.is === 'rect'
        ? [s, { x: s.x + s.width, y: s.y + s.height }]
        : s.is === 'circle'
          ? [
              { x: s.x - s.r, y: s.y - s.r },
              { x: s.x + s.r, y: s.y + s.r },
            ]
          : [s],
  );
  for (const { x, y } of places) {
    expect(x).toBeGreaterThanOrEqual(-slack);
    expect(x).toBeLessThanOrEqual(drawing.width + slack);
    expect(y).toBeGreaterThanOrEqual(-slack);
    expect(y).toBeLessThanOrEqual(drawing.height + slack);
  }
}

describe('an axis', () => {
  test('holds its stretch between round ends, with evenly standing ticks of 1, 2 or 5 in a decade', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        (low, length) => {
          const { at, ticks } = axisOver(low, low + length, 0, 400, 80);
          const step = ticks[1]! - ticks[0]!;
          expect(ticks[0]!).toBeLessThanOrEqual(low + 1e-9 * step);
          expect(ticks.at(-1)!).toBeGreaterThanOrEqual(low + length - 1e-6 * step);
          expect([at(ticks[0]!), at(ticks.at(-1)!)].map(Math.round)).toEqual([0, 400]);
          const figures = step / 10 ** Math.floor(Math.log10(step * 1.0001));
          expect([1, 2, 5].some((n) => Math.abs(figures - n) < 1e-3)).toBe(true);
        },
      ),
    );
  });

  test('0 to 3600 over 400 units marks each thousand', () => {
    expect(axisOver(0, 3600, 0, 400, 80).ticks).toEqual([0, 1000, 2000, 3000, 4000]);
  });
});

describe('holes', () => {
  const hole = (xMm: number, yMm: number, more: Partial<HoleMark> = {}): HoleMark => ({
    xMm,
    yMm,
    words: '1',
    state: 'open',
    ...more,
  });
  const face = [hole(0, 0), hole(100, 0), hole(100, 50), hole(0, 50)];

  test('lie in proportion, y upward, and inside the face', () => {
    const drawing = holesDrawing(face, roomFor(face, 700));
    const [a, b, c] = drawing.places;
    expect((b!.x - a!.x) / (b!.y - c!.y)).toBeCloseTo(2, 9);
    expect(a!.y).toBeGreaterThan(c!.y);
    within(drawing);
    const [edge] = of(drawing, 'rect');
    for (const { x, y } of drawing.places) {
      expect(x).toBeGreaterThan(edge!.x);
      expect(x).toBeLessThan(edge!.x + edge!.width);
      expect(y).toBeGreaterThan(edge!.y);
      expect(y).toBeLessThan(edge!.y + edge!.height);
    }
  });

  test('a single hole and a straight row stay in the middle', () => {
    const one = holesDrawing([hole(7, 9)], { ...roomFor(face, 700), width: 140, height: 88 });
    expect(one.places).toEqual([{ x: 70, y: 44 }]);
    const row = [hole(0, 3), hole(30, 3), hole(60, 3)];
    const drawing = holesDrawing(row, roomFor(row, 700));
    expect(new Set(drawing.places.map((p) => p.y)).size).toBe(1);
    expect(drawing.places[2]!.x - drawing.places[0]!.x).toBeCloseTo(0.62 * 700, 6);
  });

  test('no two touch unless they would be too small to read', () => {
    const mark = fc.record({ x: fc.integer({ min: 0, max: 99 }), y: fc.integer({ min: 0, max: 99 }) });
    fc.assert(
      fc.property(
        fc.uniqueArray(mark, { minLength: 2, maxLength: 24, selector: (p) => `${p.x} ${p.y}` }),
        (marks) => {
          const holes = marks.map((p) => hole(p.x, p.y));
          const room = roomFor(holes, 700);
          const { places, radius } = holesDrawing(holes, room);
          const gaps = places.flatMap((a, i) =>
            places.slice(i + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)),
          );
          if (radius > room.smallest) expect(2 * radius).toBeLessThan(Math.min(...gaps));
          expect(radius).toBeLessThanOrEqual(room.largest);
        },
      ),
    );
  });

  test('state is told by shape and sign, not by color alone', () => {
    const drawing = holesDrawing(
      [
        hole(0, 0, { state: 'failed', crossed: true }),
        hole(50, 0, { state: 'done', sign: '✓' }),
        hole(0, 50, { state: 'next', times: 1.45 }),
      ],
      roomFor(face, 700),
      { path: [0, 1, 2], bow: [1, 2] },
    );
    expect(of(drawing, 'path', /^cross failed$/)).toHaveLength(1);
    expect(wordsOf(drawing)).toContain('✓');
    const radius = of(drawing, 'circle').map((c) => c.r);
    expect(radius[2]! / radius[0]!).toBeCloseTo(1.45, 9);
    expect(placesOf(of(drawing, 'path', /^order$/)[0]!)).toHaveLength(3);
    expect(of(drawing, 'path', /^bow$/)).toHaveLength(1);
  });
});

describe('a bore', () => {
  const view = (growths: readonly number[], bound?: number): BoreView => ({
    standard: 65,
    bound,
    panels: ['along', 'across'].map((direction) => ({
      direction,
      walls: growths.map((growth) => ({ growth, text: String(65 + growth), height: 'top' })),
    })),
  });
  const room = { panel: 112, perRow: 2, level: 25, head: 0, foot: 0, wall: 7, reach: 11, gap: 4 };

  test('is drawn so many times too large that its greatest growth still fits beside the wall', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -0.2, max: 0.5, noNaN: true }), { minLength: 1, maxLength: 5 }),
        (growths) => {
          fc.pre(growths.some((g) => Math.abs(g) > 1e-3));
          const drawing = boreDrawing(view(growths), room);
          within(drawing);
          const half = 112 / 2 - 11 - 7 - 4;
          const drawn = Math.max(...growths.map((g) => (Math.abs(g) * drawing.times * half) / 65));
          expect(drawn).toBeLessThanOrEqual(11 + 1e-9);
          expect(drawn).toBeGreaterThan(11 / 2.01);
        },
      ),
    );
  });

  test('the wall of a wider bore stands further out, and the limit beyond the standard', () => {
    const drawing = boreDrawing(view([0.05, 0.01, 0], 0.06), room);
    const right = placesOf(of(drawing, 'path', /^metal$/)[0]!);
    expect(right[1]!.x).toBeGreaterThan(right[2]!.x);
    expect(right[2]!.x).toBeGreaterThan(right[3]!.x);
    const [standard] = of(drawing, 'path', /^standard$/);
    const [bound] = of(drawing, 'path', /^bound$/);
    expect(placesOf(bound!)[0]!.x).toBeGreaterThan(placesOf(standard!)[0]!.x);
    expect(right[3]!.x).toBeCloseTo(placesOf(standard!)[0]!.x, 1);
  });

  test('names every diameter and height, and directions where there is room', () => {
    const said = wordsOf(boreDrawing(view([0.05]), { ...room, head: 30 }));
    expect(said).toEqual(['along', '65.05', 'top', 'across', '65.05', 'top']);
    expect(wordsOf(boreDrawing(view([0.05]), room))).not.toContain('along');
  });

  test('directions that do not fit in one row go on in the next', () => {
    const one = boreDrawing(view([0.05]), room);
    const two = boreDrawing(view([0.05]), { ...room, perRow: 1 });
    expect([two.width, two.height]).toEqual([one.width / 2, one.height * 2]);
    within(two);
  });
});

describe('speed over time', () => {
  const track = [0, 1, 2, 3, 9, 10, 11].map((t) => ({ t, rpm: 3000 + 10 * t, u: 5 }));
  const view = { seconds: 12, track, segments: [{ from: 0, to: 3 }], marks: [{ t: 9, what: 'load on' }] };

  test('a gap in what was heard is a gap in the curve', () => {
    const drawing = speedDrawing(view, speedSpan([track])!, 600, '');
    const curves = of(drawing, 'path', /^curve$/).map((c) => placesOf(c).length);
    expect(curves).toEqual([4, 3]);
    expect(of(drawing, 'path', /^doubt$/)).toHaveLength(2);
    within(drawing);
  });

  test('names the marks, the most allowed and the scale', () => {
    const span = speedSpan([track], 3400)!;
    const said = wordsOf(speedDrawing({ ...view, mostRpm: 3400 }, span, 600, ''));
    expect(said).toEqual(expect.arrayContaining(['load on', 'at most 3400', 'rpm', '3200', '2 s']));
  });

  test('a span holds every speed and the most allowed; none without a speed', () => {
    const span = speedSpan([track], 3600)!;
    expect(span.low).toBeLessThan(3000);
    expect(span.high).toBeGreaterThan(3600);
    expect(speedSpan([[]])).toBeUndefined();
  });
});

describe('a reading against its limits', () => {
  test('stands between, before or behind the allowed stretch as its figures do', () => {
    const bound = (at: number) => ({ at, words: `${at} mm` });
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        (value, reach) => {
          const drawing = limitStrip({ value, reach, min: bound(2), max: bound(4) }, 400);
          within(drawing, 6);
          const [allowed] = of(drawing, 'rect');
          const [at] = of(drawing, 'circle');
          expect(at!.x > allowed!.x).toBe(value > 2);
          expect(at!.x < allowed!.x + allowed!.width).toBe(value < 4);
        },
      ),
    );
  });

  test('without a limit on one side the stretch reaches the edge', () => {
    const drawing = limitStrip({ value: 3, reach: 0.1, max: { at: 4, words: '4 mm' } }, 400);
    expect(of(drawing, 'rect')[0]!.x).toBe(8);
    expect(wordsOf(drawing)).toEqual(['4 mm']);
  });
});

describe('the spread of cost', () => {
  const cost = { p05: 60, p25: 100, p50: 150, p75: 200, p95: 300 };
  const money = (amount: number) => `$${amount}`;

  test('shows twenty machines: a dot for each that is made right, a cross for each that is scrap', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 900 }), { maxLength: 20 }), (costs) => {
        const ofTwenty = costs.toSorted((a, b) => a - b);
        const drawing = spreadDrawing({ ofTwenty, cost, good: 200, marks: [] }, 600, money, '');
        within(drawing, 10);
        expect(of(drawing, 'circle')).toHaveLength(ofTwenty.length);
        expect(of(drawing, 'circle', /over/)).toHaveLength(ofTwenty.filter((c) => c > 200).length);
        expect(of(drawing, 'path', /^scrap$/)).toHaveLength(20 - ofTwenty.length);
      }),
    );
  });

  test('the words of a mark stand beside its line, on the side that has room', () => {
    const marks = [
      { amount: 20, words: 'low', look: 'value' },
      { amount: 290, words: 'high', look: 'stop' },
    ];
    const drawing = spreadDrawing({ ofTwenty: [100], cost, marks }, 600, money, '');
    const words = of(drawing, 'text', /^mark-words$/).map(({ words, anchor }) => [words, anchor]);
    expect(words).toEqual([
      ['high', 'end'],
      ['low', 'start'],
    ]);
  });
});
