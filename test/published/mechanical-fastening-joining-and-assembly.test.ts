import { describe, expect, test } from 'vitest';
import { mmPerInch } from '../../src/fasten/thread-form.js';
import { clampForTorque, torqueForClamp } from '../../src/fasten/torque.js';

const newtonPerLbf = 4.4482216152605;
const nmPerLbfIn = newtonPerLbf * 0.0254;
const majorMm = 0.19 * mmPerInch;
const clampN = 1275 * newtonPerLbf;

describe('Mechanical Fastening, Joining, and Assembly, p. 85: d 0.190 in, 1275 lbf', () => {
  const rows = [
    [0.3, 72.7],
    [0.25, 60.6],
    [0.2, 48.5],
    [0.15, 36.3],
    [0.1, 24.2],
  ] as const;

  test.each(rows)('K %f takes %f lbf·in (seen)', (nutFactor, lbfIn) => {
    const torqueNm = torqueForClamp({ clampN, nutFactor, majorMm });
    expect(Math.abs(torqueNm / nmPerLbfIn - lbfIn)).toBeLessThan(0.06);
  });

  test.each(rows)('K %f and %f lbf·in give back 1275 lbf (seen)', (nutFactor, lbfIn) => {
    const found = clampForTorque({ torqueNm: lbfIn * nmPerLbfIn, nutFactor, majorMm });
    expect(Math.abs(found / newtonPerLbf - 1275)).toBeLessThan(1275 * (0.06 / lbfIn));
  });
});
