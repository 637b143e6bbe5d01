import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { standardAir } from '../../src/engine/atmosphere.js';
import { EngineError } from '../../src/engine/error.js';
import {
  ethanolBlend,
  fuelAge,
  leaningOnBlend,
  twoStrokeOil,
  waterToleranceE10,
} from '../../src/engine/fuel.js';
import { faaSupplyPa, heldPressure, leakArea, leakDown, leakPercent } from '../../src/engine/leak-down.js';
import { jetFor, jetForBlend, richening, richeningByDensity } from '../../src/engine/mixture.js';
import {
  approximateAirDensity,
  dryAirDensity,
  magnusPressure,
  moistAirDensity,
  saturationPressure,
} from '../../src/engine/moist-air.js';
import {
  crankingDrag,
  gradeLine,
  gradesFor,
  isoClasses,
  oilGrades,
  summerGradesOf,
} from '../../src/engine/oil-grades.js';
import { criticalRatio, flowFunction, holeAreaMm2, holeDiameterMm } from '../../src/engine/orifice.js';
import { iso1585Factor, saeJ1349Factor } from '../../src/engine/power-correction.js';
import { viscosityAt, viscosityLine } from '../../src/engine/viscosity.js';
import { referenceViscosities, viscosityIndex } from '../../src/engine/viscosity-index.js';
import { gammaOfAir } from './otto-cycle.js';

const seed = { seed: 12, numRuns: 100 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('moist air', () => {
  test.each([
    [20, 101_325, 0.5, 1.19931],
    [20, 101_325, 0, 1.20456],
    [30, 100_000, 0.6, 1.13844],
    [35, 101_325, 0.8, 1.1266],
  ])('CIPM-2007 coded apart: %d °C, %d Pa, %d: %d kg/m³', (celsius, pascal, humidity, density) =>
    expect(Math.abs(moistAirDensity({ celsius, pascal, humidity }) - density)).toBeLessThan(6e-6),
  );

  test.each([
    [20, 101_325, 0.5, 1.19929],
    [30, 100_000, 0.6, 1.13843],
    [35, 101_325, 0.8, 1.1261],
  ])('OIML R 111 approximate: %d °C, %d Pa, %d: %d kg/m³', (celsius, pascal, humidity, density) =>
    expect(Math.abs(approximateAirDensity({ celsius, pascal, humidity }) - density)).toBeLessThan(6e-6),
  );

  test.each([
    [0, 611.2],
    [10, 1226],
    [20, 2332.6],
    [30, 4233.7],
    [40, 7367.5],
  ])('Magnus of WMO-No. 8: %d °C: %d Pa', (celsius, pascal) =>
    expect(Math.abs(magnusPressure(celsius) - pascal)).toBeLessThan(0.06),
  );

  test('both vapor pressures agree within 0.5 %', () => {
    expect(saturationPressure(20)).toBeCloseTo(2339.16, 1);
    for (const t of [0, 10, 25, 40])
      expect(Math.abs(saturationPressure(t) / magnusPressure(t) - 1)).toBeLessThan(5e-3);
  });

  test('damp air is lighter than dry air, and holds less to burn with', () => {
    const day = { celsius: 30, pascal: 100_000, humidity: 0.9 };
    const dry = { ...day, humidity: 0 };
    expect(moistAirDensity(day)).toBeLessThan(moistAirDensity(dry));
    expect(dryAirDensity(day)).toBeLessThan(moistAirDensity(day));
    expect(Math.abs(dryAirDensity(dry) / moistAirDensity(dry) - 1)).toBeLessThan(1e-3);
  });
});

describe('corrections and mixture', () => {
  test('SAE J1349 at four corners, computed apart', () => {
    for (const [mbar, t, factor] of [
      [850, 25, 1.1944],
      [960, 35, 1.0571],
      [1000, 10, 0.9584],
    ] as const)
      expect(Math.abs(saeJ1349Factor(100 * mbar, t) - factor)).toBeLessThan(6e-5);
  });

  test('both corrections say the same within 2 % on ordinary days', () => {
    for (const [mbar, t] of [
      [960, 35],
      [1000, 10],
      [970, 20],
    ] as const)
      expect(Math.abs(saeJ1349Factor(100 * mbar, t) / iso1585Factor(100 * mbar, t) - 1)).toBeLessThan(0.02);
  });

  test.each([
    [1000, 1.0497, 0.976],
    [1500, 1.076, 0.964],
    [2000, 1.1032, 0.9521],
    [3000, 1.1608, 0.9282],
  ])('%d m: %d times as rich, jet %d', (m, rich, jet) => {
    const found = richeningByDensity(standardAir(0).kgPerM3, standardAir(m).kgPerM3);
    expect(Math.abs(found - rich)).toBeLessThan(6e-5);
    expect(Math.abs(jetFor(1, found) - jet)).toBeLessThan(6e-5);
  });

  test('in dry air the weather’s rule is the density’s rule', () => {
    const [from, to] = [
      { celsius: 15, pascal: 101_325, humidity: 0 },
      { celsius: 30, pascal: 90_000, humidity: 0 },
    ] as const;
    const byDensity = richeningByDensity(moistAirDensity(from), moistAirDensity(to));
    expect(Math.abs(richening(from, to) / byDensity - 1)).toBeLessThan(1e-3);
    expect(richening(from, from)).toBeCloseTo(1, 12);
    expect(richening(from, to) * richening(to, from)).toBeCloseTo(1, 12);
  });

  test('heat and damp make it richer', () => {
    const cool = { celsius: 10, pascal: 101_325, humidity: 0.5 };
    expect(richening(cool, { ...cool, celsius: 30 })).toBeGreaterThan(1.02);
    expect(
      richening({ ...cool, celsius: 30 }, { celsius: 30, pascal: 101_325, humidity: 1 }),
    ).toBeGreaterThan(1);
  });
});

describe('fuel', () => {
  test('E10 is 10.53 % by mass and wants 14.01 parts of air (14.10 on a base of 14.7)', () => {
    const blend = ethanolBlend(0.1);
    expect(100 * blend.ethanolByMass).toBeCloseTo(10.53, 2);
    expect(blend.airFuelRatio).toBeCloseTo(14.01, 2);
    expect(ethanolBlend(0.1, 14.7).airFuelRatio).toBeCloseTo(14.1, 2);
  });

  test('E10 on an unchanged jet runs about 4 % lean; there and back is nothing', () => {
    expect(100 * (leaningOnBlend(0, 0.1) - 1)).toBeCloseTo(3.9, 1);
    expect(leaningOnBlend(0, 0.1) * leaningOnBlend(0.1, 0)).toBeCloseTo(1, 12);
    expect(jetForBlend(1, 0, 0.1) ** 2).toBeCloseTo(leaningOnBlend(0, 0.1), 12);
  });

  test('two-stroke oil, exact', () => {
    for (const [ratio, ounces] of [
      [50, 2.56],
      [40, 3.2],
      [32, 4],
      [25, 5.12],
      [16, 8],
    ] as const)
      expect(twoStrokeOil(128, ratio)).toBeCloseTo(ounces, 12);
    expect(twoStrokeOil(5000, 50)).toBe(100);
  });

  test('colder fuel holds less water', () =>
    expect(waterToleranceE10(-10).part).toBeLessThan(waterToleranceE10(15).part));

  test('fuel only gets older, later with stabilizer and in a can', () => {
    const states = [0, 31, 91].map((days) => fuelAge('e10', 'tank', false, days).state);
    expect(states).toEqual(['good', 'doubtful', 'stale']);
    expect(fuelAge('e10', 'tank', true, 60).state).toBe('good');
    expect(fuelAge('e10', 'can', false, 60).state).toBe('good');
    expect(fuelAge('canned', 'can', true, 1).goodUntilDays).toBe(730);
    expect(() => fuelAge('e10', 'tank', false, -1)).toThrow(EngineError);
  });
});

describe('orifices', () => {
  test('the critical figures of air', () => {
    expect(criticalRatio()).toBeCloseTo(0.528282, 6);
    expect(flowFunction(0.3)).toBeCloseTo(0.684731, 6);
    expect(flowFunction(1)).toBe(0);
    expect(criticalRatio() ** (0.4 / 1.4)).toBeCloseTo(0.833333, 6);
    expect(criticalRatio() ** (1 / 1.4)).toBeCloseTo(0.633938, 6);
  });

  test('0.040 in with coefficient 1, 80 psig, 70 °F, to one atmosphere: 1.2472 g/s', () => {
    const pascal = faaSupplyPa + 101_325;
    const kg =
      ((holeAreaMm2(1.016) * 1e-6 * pascal) / Math.sqrt(287.05287 * 294.2611)) *
      flowFunction(101_325 / pascal);
    // computed apart with R = 287
    expect(Math.abs(1000 * kg - 1.2472)).toBeLessThan(1.5e-4);
  });

  test('a diameter’s area has that diameter; flow never falls with the pressure drop', () => {
    fc.assert(
      fc.property(between(0.1, 50), between(0, 1), between(0, 1), (d, r1, r2) => {
        expect(holeDiameterMm(holeAreaMm2(d))).toBeCloseTo(d, 9);
        expect(flowFunction(Math.min(r1, r2))).toBeGreaterThanOrEqual(flowFunction(Math.max(r1, r2)) - 1e-12);
      }),
      seed,
    );
  });

  test('γ of real air falls with temperature', () => {
    expect(gammaOfAir(300)).toBeCloseTo(1.4, 2);
    expect(gammaOfAir(600)).toBeCloseTo(1.376, 3);
    expect(gammaOfAir(1000)).toBeCloseTo(1.336, 3);
    expect(Math.abs(gammaOfAir(999.999) - gammaOfAir(1000.001))).toBeLessThan(2e-4);
  });
});

describe('leak-down', () => {
  const tester = { supplyPa: faaSupplyPa, orificeMm: 1.016 };
  const psi = faaSupplyPa / 80;
  test.each([
    [78, 0.303, 2.5],
    [75, 0.487, 6.25],
    [70, 0.7067, 12.5],
    [65, 0.89, 18.75],
    [60, 1.059, 25],
    [50, 1.384, 37.5],
    [40, 1.722, 50],
    [20, 2.729, 75],
  ])('%d of 80 psi: %d times the orifice, %d %%', (held, ratio, percent) => {
    expect(Math.abs(leakArea(tester, held * psi) / holeAreaMm2(1.016) - ratio)).toBeLessThan(6e-4);
    expect(leakPercent(tester, held * psi)).toBeCloseTo(percent, 9);
  });

  test('the pressure held for a leak gives that leak, on any tester', () => {
    fc.assert(
      fc.property(between(0.5, 2.5), between(30, 110), between(0.02, 0.98), (orificeMm, supply, part) => {
        const other = { supplyPa: supply * psi, orificeMm };
        const held = part * other.supplyPa;
        expect(heldPressure(other, leakArea(other, held)) / held).toBeCloseTo(1, 6);
      }),
      seed,
    );
  });

  test('the same hole shows less percent through a larger orifice', () => {
    const at = (orificeMm: number) => leakPercent(tester, heldPressure({ ...tester, orificeMm }, 0.8));
    expect(at(1.5)).toBeLessThan(at(1));
  });

  test('the range holds the answer, and widens with the gauge and toward a tight cylinder', () => {
    const at = (held: number, u: number) => leakDown(tester, held * psi, u * psi);
    const { leastMm2, areaMm2, mostMm2 } = at(70, 0.5);
    expect(leastMm2).toBeLessThan(areaMm2);
    expect(mostMm2).toBeGreaterThan(areaMm2);
    const width = (found: ReturnType<typeof at>) => (found.mostMm2 - found.leastMm2) / found.areaMm2;
    expect(width(at(70, 1))).toBeGreaterThan(width(at(70, 0.5)));
    expect(width(at(79, 0.5))).toBeGreaterThan(2 * width(at(70, 0.5)));
  });
});

describe('oil', () => {
  const line = (at40: number, at100: number) =>
    viscosityLine({ celsius: 40, mm2PerS: at40 }, { celsius: 100, mm2PerS: at100 });

  test('ASTM D341 with 273.15, computed apart', () => {
    const found = line(32, 5.4);
    expect(found.a).toBeCloseTo(9.53082, 5);
    expect(found.b).toBeCloseTo(3.74658, 5);
    expect(viscosityAt(found, 80)).toBeCloseTo(8.533, 3);
    for (const [t, mm2PerS, tolerance] of [
      [0, 1824, 0.5],
      [20, 341.8, 0.05],
      [60, 39.68, 0.005],
      [80, 19.47, 0.005],
      [120, 7.06, 0.005],
    ] as const)
      expect(Math.abs(viscosityAt(line(100, 11.1), t) - mm2PerS)).toBeLessThan(tolerance);
  });

  test('a line goes through its points and falls all the way', () => {
    fc.assert(
      fc.property(between(20, 400), between(4, 15), between(-20, 90), (at40, at100, t) => {
        const found = line(at40, at100);
        expect(viscosityAt(found, 40) / at40).toBeCloseTo(1, 9);
        expect(viscosityAt(found, 100) / at100).toBeCloseTo(1, 9);
        expect(viscosityAt(found, t)).toBeGreaterThan(viscosityAt(found, t + 10));
      }),
      seed,
    );
  });

  test('where the form does not hold it is refused', () => {
    expect(() => line(32, 1.5)).toThrow(/from 2 mm/);
    expect(() => line(5, 9)).toThrow(/thins as it warms/);
    expect(() => viscosityAt(line(20, 3), 190)).toThrow(EngineError);
  });

  test('the pieces of L and H join within 0.2 %', () => {
    for (const joint of [3.8, 4.4, 5, 6.4, 7, 7.7, 9, 12, 15, 18, 22, 28, 40, 55, 70]) {
      const [below, above] = [referenceViscosities(joint - 1e-9), referenceViscosities(joint)];
      expect(Math.abs(below.l / above.l - 1), `L at ${joint}`).toBeLessThan(2e-3);
      expect(Math.abs(below.h / above.h - 1), `H at ${joint}`).toBeLessThan(2e-3);
    }
  });

  test('the index falls as the oil is thicker cold, without a jump at 100', () => {
    const at100 = 10;
    const { h } = referenceViscosities(at100);
    expect(viscosityIndex(h, at100).index).toBeCloseTo(100, 9);
    expect(viscosityIndex(h - 1e-9, at100).index).toBeCloseTo(100, 6);
    for (let at40 = 40; at40 < 130; at40 += 5)
      expect(viscosityIndex(at40, at100).index).toBeGreaterThan(viscosityIndex(at40 + 5, at100).index);
  });

  test('every grade on the list lies in its own range at 100 °C and is thinner hot than cold', () => {
    for (const [name, { summer, at100 }] of Object.entries(oilGrades))
      expect(summerGradesOf(at100), name).toEqual([summer]);
    expect(viscosityAt(gradeLine('SAE 30'), -10)).toBeGreaterThan(viscosityAt(gradeLine('10W-30'), -10));
  });

  test('SAE 30 against 10W-30 at −10 °C turns two to four times as hard, and the ratio turns round', () => {
    const { ratio } = crankingDrag('10W-30', 'SAE 30', -10);
    expect(ratio).toBeGreaterThan(2);
    expect(ratio).toBeLessThan(4);
    expect(ratio * crankingDrag('SAE 30', '10W-30', -10).ratio).toBeCloseTo(1, 12);
  });

  test('a wider climate never has more grades', () => {
    fc.assert(
      fc.property(between(-30, 20), between(0, 20), between(20, 45), (coldest, wider, hottest) => {
        const narrow = gradesFor(coldest, hottest);
        for (const grade of gradesFor(coldest - wider, hottest)) expect(narrow).toContain(grade);
      }),
      seed,
    );
    expect(gradesFor(-15, 30)).toEqual(['5W-30', '10W-30', '10W-40']);
  });

  test('the ISO classes rise by about half', () => {
    for (let i = 1; i < isoClasses.length; i += 1) {
      const step = isoClasses[i]! / isoClasses[i - 1]!;
      expect(step).toBeGreaterThan(1.4);
      expect(step).toBeLessThan(1.52);
    }
  });
});
