import { filmMinutesLeft } from '../../src/job/index.js';
import { near, published } from '../support/published.js';

// AVCHD camcorders' handbooks print the time that an empty card holds in each mode; a tenth is left for the formatted
// size, and for a rate that is a mean (a mode's own printed times go from 5 % under to 5 % over the bare quotient)
published('AVCHD camera handbooks, recording times on a card')(
  'minutes on 16 and 32 GB at the mode’s rate',
  'from memory',
  () =>
    (
      [
        [16, 28, 80],
        [16, 24, 90],
        [16, 17, 120],
        [16, 13, 160],
        [16, 9, 240],
        [32, 28, 160],
        [32, 24, 180],
        [32, 17, 240],
      ] as const
    ).map(([gb, rate, minutes]) =>
      near(`${gb} GB, ${rate} Mb/s`, filmMinutesLeft(gb, rate)!, minutes, 0.1 * minutes),
    ),
);
