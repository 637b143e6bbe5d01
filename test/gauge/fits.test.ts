import { describe, expect, it } from 'vitest';
import {
  atReference,
  chooseThickness,
  clearance,
  clearanceFromWobble,
  hotClearance,
} from '../../src/gauge/index.js';

describe('a clearance', () => {
  it('is hole less shaft, its uncertainty the root of both squared', () => {
    const found = clearance({ hole: 2.564, shaft: 2.558, uHole: 0.0003, uShaft: 0.0004 });
    expect(found.clearance).toBeCloseTo(0.006, 12);
    expect(found.u).toBeCloseTo(0.0005, 12);
    expect(found).not.toHaveProperty('decision');
  });

  it('may be negative, and then fails a minimum', () => {
    const tight = clearance({ hole: 1, shaft: 1.001, uHole: 0.0001, uShaft: 0.0001, limit: { min: 0.001 } });
    expect(tight.clearance).toBeCloseTo(-0.001, 12);
    expect(tight.decision?.verdict).toBe('fail');
  });

  it('refuses a hole of nothing', () =>
    expect(() => clearance({ hole: 0, shaft: 1, uHole: 0, uShaft: 0 })).toThrow('hole'));

  it('from wobble is the rock itself at the mouth of the guide, and less farther out', () => {
    expect(clearanceFromWobble(0.25, 0, 40)).toBe(0.25);
    expect(clearanceFromWobble(0.25, 20, 40)).toBeCloseTo(0.125, 12);
    expect(() => clearanceFromWobble(0.25, 20, 0)).toThrow('guide');
  });
});

describe('end play', () => {
  const gasket = {
    measured: 0.001,
    u: 0.00025,
    fitted: 0.015,
    offered: [0.005, 0.009, 0.015, 0.02],
    kind: 'gasket' as const,
    limit: { min: 0.002, max: 0.008 },
    unit: 'in',
  };

  it('opens by as much as the gasket gets thicker', () => {
    const { choice, now } = chooseThickness(gasket);
    expect(now.verdict).toBe('fail');
    expect(choice?.stack).toEqual([0.02]);
    expect(choice?.play).toBeCloseTo(0.006, 12);
  });

  it('closes by as much as shims are added, in stacks', () => {
    const shim = { ...gasket, measured: 0.019, fitted: 0, kind: 'shim' as const, offered: [0.007, 0.015] };
    const { choice, choices } = chooseThickness(shim);
    expect(choice?.stack).toEqual([0.007, 0.007]);
    expect(choice?.play).toBeCloseTo(0.005, 12);
    expect(choices.map(({ stack }) => stack.length)).toContain(3);
    expect(chooseThickness({ ...shim, atMost: 1 }).choices).toHaveLength(3);
  });

  it('gaskets are never stacked', () => {
    for (const { stack } of chooseThickness(gasket).choices) expect(stack).toHaveLength(1);
  });

  it('right as it stands is left alone', () => {
    expect(chooseThickness({ ...gasket, measured: 0.005 }).words).toContain('change nothing');
  });

  it('beyond every thickness has no choice, and says what to look for', () => {
    const hopeless = chooseThickness({ ...gasket, measured: 0.05 });
    expect(hopeless).not.toHaveProperty('choice');
    expect(hopeless.words).toContain('wear or a wrong part');
  });

  it('the doubt of a crushed gasket lowers the chance', () => {
    const chance = (uThickness: number) =>
      chooseThickness({ ...gasket, uThickness }).choice!.decision.probabilityOfConformity;
    expect(chance(0.002)).toBeLessThan(chance(0.0002));
  });

  it('refuses no thickness, a thickness of nothing and too high a stack', () => {
    expect(() => chooseThickness({ ...gasket, offered: [] })).toThrow('No thickness');
    expect(() => chooseThickness({ ...gasket, offered: [0] })).toThrow('above 0');
    expect(() => chooseThickness({ ...gasket, kind: 'shim', atMost: 9 })).toThrow('1 to 4 shims');
  });
});

describe('temperature', () => {
  it('changes nothing when part and tool are one material at one temperature', () => {
    for (const partC of [-10, 20, 45])
      expect(atReference({ read: 25, part: 'steel', partC }).size).toBeCloseTo(25, 12);
  });

  it('makes a warm aluminum part read large and a cold one small', () => {
    expect(atReference({ read: 65, part: 'aluminum', partC: 30 }).correction).toBeCloseTo(-0.0065, 4);
    expect(atReference({ read: 65, part: 'aluminum', partC: 10 }).correction).toBeGreaterThan(0);
  });

  it('a cold tool reads a part at 20 °C large', () => {
    expect(atReference({ read: 65, part: 'cast iron', partC: 20, toolC: 0 }).correction).toBeCloseTo(
      65 * -230e-6,
      6,
    );
  });

  it('one alloy leaves only the doubt of the two temperatures, two alloys that of their coefficients too', () => {
    const same = atReference({ read: 100, part: 'steel', partC: 40 }).u;
    expect(same).toBeCloseTo((100 * 11.5e-6 * Math.SQRT2) / Math.sqrt(3), 12);
    const mixed = atReference({ read: 100, part: 'aluminum', partC: 40 }).u;
    expect(mixed).toBeCloseTo(
      (100 * Math.hypot(2.1e-6 * 20, 1e-6 * 20, 21.5e-6, 11.5e-6)) / Math.sqrt(3),
      12,
    );
  });

  it('is refused where the coefficients do not hold', () => {
    expect(() => atReference({ read: 65, part: 'aluminum', partC: 150 })).toThrow('from −20 to 60');
    expect(() => atReference({ read: 65, part: 'aluminum', partC: Number.NaN })).toThrow('partC');
  });

  it('hot, an aluminum piston loses clearance in iron and gains none in aluminum of its own heat', () => {
    const iron = hotClearance(
      { size: 65, material: 'cast iron', hotC: 150 },
      { size: 64.9, material: 'aluminum', hotC: 200 },
    );
    expect(iron.clearance).toBeCloseTo(65 * (1 + 11.4e-6 * 130) - 64.9 * (1 + 21.5e-6 * 180), 9);
    const same = hotClearance(
      { size: 65, material: 'aluminum', hotC: 120 },
      { size: 64.9, material: 'aluminum', hotC: 120 },
    );
    expect(same.clearance).toBeCloseTo(0.1 * (1 + 21.5e-6 * 100), 9);
    expect(
      hotClearance({ size: 65, material: 'steel', hotC: 20 }, { size: 64.9, material: 'aluminum', hotC: 20 }),
    ).toMatchObject({ u: 0 });
  });
});
