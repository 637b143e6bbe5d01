import { passSchemes } from '../../src/fasten/passes.js';
import { tighteningOrder } from '../../src/fasten/pattern.js';
import { crossByRule } from '../../src/fasten/round-pattern.js';
import { between, published, same } from '../support/published.js';

const flange = (n: number) =>
  Array.from({ length: n }, (_, i) => ({
    xMm: 80 * Math.cos((2 * Math.PI * i) / n),
    yMm: -80 * Math.sin((2 * Math.PI * i) / n),
  }));

const orders: Readonly<Record<number, readonly number[]>> = {
  4: [1, 3, 2, 4],
  8: [1, 5, 3, 7, 2, 6, 4, 8],
  12: [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12],
  16: [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16],
  20: [1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19],
};

const pcc1 = published('ASME PCC-1');

pcc1(
  'legacy cross pattern, bolts numbered clockwise; 12 and 16 compatible with diagrams seen',
  'from memory',
  () =>
    Object.entries(orders).map(([n, order]) =>
      same(`${n} bolts`, tighteningOrder(flange(Number(n))).order, order),
    ),
);

pcc1('its rule, opposite then halve the angle, gives the printed order again', 'seen', () =>
  [4, 8, 12].map((n) => {
    const angles = Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n);
    return same(
      `${n} bolts`,
      crossByRule(angles).map((place) => place + 1),
      orders[n],
    );
  }),
);

pcc1('the rule for other flanges: every second bolt is opposite the one before', 'seen', () =>
  [6, 10, 14, 18, 24].map((n) => {
    const { order } = tighteningOrder(flange(n));
    const apart = order.filter((_, i) => i % 2 === 0).map((bolt, i) => Math.abs(bolt - order[2 * i + 1]!));
    return same(`${n} bolts`, apart, Array(n / 2).fill(n / 2));
  }),
);

pcc1('Table 2: passes of 20 to 30, 50 to 70 and 100 %, then in circle', 'from memory', () => {
  const { parts, finalRound } = passSchemes.find(({ id }) => id === 'thirds')!;
  return [
    ...between('first', parts[0]!, 0.2, 0.3),
    ...between('second', parts[1]!, 0.5, 0.7),
    same('third', parts[2], 1),
    same('then in circle', finalRound, true),
  ];
});

published('public variants of the passes of a bolted flange')(
  'their parts and whether a round follows',
  'seen',
  () => {
    const byId = Object.fromEntries(
      passSchemes.map(({ id, parts, finalRound }) => [id, [...parts, finalRound]]),
    );
    return [
      same('30/60/100 with a round', byId['30-60-100'], [0.3, 0.6, 1, true]),
      same('25/50/100', byId['25-50-100'], [0.25, 0.5, 1, false]),
      same('70/100, above 30 lbf·ft', byId['70-100'], [0.7, 1, false]),
    ];
  },
);
