import { describe, expect, test } from 'vitest';
import { aluminumCut, intoAluminum, neededDiameters } from '../../src/fasten/aluminum.js';
import { factorsFor } from '../../src/fasten/friction.js';
import { clampRange } from '../../src/fasten/torque.js';

const own = (condition: string) =>
  factorsFor(condition)
    .rows.filter(({ source }) => source.startsWith('IFI'))
    .map(({ k }) => k);

describe('IFI Fastener Standards, 5th ed., N-12 and N-16', () => {
  test('K 0.20 for non-plated and 0.15 for plated bolts (seen)', () => {
    expect(own('bare-dry')).toEqual([0.2]);
    expect(own('zinc-dry')).toEqual([0.15]);
  });

  test('oiled: 10 % off the torque of a non-plated bolt (seen)', () => {
    expect(own('oiled')[0]! / own('bare-dry')[0]!).toBeCloseTo(0.9, 12);
  });

  test('the preload scatters by ±25 % (seen)', () => {
    expect(clampRange(1000)).toEqual([750, 1250]);
  });

  test('into aluminum: 30 % off or more, and two diameters of thread; steel and iron 1.25 (seen)', () => {
    expect(aluminumCut).toBe(0.3);
    expect(neededDiameters).toEqual({ aluminum: 2, iron: 1.25, steel: 1.25 });
    expect(intoAluminum({ steelTorqueNm: 10, majorMm: 8 })).toEqual({ mostNm: 7, neededMm: 16 });
  });
});
