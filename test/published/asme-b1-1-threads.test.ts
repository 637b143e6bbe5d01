import { describe, expect, test } from 'vitest';
import {
  minorExternalMm,
  minorInternalMm,
  mmPerInch,
  pitchDiameterMm,
  stressAreaMm2,
} from '../../src/fasten/thread-form.js';
import { boltDiameterLimits, nutBoreLimits } from '../../src/fasten/thread-limits.js';
import { threads } from '../../src/fasten/threads.js';

/** ASME B1.1, Unified inch screw threads: public tables quoted from it. Tolerance: half of the last printed digit. */
const named = (name: string) => {
  const thread = threads.find((each) => each.name === name);
  if (!thread) throw new Error(`${name} is not listed`);
  return thread;
};
const inches = (mm: number) => mm / mmPerInch;
const fourPlaces = 0.000_051;
/** The UNR column is printed from rounded pitch diameters and pitches, so its last digit may be one off. */
const oneUnit = 0.000_11;

const coarse = [
  // name, pitch diameter E, minor of the hole D1, older external minor, UNR external minor
  ['#4-40', 0.0958, 0.0849, 0.0813, 0.0822],
  ['#5-40', 0.1088, 0.0979, 0.0943, 0.0952],
  ['#6-32', 0.1177, 0.1042, 0.0997, 0.1008],
  ['#8-32', 0.1437, 0.1302, 0.1257, 0.1268],
  ['#10-24', 0.1629, 0.1449, 0.1389, 0.1404],
  ['#12-24', 0.1889, 0.1709, 0.1649, 0.1664],
  ['1/4-20', 0.2175, 0.1959, 0.1887, 0.1905],
  ['5/16-18', 0.2764, 0.2524, 0.2443, 0.2464],
  ['3/8-16', 0.3344, 0.3073, 0.2983, 0.3005],
  ['7/16-14', 0.3911, 0.3602, 0.3499, 0.3525],
  ['1/2-13', 0.45, 0.4167, 0.4056, 0.4084],
] as const;

const fine = [
  // name, E, D1, UNR external minor, tensile stress area
  ['#4-48', 0.0985, 0.0894, 0.0871, 0.00661],
  ['#5-44', 0.1102, 0.1004, 0.0979, 0.0083],
  ['#6-40', 0.1218, 0.1109, 0.1082, 0.01015],
  ['#8-36', 0.146, 0.1339, 0.1309, 0.01474],
  ['#10-32', 0.1697, 0.1562, 0.1528, 0.02],
  ['#12-28', 0.1928, 0.1773, 0.1734, 0.0258],
  ['1/4-28', 0.2268, 0.2113, 0.2074, 0.0364],
  ['5/16-24', 0.2854, 0.2674, 0.2629, 0.058],
  ['3/8-24', 0.3479, 0.3299, 0.3254, 0.0878],
  ['7/16-20', 0.405, 0.3834, 0.378, 0.1187],
  ['1/2-20', 0.4675, 0.4459, 0.4405, 0.1599],
] as const;

describe('ASME B1.1: Unified threads', () => {
  test.each(coarse)('%s UNC: basic diameters (seen)', (name, pitchIn, holeIn, olderIn, unrIn) => {
    const thread = named(name);
    expect(Math.abs(inches(pitchDiameterMm(thread)) - pitchIn)).toBeLessThan(fourPlaces);
    expect(Math.abs(inches(minorInternalMm(thread)) - holeIn)).toBeLessThan(fourPlaces);
    expect(Math.abs(inches(minorExternalMm(thread, 'older')) - olderIn)).toBeLessThan(fourPlaces);
    expect(Math.abs(inches(minorExternalMm(thread, 'unr')) - unrIn)).toBeLessThan(oneUnit);
  });

  test.each(fine)('%s UNF: basic diameters (seen)', (name, pitchIn, holeIn, unrIn) => {
    const thread = named(name);
    expect(Math.abs(inches(pitchDiameterMm(thread)) - pitchIn)).toBeLessThan(fourPlaces);
    expect(Math.abs(inches(minorInternalMm(thread)) - holeIn)).toBeLessThan(fourPlaces);
    expect(Math.abs(inches(minorExternalMm(thread, 'unr')) - unrIn)).toBeLessThan(oneUnit);
  });

  test.each([
    ['#4-40', 0.00604],
    ['#6-32', 0.00909],
    ['#8-32', 0.014],
    ['#10-24', 0.0175],
    ['1/4-20', 0.0318],
    ['5/16-18', 0.0524],
    ['3/8-16', 0.0775],
    ['7/16-14', 0.1063],
    ['1/2-13', 0.1419],
    ...fine.map(([name, , , , area]) => [name, area] as const),
  ] as const)('%s: tensile stress area %f in² (seen)', (name, areaIn2) => {
    const area = stressAreaMm2(named(name)) / mmPerInch ** 2;
    // tables are computed from rounded diameters: the last place is trusted to one and a half units
    const lastPlace = 10 ** -Math.max(4, String(areaIn2).length - 2);
    expect(Math.abs(area - areaIn2)).toBeLessThan(1.5 * lastPlace);
  });

  test('the three minor diameters in use are three different figures: 1/4-20 (seen)', () => {
    const thread = named('1/4-20');
    expect(inches(minorExternalMm(thread, 'unr'))).toBeCloseTo(0.1905, 4);
    expect(inches(minorExternalMm(thread, 'older'))).toBeCloseTo(0.1887, 4);
    expect(inches(minorExternalMm(thread, 'sharp-root'))).toBeCloseTo(0.185, 4);
  });

  test('1/4-20 class 2A measures 0.2408 to 0.2489 in across (from memory, recomputed)', () => {
    const { leastMm, mostMm } = boltDiameterLimits(named('1/4-20'));
    expect(Math.abs(inches(leastMm) - 0.2408)).toBeLessThan(0.0001);
    expect(Math.abs(inches(mostMm) - 0.2489)).toBeLessThan(0.0001);
  });

  test.each([
    ['1/4-20', 0.196, 0.207],
    ['#10-24', 0.145, 0.156],
  ] as const)('%s class 2B has a bore of %f to %f in (from memory, recomputed)', (name, leastIn, mostIn) => {
    const { leastMm, mostMm } = nutBoreLimits(named(name));
    expect(Math.abs(inches(leastMm) - leastIn)).toBeLessThan(0.0006);
    expect(Math.abs(inches(mostMm) - mostIn)).toBeLessThan(0.0006);
  });
});
