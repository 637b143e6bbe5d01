import { describe, expect, test } from 'vitest';
import { factorsFor } from '../../src/fasten/friction.js';

describe('Handbook of Bolts and Bolted Joints, ch. 2, Table 1', () => {
  test.each([
    ['bare-dry', 0.2],
    ['cadmium', 0.2],
    ['zinc-dry', 0.295],
  ] as const)('%s: K %f (seen)', (condition, k) => {
    const own = factorsFor(condition).rows.filter(({ source }) => source.includes('Bolted Joints'));
    expect(own.map((row) => row.k)).toEqual([k]);
  });

  test('dry zinc disagrees with the machine design table by half, and both stand with their source (seen)', () => {
    const { low, high, rows } = factorsFor('zinc-dry');
    expect(high / low).toBeGreaterThan(1.9);
    expect(new Set(rows.map(({ source }) => source)).size).toBe(3);
  });
});
