import { describe, expect, it } from 'vitest';
import { rpmAtTipSpeed, tipSpeed, tipSpeedLimit } from '../../src/engine/speeds.js';

describe('ANSI B71.1: 19 000 ft/min at the blade tip, read', () => {
  it('is 96.52 m/s', () => expect(tipSpeedLimit).toBeCloseTo(96.52, 9));

  it.each([
    [19, 3820],
    [20, 3629],
    [21, 3456],
    [22, 3299],
    [23, 3155],
    [24, 3024],
  ])('%d in reaches it at %d rpm (a public table)', (inches, rpm) =>
    expect(Math.abs(rpmAtTipSpeed(25.4 * inches) - rpm)).toBeLessThan(0.6),
  );

  it('21 in at 3100 rpm: 17 042 ft/min (a public page, which divides by 3.82)', () =>
    expect(Math.abs((tipSpeed(533.4, 3100) * 60) / 0.3048 - 17_042)).toBeLessThan(1.5));
});
