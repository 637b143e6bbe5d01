import { expect, test } from 'vitest';
import { type Count, countedFromMat } from '../../../../src/web/sheets/teardown/counter.js';

const line = (what: string, count: number): Count => ({ what, count, size: 'M6', length: '', hole: '' });

test('bolts counted from a photograph take the place of bolts and screws, and lose no nut that was counted by hand', () => {
  const by = [line('bolt', 4), line('Torx screw', 0), line('nut', 2), line('clip', 0)];
  const seen = [
    { count: 3, size: '6.0 mm', length: '25.1 mm' },
    { count: 1, size: '6.0 mm', length: '40.0 mm' },
  ];
  expect(countedFromMat(by, seen)).toEqual([
    line('nut', 2),
    line('clip', 0),
    { ...seen[0], what: 'bolt', hole: '' },
    { ...seen[1], what: 'bolt', hole: '' },
  ]);
});
