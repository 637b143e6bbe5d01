import { describe, expect, test } from 'vitest';
import { type Condition, conditions, factorsFor } from '../../src/fasten/friction.js';
import { longFormTorque, torqueParts } from '../../src/fasten/long-form.js';
import { threads } from '../../src/fasten/threads.js';

describe('nut factors', () => {
  test('every condition has a figure of the machine design table beside those of other sources', () => {
    for (const condition of Object.keys(conditions) as Condition[]) {
      expect(factorsFor(condition).rows.some(({ source }) => source.includes('Table 8-15'))).toBe(true);
    }
  });

  test('dry zinc disagrees by half between two handbooks, and both stand with their source', () => {
    const { low, high, rows } = factorsFor('zinc-dry');
    expect(high / low).toBeGreaterThan(1.9);
    expect(new Set(rows.map(({ source }) => source)).size).toBe(3);
  });
});

describe('the sum of stretch, thread and collar beside the screw equation', () => {
  const total = ({ stretchNm, threadNm, collarNm }: ReturnType<typeof torqueParts>) =>
    stretchNm + threadNm + collarNm;

  test.each(threads)('$name: within 1.5 % below it up to f = 0.3', (thread) => {
    for (const f of [0.05, 0.1, 0.15, 0.2, 0.3]) {
      const friction = { thread: f, collar: f };
      const ratio = longFormTorque(thread, 10_000, friction) / total(torqueParts(thread, 10_000, friction));
      expect(ratio).toBeGreaterThan(1);
      expect(ratio).toBeLessThan(1.015);
    }
  });

  test('without friction both are the screw alone, T = F·P/2π', () => {
    const frictionless = { thread: 0, collar: 0 };
    for (const thread of threads) {
      const screwNm = (10_000 * thread.pitchMm) / (2 * Math.PI * 1000);
      expect(longFormTorque(thread, 10_000, frictionless)).toBeCloseTo(screwNm, 9);
      expect(total(torqueParts(thread, 10_000, frictionless))).toBeCloseTo(screwNm, 9);
    }
  });
});
