import { factorsFor } from '../../src/fasten/friction.js';
import { published, same } from '../support/published.js';

// dry zinc disagrees with the machine design table by half, and both stand with their source: test/fasten
published('Handbook of Bolts and Bolted Joints, ch. 2, Table 1')('K', 'seen', () =>
  (
    [
      ['bare-dry', 0.2],
      ['cadmium', 0.2],
      ['zinc-dry', 0.295],
    ] as const
  ).map(([condition, k]) => {
    const own = factorsFor(condition).rows.filter(({ source }) => source.includes('Bolted Joints'));
    return same(
      condition,
      own.map((row) => row.k),
      [k],
    );
  }),
);
