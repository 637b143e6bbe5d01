import { expect, test } from 'vitest';
import { desk } from '../../src/desk/index.js';
import { normalBelow } from '../../src/gauge/index.js';
import { type Picture, run } from '../../src/worksheet/index.js';

function pictureOf(id: string, given: Record<string, string>): Picture | undefined {
  const worksheet = desk.find((w) => w.id === id)!;
  return run(worksheet, given).find((a) => a.picture)?.picture;
}

test.each([
  'decide-limit',
  'settle-reading',
  'ring-end-gap',
  'running-clearance',
  'valve-clearance-side-valve',
  'clamp-from-torque',
  'torque-from-clamp',
  'torque-for-bolt',
])('%s draws its first example, and the mark lies on a curve', (id) => {
  const worksheet = desk.find((w) => w.id === id)!;
  const picture = pictureOf(id, worksheet.examples[0]!.given)!;
  expect(picture.says.length).toBeGreaterThan(20);
  for (const { x, y } of picture.marks ?? []) {
    const near = picture.curves[0]!.points.reduce((a, b) =>
      Math.abs(b[0] - x) < Math.abs(a[0] - x) ? b : a,
    );
    const range = Math.max(...picture.curves[0]!.points.map((p) => p[1])) || 1;
    expect(Math.abs(near[1] - y) / range).toBeLessThan(0.06);
  }
});

test('the hill of a reading stands on it, and what is outside the limit is shaded', () => {
  const picture = pictureOf('decide-limit', { value: '9', uncertainty: '2', most: '10' })!;
  expect(picture.marks).toEqual([{ x: 9, y: 1, label: 'reading' }]);
  expect(picture.bands).toEqual([{ axis: 'x', from: 10, label: 'too large' }]);
  const [points] = picture.curves.map((c) => c.points);
  const step = points![1]![0] - points![0]![0];
  const over = points!
    .filter(([x]) => x > 10 - step / 2)
    .reduce((sum, [x, y]) => sum + y * (x < 10 + step / 2 ? step / 2 : step), 0);
  expect(over / Math.sqrt(2 * Math.PI)).toBeCloseTo(normalBelow(-1), 2);
});

test('an exact comparison has no hill to draw', () => {
  expect(pictureOf('decide-limit', { value: '9', uncertainty: '0', most: '10' })).toBeUndefined();
});

test('the load line goes through nothing, and its scatter is a quarter either way', () => {
  const picture = pictureOf('torque-for-bolt', {
    thread: '5/16-18',
    grade: 'SAE 5',
    condition: 'bare-dry',
    k: '0.20',
  })!;
  const [taken, least, most] = picture.curves.map((c) => c.points.at(-1)![1]);
  expect(picture.curves[0]!.points[0]).toEqual([0, 0]);
  expect(least! / taken!).toBeCloseTo(0.75, 9);
  expect(most! / taken!).toBeCloseTo(1.25, 9);
  // 5/16-18 grade 5: 85 000 psi on 0.0524 in², the proof load where the band begins
  expect(picture.bands![0]!.from).toBeCloseTo(85_000 * 0.0524, -2);
});
