import { generatorHz, rpmForHz } from '../../src/engine/speeds.js';
import { near, published } from '../support/published.js';

published('NEMA MG 1, synchronous speeds')('rpm by frequency and poles, and back', 'from memory', () =>
  (
    [
      [60, 2, 3600],
      [60, 4, 1800],
      [60, 6, 1200],
      [60, 8, 900],
      [60, 10, 720],
      [50, 2, 3000],
      [50, 4, 1500],
      [50, 6, 1000],
      [50, 8, 750],
      [50, 10, 600],
    ] as const
  ).flatMap(([hz, poles, rpm]) => [
    near(`${hz} Hz, ${poles} poles: rpm`, rpmForHz(hz, poles), rpm, 1e-9),
    near(`${rpm} rpm, ${poles} poles: Hz`, generatorHz(rpm, poles), hz, 1e-9),
  ]),
);
