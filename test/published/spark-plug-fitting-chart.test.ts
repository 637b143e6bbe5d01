import { describe, expect, test } from 'vitest';
import { plugTorque, smallEngine14mm } from '../../src/fasten/spark-plug.js';
import { threads } from '../../src/fasten/threads.js';

const nmPerFtLb = 1.35581794833;
const named = (name: string) => threads.find((each) => each.name === name)!;

describe("a spark plug maker's fitting chart, printed in lbf·ft", () => {
  // the chart converts round N·m values with 7.2 for ten: half a percent of slack
  test.each([
    ['M18×1.5', 'new gasket', 'iron', 25.3, 32.5],
    ['M18×1.5', 'new gasket', 'aluminum', 25.3, 32.5],
    ['M14×1.25', 'new gasket', 'iron', 18, 25.3],
    ['M14×1.25', 'new gasket', 'aluminum', 18, 21.6],
    ['M12×1.25', 'new gasket', 'iron', 10.8, 18],
    ['M12×1.25', 'new gasket', 'aluminum', 10.8, 14.5],
    ['M10×1', 'new gasket', 'iron', 7.2, 10.8],
    ['M10×1', 'new gasket', 'aluminum', 7.2, 8.7],
    ['M18×1.5', 'conical', 'iron', 14.5, 21.6],
    ['M18×1.5', 'conical', 'aluminum', 14.5, 21.6],
    ['M14×1.25', 'conical', 'iron', 10.8, 18],
    ['M14×1.25', 'conical', 'aluminum', 7.2, 14.5],
  ] as const)('%s, %s, %s: %f to %f (seen)', (thread, seat, head, low, high) => {
    const found = plugTorque(named(thread), seat, head);
    expect(Math.abs(found.lowNm / nmPerFtLb / low - 1)).toBeLessThan(0.03);
    expect(Math.abs(found.highNm / nmPerFtLb / high - 1)).toBeLessThan(0.03);
  });
});

describe('small-engine manuals on the 14 mm plug', () => {
  test('180 lbf·in is 20.3 N·m; manuals range from 95 to 264 lbf·in (seen)', () => {
    const inLb = (nm: number) => nm / (nmPerFtLb / 12);
    expect(inLb(smallEngine14mm.usualNm)).toBeCloseTo(180, 0);
    expect(inLb(smallEngine14mm.lowNm)).toBeCloseTo(95, 0);
    expect(inLb(smallEngine14mm.highNm)).toBeCloseTo(264, 0);
  });

  test('new gasket ½ turn, used ⅛ to ¼; conical 1/16 (seen)', () => {
    const turns = (seat: 'new gasket' | 'used gasket' | 'conical') => {
      const { low, high } = plugTorque(named('M14×1.25'), seat, 'iron').turns;
      return [low, high];
    };
    expect(turns('new gasket')).toEqual([0.5, 0.5]);
    expect(turns('used gasket')).toEqual([0.125, 0.25]);
    expect(turns('conical')).toEqual([0.0625, 0.0625]);
  });
});
