import { describe, expect, it } from 'vitest';
import { expansions } from '../../src/gauge/index.js';

describe('Fundamentals of Materials Science and Engineering, 3rd ed., table B.6, read', () => {
  const printed = {
    'cast iron': 11.4, // gray iron G3000
    aluminum: 21.5, // 356.0
    bronze: 18.0, // C93200
    magnesium: 26.0, // AZ91D
  } as const;
  for (const [material, perK] of Object.entries(printed))
    it(`${material}: ${perK} per million and kelvin`, () =>
      expect(expansions[material as keyof typeof printed].perK).toBeCloseTo(perK * 1e-6, 12));

  it('steel lies between 1040 (11.3) and 1020 (11.7); JCGM 100:2008, H.1 has 11.5', () => {
    expect(expansions.steel.perK).toBeCloseTo(11.5e-6, 12);
    expect(Math.abs(expansions.steel.perK - 11.3e-6)).toBeLessThanOrEqual(expansions.steel.half);
    expect(Math.abs(expansions.steel.perK - 11.7e-6)).toBeLessThanOrEqual(expansions.steel.half);
  });

  it('wrought aluminum 6061 (23.6) is inside what an unknown aluminum may be', () =>
    expect(23.6e-6 - expansions.aluminum.perK).toBeLessThanOrEqual(expansions.aluminum.half + 1e-12));
});
