/**
 * D. C. Rife and R. R. Boorstyn, “Single-tone parameter estimation from discrete-time observations”,
 * IEEE Transactions on Information Theory IT-20 (1974) 591: the Cramér–Rao bound of a tone's frequency.
 * The formula is quoted from memory; the table's figures are computed from it by hand calculator, not printed there.
 */
import { describe, expect, test } from 'vitest';
import { toneBoundHz } from '../../bench/listen/tone-bound.js';
import { noisyHarmonics } from '../../bench/listen/tones.js';
import { engineSpeed } from '../../src/listen/engine-speed.js';

describe('Rife and Boorstyn, IEEE Trans. Inf. Theory IT-20 (1974) 591 (from memory)', () => {
  test.each([
    [256, 10, 4.2565e-5],
    [1024, 10, 5.3206e-6],
    [4096, 1, 2.1032e-6],
    [1024, 100, 1.6825e-6],
  ])(
    '%i samples at a signal-to-noise ratio of %d bound the frequency to %d of the sampling rate (computed)',
    (samples, ratio, expected) => {
      expect(toneBoundHz(1, samples, ratio) / expected).toBeCloseTo(1, 3);
    },
  );

  test('no steady tone of harmonics is measured better than the bound allows, and none much worse', () => {
    const rpm = 3000;
    const squares = Array.from({ length: 12 }, (_, seed) => {
      const { sound } = noisyHarmonics({
        hz: rpm / 120,
        orders: 8,
        seconds: 2,
        sampleRate: 8000,
        ratio: 0.5,
        seed,
      });
      return (engineSpeed(sound, { strokes: 4, cylinders: 1 }).meanRpm! - rpm) ** 2;
    });
    const error = Math.sqrt(squares.reduce((a, b) => a + b, 0) / squares.length);
    const { boundHz } = noisyHarmonics({
      hz: rpm / 120,
      orders: 8,
      seconds: 2,
      sampleRate: 8000,
      ratio: 0.5,
      seed: 0,
    });
    const ratio = error / (120 * boundHz);
    // twelve trials scatter the root mean square by about a fifth
    expect(ratio).toBeGreaterThan(0.6);
    expect(ratio).toBeLessThan(12);
  });
});
