import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inchDrills, nearestDrill, nextDrillUp } from '../../src/fasten/drills.js';
import { percentOfThread, tapDrill, tapHoleMm } from '../../src/fasten/tap-drill.js';
import { nutBoreLimits } from '../../src/fasten/thread-limits.js';
import { threads } from '../../src/fasten/threads.js';
import { insertDrill, insertThreadMm } from '../../src/fasten/wire-insert.js';

const seed = { seed: 20_240_601 };

describe('tap drills', () => {
  test('the hole for a percentage leaves that percentage', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...threads),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (thread, percent) => {
          expect(percentOfThread(thread, tapHoleMm(thread, percent))).toBeCloseTo(percent, 6);
        },
      ),
      seed,
    );
  });

  test('the basic bore leaves 83 % of thread', () => {
    expect(percentOfThread(threads[0]!, nutBoreLimits(threads[0]!).leastMm)).toBeCloseTo(83.33, 2);
  });

  test('no other drill of the set is nearer than the nearest', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.1, max: 19, noNaN: true }), (holeMm) => {
        const off = Math.abs(nearestDrill(holeMm, 'inch').diameterMm - holeMm);
        expect(inchDrills.every(({ diameterMm }) => Math.abs(diameterMm - holeMm) >= off)).toBe(true);
      }),
      seed,
    );
  });

  test('the percentage said is that of the drill named, not of the hole asked for', () => {
    const { inch } = tapDrill(threads.find(({ name }) => name === '1/4-28')!);
    expect(inch.drill.name).toBe('#3');
    expect(inch.percent).toBeCloseTo(79.8, 1);
  });

  test.each([0, -5, 101, Number.NaN])('%f percent of thread is refused, naming the field', (percent) => {
    expect(() => tapDrill(threads[0]!, percent)).toThrow(expect.objectContaining({ field: 'percent' }));
  });

  test('an insert drill never undercuts the insert thread and stays within its class 2B bore', () => {
    for (const thread of threads) {
      const over = insertDrill(thread)!.diameterMm - insertThreadMm(thread).minorMm;
      const { leastMm, mostMm } = nutBoreLimits(thread);
      expect(over, thread.name).toBeGreaterThan(0);
      expect(over, thread.name).toBeLessThan(mostMm - leastMm);
    }
  });

  test('above the largest drill there is none', () => {
    expect(nextDrillUp(25.5, 'inch')).toBeUndefined();
    expect(nextDrillUp(8.271, 'metric')?.name).toBe('8.3 mm');
  });
});
