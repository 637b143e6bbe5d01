import { decide } from '../../src/gauge/decide.js';
import { normalBelow } from '../../src/gauge/normal.js';
import { near, published, same } from '../support/published.js';

const jcgm106 = published('JCGM 106:2012, conformity assessment');

jcgm106('probability of conformity', 'from memory, recomputed', () => {
  const conforming = (measured: Parameters<typeof decide>[0]) => decide(measured).probabilityOfConformity;
  return [
    near(
      'breakdown voltage of a Zener diode, Φ(1.40)',
      conforming({ value: -5.47, u: 0.05, limit: { max: -5.4 } }),
      0.92,
      0.005,
    ),
    near(
      'bursting strength of a container',
      conforming({ value: 509.7, u: 8.6, limit: { min: 490 } }),
      0.99,
      0.005,
    ),
    near(
      'kinematic viscosity of an SAE 40 oil, Φ(1.5) − Φ(−0.6)',
      conforming({ value: 13.6, u: 1.8, limit: { min: 12.5, max: 16.3 } }),
      0.66,
      0.005,
    ),
  ];
});

jcgm106(
  'a guard band of 2u leaves a specific consumer’s risk of at most 2.28 %',
  'from memory, recomputed',
  () => [
    near(
      '%',
      100 * (1 - decide({ value: 8, u: 1, limit: { max: 10 } }).probabilityOfConformity),
      2.28,
      0.005,
    ),
  ],
);

published('ISO 14253-1:2017, conformance at 95 %')(
  'the guard band of a one-sided limit is 1.65 u',
  'from memory',
  () =>
    (
      [
        [1.65, 'pass'],
        [1.64, 'cannot-decide'],
        [-1.64, 'cannot-decide'],
        [-1.65, 'fail'],
      ] as const
    ).map(([distance, verdict]) =>
      same(
        `${distance} u inside`,
        decide({ value: 10 - distance, u: 1, limit: { max: 10 } }).verdict,
        verdict,
      ),
    ),
);

/** Φ(z) for z in tenths from 0 to 3.0. */
const phi = [
  0.5, 0.5398, 0.5793, 0.6179, 0.6554, 0.6915, 0.7257, 0.758, 0.7881, 0.8159, 0.8413, 0.8643, 0.8849, 0.9032,
  0.9192, 0.9332, 0.9452, 0.9554, 0.9641, 0.9713, 0.9772, 0.9821, 0.9861, 0.9893, 0.9918, 0.9938, 0.9953,
  0.9965, 0.9974, 0.9981, 0.9987,
];
published('Handbook of Mathematical Functions, Table 26.1')(
  'the normal distribution in tenths, four places',
  'from memory',
  () => phi.map((p, i) => near(`Φ(${i / 10})`, normalBelow(i / 10), p, 5.1e-5)),
);
