import { describe, expect, test } from 'vitest';
import { longFormTorque, torqueParts } from '../../src/fasten/long-form.js';
import { threads } from '../../src/fasten/threads.js';

const total = ({ stretchNm, threadNm, collarNm }: ReturnType<typeof torqueParts>) =>
  stretchNm + threadNm + collarNm;

describe('NASA RP-1228 and NASA-STD-5020: T = F·[P/2π + f·rt/cos α + fc·rb]', () => {
  test.each(threads.map(({ name }) => name))(
    '%s: within 1.5 % below the screw equation up to f = 0.3 (from memory)',
    (name) => {
      const thread = threads.find((each) => each.name === name)!;
      for (const f of [0.05, 0.1, 0.15, 0.2, 0.3]) {
        const friction = { thread: f, collar: f };
        const ratio = longFormTorque(thread, 10_000, friction) / total(torqueParts(thread, 10_000, friction));
        expect(ratio).toBeGreaterThan(1);
        expect(ratio).toBeLessThan(1.015);
      }
    },
  );

  test('without friction both are the screw alone, T = F·P/2π (calculated)', () => {
    for (const thread of threads) {
      const expected = (10_000 * thread.pitchMm) / (2 * Math.PI * 1000);
      const frictionless = { thread: 0, collar: 0 };
      expect(longFormTorque(thread, 10_000, frictionless)).toBeCloseTo(expected, 9);
      expect(total(torqueParts(thread, 10_000, frictionless))).toBeCloseTo(expected, 9);
    }
  });
});
