import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EngineError } from '../../src/engine/error.js';
import {
  clearanceForRatio,
  compressionRatio,
  ottoEfficiency,
  ratioAfterMilling,
} from '../../src/engine/geometry.js';
import { coilGap, keyOffsetMm, sparkShiftDeg } from '../../src/engine/ignition.js';
import {
  angleAtTravelDeg,
  cylinderVolumeCc,
  displacementCc,
  pistonTravelMm,
} from '../../src/engine/slider-crank.js';
import {
  beltDrive,
  droop,
  generatorHz,
  meanPistonSpeed,
  rpmAtTipSpeed,
  rpmForHz,
  tipSpeed,
} from '../../src/engine/speeds.js';

const seed = { seed: 31, numRuns: 100 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('the slider-crank', () => {
  const table: readonly (readonly [number, readonly number[]])[] = [
    [3, [0.17593, 0.62772, 1.17157, 1.62772, 1.90799, 2]],
    [3.5, [0.16987, 0.60884, 1.1459, 1.60884, 1.90192, 2]],
    [4, [0.16535, 0.59488, 1.12702, 1.59488, 1.8974, 2]],
  ];
  test.each(table)('rod over throw %d stands where a computation apart puts it', (ratio, places) => {
    places.forEach((place, i) => {
      const travel = pistonTravelMm({ strokeMm: 2, rodMm: ratio }, 30 * (i + 1));
      expect(Math.abs(travel - place)).toBeLessThan(6e-6);
    });
  });

  test('an angle from a travel gives the travel again, and both halves of a turn are alike', () => {
    fc.assert(
      fc.property(between(20, 100), between(0.7, 3), between(0, 180), (strokeMm, rod, angle) => {
        const crank = { strokeMm, rodMm: rod * strokeMm };
        const travel = pistonTravelMm(crank, angle);
        expect(pistonTravelMm(crank, -angle)).toBeCloseTo(travel, 9);
        expect(pistonTravelMm(crank, angleAtTravelDeg(crank, Math.min(strokeMm, travel)))).toBeCloseTo(
          travel,
          6,
        );
      }),
      seed,
    );
  });

  test('swept volume is the volume at bottom less that at top', () => {
    const crank = { boreMm: 65, strokeMm: 62, rodMm: 108.5 };
    expect(cylinderVolumeCc(crank, 8, 180) - cylinderVolumeCc(crank, 8, 0)).toBeCloseTo(
      displacementCc(crank),
      9,
    );
    expect(cylinderVolumeCc(crank, 8, 180) / cylinderVolumeCc(crank, 8, 0)).toBeCloseTo(8, 9);
  });
});

describe('compression ratio', () => {
  const chamber = {
    boreMm: 65,
    strokeMm: 62,
    headCc: 24,
    gasketMm: 1.2,
    gasketAreaMm2: 3318,
    deckMm: 0.3,
    crownCc: 0,
  };

  test('the docstring’s example', () => expect(compressionRatio(chamber).ratio).toBeCloseTo(8.1, 1));

  test('the clearance of a ratio makes that ratio again', () => {
    fc.assert(
      fc.property(between(20, 500), between(2, 15), (swept, ratio) => {
        const clearance = clearanceForRatio(swept, ratio);
        expect((swept + clearance) / clearance).toBeCloseTo(ratio, 9);
      }),
      seed,
    );
  });

  test('milling raises it; a dome raises it; a thicker gasket lowers it', () => {
    const { ratio, ...rest } = compressionRatio(chamber);
    expect(ratioAfterMilling(rest, 0.5, 4500)).toBeGreaterThan(ratio);
    expect(ratioAfterMilling(rest, 0, 4500)).toBeCloseTo(ratio, 12);
    expect(compressionRatio({ ...chamber, crownCc: -1 }).ratio).toBeGreaterThan(ratio);
    expect(compressionRatio({ ...chamber, gasketMm: 1.5 }).ratio).toBeLessThan(ratio);
  });

  test.each([
    [5, 0.4747],
    [6, 0.5116],
    [7, 0.5408],
    [8, 0.5647],
    [9, 0.5848],
    [10, 0.6019],
  ])('ideal efficiency at %d is %d', (ratio, efficiency) =>
    expect(ottoEfficiency(ratio)).toBeCloseTo(efficiency, 4),
  );
});

describe('speeds', () => {
  test('62 mm at 3600 rpm: 7.44 m/s; 21 in at 3600 rpm: 19 792 ft/min', () => {
    expect(meanPistonSpeed(62, 3600)).toBeCloseTo(7.44, 9);
    expect((tipSpeed(533.4, 3600) * 60) / 0.3048).toBeCloseTo(19_792, 0);
  });

  test('the speed for a tip speed has that tip speed; the speed for a frequency that frequency', () => {
    fc.assert(
      fc.property(between(100, 1500), between(5, 150), (diameter, speed) => {
        expect(tipSpeed(diameter, rpmAtTipSpeed(diameter, speed))).toBeCloseTo(speed, 9);
        expect(generatorHz(rpmForHz(speed, 4), 4)).toBeCloseTo(speed, 9);
      }),
      seed,
    );
  });

  test('pulleys: twice the diameter, half the speed, less the slip', () => {
    const drive = { driverRpm: 3600, driverMm: 60, drivenMm: 120, slip: 0 };
    expect(beltDrive(drive).drivenRpm).toBe(1800);
    expect(beltDrive({ ...drive, slip: 0.02 }).drivenRpm).toBeCloseTo(1764, 9);
    expect(beltDrive(drive).beltSpeed).toBeCloseTo(tipSpeed(60, 3600), 12);
  });

  test('droop of 3720 to 3540 rpm is 5.1 %', () => expect(droop(3720, 3540)).toBeCloseTo(0.05085, 5));

  test.each([
    ['poles', () => generatorHz(3600, 3)],
    ['noLoad', () => droop(3000, 3600)],
    ['slip', () => beltDrive({ driverRpm: 1, driverMm: 1, drivenMm: 1, slip: 2 })],
    ['diameter', () => tipSpeed(-1, 3000)],
    ['ratio', () => clearanceForRatio(200, 1)],
  ])('%s is refused by name', (field, attempt) => {
    expect(attempt).toThrow(EngineError);
    expect(attempt).toThrow(expect.objectContaining({ field }));
  });
});

describe('ignition', () => {
  test('1 mm at a 20 mm shaft is 5.73°, and back', () => {
    expect(sparkShiftDeg(1, 20)).toBeCloseTo(5.7296, 4);
    expect(keyOffsetMm(10, 20)).toBeCloseTo(1.7453, 4);
    expect(keyOffsetMm(sparkShiftDeg(1.3, 25), 25)).toBeCloseTo(1.3, 12);
  });

  test('run-out and play open and close the gap alike', () => {
    const { setMm, leastMm, mostMm } = coilGap(0.3, 1, 0.1, 0.06);
    expect([setMm, leastMm, mostMm].map((x) => Number(x.toFixed(9)))).toEqual([0.3, 0.22, 0.38]);
    expect(coilGap(0.15, 2).leastMm).toBeCloseTo(0.3, 12);
  });
});
