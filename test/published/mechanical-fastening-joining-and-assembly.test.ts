import { mmPerInch } from '../../src/fasten/thread-form.js';
import { clampForTorque, torqueForClamp } from '../../src/fasten/torque.js';
import { near, published } from '../support/published.js';

const newtonPerLbf = 4.4482216152605;
const nmPerLbfIn = newtonPerLbf * 0.0254;
const majorMm = 0.19 * mmPerInch;

published('Mechanical Fastening, Joining, and Assembly, p. 85')(
  'd 0.190 in, 1275 lbf: torque for each K, and the clamp back from it',
  'seen',
  () =>
    (
      [
        [0.3, 72.7],
        [0.25, 60.6],
        [0.2, 48.5],
        [0.15, 36.3],
        [0.1, 24.2],
      ] as const
    ).flatMap(([nutFactor, lbfIn]) => {
      const torqueNm = torqueForClamp({ clampN: 1275 * newtonPerLbf, nutFactor, majorMm });
      const clampN = clampForTorque({ torqueNm: lbfIn * nmPerLbfIn, nutFactor, majorMm });
      return [
        near(`K ${nutFactor}, lbf·in`, torqueNm / nmPerLbfIn, lbfIn, 0.06),
        near(`K ${nutFactor}, lbf`, clampN / newtonPerLbf, 1275, 1275 * (0.06 / lbfIn)),
      ];
    }),
);
