import { permittedDeviationPercent } from '../../src/fasten/wrench.js';
import { fitWrench, leastUsableNm } from '../../src/fasten/wrench-fit.js';
import { published, same } from '../support/published.js';

const wrench = { tool: 'w', name: 'w', minNm: 5, maxNm: 100, accuracyPercent: 4 };

published('ISO 6789-1:2017, hand torque tools')(
  '±4 % above 10 N·m, ±6 % at or below, a manual quoting it',
  'seen',
  () => [
    same('10.5 N·m', permittedDeviationPercent('ISO 6789-1', { maxNm: 10.5 }), 4),
    same('10 N·m', permittedDeviationPercent('ISO 6789-1', { maxNm: 10 }), 6),
  ],
);

const b107 = published('ASME B107.300, torque instruments');
b107('±4 % clockwise, ±6 % counterclockwise', 'from memory', () => [
  same('clockwise', permittedDeviationPercent('ASME B107.300', { maxNm: 100 }), 4),
  same(
    'counterclockwise',
    permittedDeviationPercent('ASME B107.300', { maxNm: 100, counterclockwise: true }),
    6,
  ),
]);

b107('as ISO 6789-1, promised from 20 to 100 % of the range', 'from memory', () => [
  same('least of 100 N·m', leastUsableNm(wrench), 20),
  ...(
    [
      [19.9, false],
      [20, true],
      [100, true],
      [100.1, false],
    ] as const
  ).map(([newtonMeter, fits]) => same(`${newtonMeter} N·m`, fitWrench(newtonMeter, [wrench])[0]?.fit, fits)),
]);
