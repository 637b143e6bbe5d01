import { fitWrench } from '../../src/fasten/wrench-fit.js';
import { published, same } from '../support/published.js';

const wrench = { tool: 'w', name: 'w', minNm: 5, maxNm: 100, accuracyPercent: 4 };

const b107 = published('ASME B107.300, torque instruments');
b107('as ISO 6789-1, promised from 20 to 100 % of the range', 'from memory', () => [
  ...(
    [
      [19.9, false],
      [20, true],
      [100, true],
      [100.1, false],
    ] as const
  ).map(([newtonMeter, fits]) => same(`${newtonMeter} N·m`, fitWrench(newtonMeter, [wrench])[0]?.fit, fits)),
]);
