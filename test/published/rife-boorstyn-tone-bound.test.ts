/**
 * D. C. Rife and R. R. Boorstyn, “Single-tone parameter estimation from discrete-time observations”,
 * IEEE Transactions on Information Theory IT-20 (1974) 591: the Cramér–Rao bound of a tone's frequency.
 * The formula is quoted from memory; the table's figures are computed from it by hand calculator, not printed there.
 */
import { toneBoundHz } from '../../bench/listen/tone-bound.js';
import { noisyHarmonics } from '../../bench/listen/tones.js';
import { engineSpeed } from '../../src/listen/engine-speed.js';
import { between, near, published } from '../support/published.js';

const sheet = published('Rife and Boorstyn, IEEE Trans. Inf. Theory IT-20 (1974) 591');

sheet('the bound in parts of the sampling rate by samples and signal-to-noise ratio', 'calculated', () =>
  (
    [
      [256, 10, 4.2565e-5],
      [1024, 10, 5.3206e-6],
      [4096, 1, 2.1032e-6],
      [1024, 100, 1.6825e-6],
    ] as const
  ).map(([samples, ratio, bound]) =>
    near(`${samples}, ${ratio}`, toneBoundHz(1, samples, ratio), bound, 5e-4 * bound),
  ),
);

sheet(
  'no steady tone of harmonics is measured better than the bound allows, and none much worse',
  'calculated',
  () => {
    const rpm = 3000;
    const tone = (seed: number) =>
      noisyHarmonics({ hz: rpm / 120, orders: 8, seconds: 2, sampleRate: 8000, ratio: 0.5, seed });
    const squares = Array.from({ length: 12 }, (_, seed) => {
      const { sound } = tone(seed);
      return (engineSpeed(sound, { strokes: 4, cylinders: 1 }).meanRpm! - rpm) ** 2;
    });
    const error = Math.sqrt(squares.reduce((a, b) => a + b, 0) / squares.length);
    // twelve trials scatter the root mean square by about a fifth
    return between('error over bound', error / (120 * tone(0).boundHz), 0.6, 12);
  },
);
