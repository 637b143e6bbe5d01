import { recorded } from './engine.mjs';

const rise = (t, from, over) => Math.min(1, Math.max(0, (t - from) / over));

/** As it came in: four pulls that give nothing, a fifth that catches on choke; then it hunts and misses beats. */
export const pumpBefore = () =>
  recorded({
    seconds: 18,
    seed: 17,
    pulls: [0.8, 2.6, 4.3, 6.1, 7.8],
    runs: [
      {
        from: 8.4,
        to: 17.6,
        missing: 0.05,
        jitter: 0.012,
        rpmAt: (t) =>
          1400 + 1350 * rise(t, 8.4, 1.4) + 150 * rise(t, 9.8, 0.5) * Math.sin(2 * Math.PI * 0.9 * t),
      },
    ],
  });

/** After the work: the second pull catches; steady at top speed, a step of load at 11 s, and it comes back. */
export const pumpAfter = () =>
  recorded({
    seconds: 18,
    seed: 18,
    pulls: [0.9, 2.7],
    runs: [
      {
        from: 3.3,
        to: 17.6,
        rpmAt: (t) => {
          const droop = t < 11 ? 0 : 200 + 130 * Math.exp(-(t - 11) / 0.7) * rise(t, 11, 0.15);
          return 1400 + 1920 * rise(t, 3.3, 1.6) - droop;
        },
      },
    ],
  });
