import { expect, test } from 'vitest';
import { asJointHoles, notForBolts } from '../../../src/web/mat/bolt-holes.js';

const hole = (x: number, y: number, d: number) => ({ x, y, d, u: 0.05 });
const head = [
  hole(10, 20, 8.6),
  hole(70, 20, 8.5),
  hole(40, 40, 52),
  hole(70, 80, 8.6),
  hole(10, 80, 8.7),
  hole(60, 50, 5),
];

test('a bore and a dowel hole of another size take no bolt', () => {
  expect([...notForBolts(head)]).toEqual([2, 5]);
});

test('holes lie about their middle, y upward, and are turned over where the part lay the other way up', () => {
  expect(asJointHoles(head, new Set([2, 5]), false)).toEqual([
    { xMm: -30, yMm: -30 },
    { xMm: 30, yMm: -30 },
    { xMm: 30, yMm: 30 },
    { xMm: -30, yMm: 30 },
  ]);
  expect(asJointHoles(head.slice(0, 2), new Set(), true)).toEqual([
    { xMm: 30, yMm: 0 },
    { xMm: -30, yMm: 0 },
  ]);
});

test('nothing round, nothing dropped', () => {
  expect(notForBolts([]).size).toBe(0);
  expect(asJointHoles([], new Set(), false)).toEqual([]);
});
