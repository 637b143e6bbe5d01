import { describe, expect, test } from 'vitest';
import { isAct, isReworded, type Touch } from '../../../src/web/parts/steady-hands.js';

const long = { appearedMs: -10_000 };
const first: Touch = { atMs: 1000, on: 'a button', x: 100, y: 100, ...long };

describe('an act', () => {
  test('is the first touch, and one after 300 ms', () => {
    expect(isAct(first, undefined)).toBe(true);
    expect(isAct({ ...first, atMs: 1300 }, first)).toBe(true);
  });

  // common practice: a contact bounces, and a finger comes down again, within a quarter of a second
  test.each([1, 60, 150, 250, 299])(
    'is not a second touch %i ms after it, there or on another button',
    (ms) => {
      expect(isAct({ ...first, atMs: 1000 + ms }, first)).toBe(false);
      expect(isAct({ ...first, atMs: 1000 + ms, on: 'another', x: 300 }, first)).toBe(false);
    },
  );

  test('is not a touch on what appeared less than 400 ms ago', () => {
    expect(isAct({ ...first, appearedMs: 601 }, undefined)).toBe(false);
    expect(isAct({ ...first, appearedMs: 600 }, undefined)).toBe(true);
  });

  test('is a tick on another line right after the first, but not on what moved under the finger', () => {
    const tick = { ...first, atMs: 1150, on: 'the line below', isField: true };
    expect(isAct({ ...tick, y: 160 }, first)).toBe(true);
    expect(isAct({ ...tick, y: 101 }, first)).toBe(false);
    expect(isAct({ ...tick, on: first.on, y: 160 }, first)).toBe(false);
  });

  test('is each touch of a counter', () => {
    expect(isAct({ ...first, atMs: 1090, isQuick: true }, first)).toBe(true);
    expect(isAct({ ...first, atMs: 1090, isQuick: true, appearedMs: 900 }, first)).toBe(false);
  });
});

describe('words on a control', () => {
  test('that become others make it another thing; a clock or a count that goes on does not', () => {
    expect(isReworded('All 3 are ordered', 'All 3 are here and match the old ones')).toBe(true);
    expect(isReworded('Next: Muffler', 'Next: Cylinder head')).toBe(true);
    expect(isReworded('4:59', '4:58')).toBe(false);
    expect(isReworded('bolt 9', 'bolt 10')).toBe(false);
    expect(isReworded(null, 'Muffler')).toBe(false);
  });
});
