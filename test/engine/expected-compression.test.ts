import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gauge, tenPulls, usualEngine } from '../../bench/engine/usual-engine.js';
import { builtInCatalog } from '../../src/catalog/index.js';
import { classifyCompression, compressionRungs } from '../../src/engine/cranking/classify.js';
import { crank } from '../../src/engine/cranking/crank.js';
import {
  type CompressionGeometry,
  expectedCompression,
  uncertaintyBesideLeak,
} from '../../src/engine/cranking/expected.js';
import { leakFromReading, readingWithLeak } from '../../src/engine/cranking/find-leak.js';
import { EngineError } from '../../src/engine/error.js';
import { normals } from '../gauge/seeded.js';

const psi = 6894.757;
const usual: CompressionGeometry = {
  architecture: 'overhead-valve',
  boreMm: 65,
  strokeMm: 62,
  compressionRatio: 8,
  release: 'none',
};
const expected = expectedCompression(usual, { by: 'rope' });
const sixPulls = { ...tenPulls, pulls: 6 };

describe('the reading of a sound engine', () => {
  test('stands inside its band, neither end more than half as far again as the other', () => {
    // 125 while the rope lay on a drum of 42 mm, which put side-valves over the trade's range; 106 while a hand was taken
    // to pull every engine at 2 m/s, whatever its flywheel and its friction
    expect(expected.likelyPa / psi).toBeCloseTo(105, 0);
    // a pull that hardly gets over top has more to gain than to lose, so that the low end may be the nearer one
    const down = Math.log(expected.likelyPa / expected.lowPa);
    const up = Math.log(expected.highPa / expected.likelyPa);
    expect(Math.max(down, up)).toBeLessThan(1.5 * Math.min(down, up));
  });

  test('a Monte Carlo of everything not known falls inside the band nine times in ten and more (JCGM 101)', () => {
    const draw = normals(77);
    const { engine, gauge: used, conditions } = expected;
    const exchange = engine.exchange as Extract<typeof engine.exchange, { cycle: 'four-stroke' }>;
    const readings = Array.from({ length: 250 }, () => {
      const leak = Math.exp(0.5 * draw());
      const behind = Math.exp(0.25 * draw());
      const drawn = {
        ...engine,
        compressionRatio: engine.compressionRatio + 0.15 * draw(),
        exchange: {
          ...exchange,
          intake: { ...exchange.intake, closesDeg: exchange.intake.closesDeg + 8 * draw() },
        },
        leaks: {
          ringsMm2: engine.leaks.ringsMm2 * leak,
          intakeValveMm2: engine.leaks.intakeValveMm2 * leak,
          exhaustValveMm2: engine.leaks.exhaustValveMm2 * leak,
          headGasketMm2: engine.leaks.headGasketMm2 * leak,
        },
      };
      const drawnGauge = {
        ...used,
        hoseMl: used.hoseMl * Math.exp(0.3 * draw()),
        adapterMl: Math.max(0, used.adapterMl + 0.7 * draw()),
        valveMm2: used.valveMm2 * Math.exp(0.4 * draw()),
      };
      const pull = {
        ...conditions,
        rpm: conditions.rpm * Math.exp(0.15 * draw()),
        sags: {
          ...conditions.sags!,
          stallNm: conditions.sags!.stallNm * behind,
          inertiaKgM2: conditions.sags!.inertiaKgM2 * behind,
        },
        heatFactor: conditions.heatFactor * Math.exp(0.4 * draw()),
        airK: conditions.airK + 3 * draw(),
        wallK: conditions.wallK + 5 * draw(),
        ambientPa: conditions.ambientPa + 800 * draw(),
      };
      return crank(drawn, drawnGauge, pull, { relativeTolerance: 1e-4 }).readingPa * Math.exp(0.1 * draw());
    }).sort((p, q) => p - q);
    const inside = readings.filter((each) => each > expected.lowPa && each < expected.highPa).length;
    // 95 % at k = 2; 250 draws tell it to within 1.5 %
    expect(inside / readings.length).toBeGreaterThan(0.91);
    expect(inside / readings.length).toBeLessThan(0.99);
    expect(Math.abs(readings[125]! / expected.likelyPa - 1)).toBeLessThan(0.05);
  });

  test('a measured speed and ratio narrow the band', () => {
    const narrower = expectedCompression(
      usual,
      { by: 'rope', rpm: expected.conditions.rpm },
      { rpmLn: 0.05, sagLn: 0.1, ratio: 0.05 },
    );
    expect(narrower.highPa / narrower.lowPa).toBeLessThan(0.95 * (expected.highPa / expected.lowPa));
    expect(narrower.likelyPa).toBeCloseTo(expected.likelyPa, 6);
  });

  test('what is not given is said to be of the class', () => {
    const { compressionRatio: _, ...unknown } = usual;
    const wide = expectedCompression(unknown, { by: 'rope' });
    expect(wide.restsOn.filter((line) => line.includes("not this engine's")).length).toBe(3);
    expect(expected.restsOn.filter((line) => line.includes("not this engine's")).length).toBe(2);
    expect(wide.highPa / wide.lowPa).toBeGreaterThan(expected.highPa / expected.lowPa);
  });

  test('the shares come widest first, and the leak is among the first', () => {
    const sizes = expected.shares.map(({ down, up }) => down + up);
    expect(sizes).toEqual([...sizes].sort((p, q) => q - p));
    expect(expected.shares.slice(0, 3).map(({ what }) => what)).toContain('leakage of a sound cylinder');
    expect(uncertaintyBesideLeak(expected, 0.02)).toBeLessThan(0.25);
  });

  test('a barometer goes before the altitude', () => {
    const byBarometer = expectedCompression(usual, { by: 'rope', altitudeM: 3000, ambientPa: 101_325 });
    expect(byBarometer.likelyPa).toBeCloseTo(expected.likelyPa, -3);
  });
});

describe('a reading as evidence', () => {
  test('the rungs are the outcomes of the dry compression check, best first', () => {
    const check = builtInCatalog().checks.find(({ id }) => id === 'compression-dry');
    expect(check!.outcomes.map(({ id }) => id)).toEqual([...compressionRungs]);
  });

  test('weights are shares: none below 0, together 1, whatever the reading', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 400, noNaN: true }), (reading) => {
        const weights = Object.values(classifyCompression({ pa: reading * psi }, expected).weights);
        expect(weights.every((weight) => weight >= 0)).toBe(true);
        expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 9);
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  test('a higher reading never speaks more for a lower rung', () => {
    const standing = (reading: number) => {
      const { weights } = classifyCompression({ pa: reading * psi }, expected);
      return compressionRungs.reduce((sum, rung, i) => sum + i * weights[rung], 0);
    };
    // half as much again as the upper end, 165 psi, speaks for nothing
    for (let reading = 5; reading < 235; reading += 5)
      expect(standing(reading + 5)).toBeLessThanOrEqual(standing(reading) + 1e-12);
  });

  test('each rung has its reading', () => {
    const most = (reading: number) => {
      const { weights } = classifyCompression({ pa: reading * psi }, expected);
      return compressionRungs.reduce((best, rung) => (weights[rung] > weights[best] ? rung : best));
    };
    expect([140, 83, 50, 9].map(most)).toEqual([...compressionRungs]);
    expect(classifyCompression({ pa: 0 }, expected).weights['near-zero']).toBe(1);
  });

  test('a poorer gauge speaks less clearly', () => {
    const clear = (uPa: number) =>
      classifyCompression({ pa: 60 * psi, uPa }, expected).weights['down-forty-percent'];
    expect(clear(0)).toBeGreaterThan(clear(20 * psi));
  });

  test('with a release nothing is moved, and the reason is said', () => {
    for (const release of ['fitted', 'unknown'] as const) {
      const said = classifyCompression(
        { pa: 40 * psi },
        expectedCompression({ ...usual, release }, { by: 'rope' }),
      );
      expect(said.informative).toBe(false);
      if (!said.informative) expect(said.reason).toMatch(/release .*rebound.*leak-down/);
      expect(new Set(Object.values(said.weights))).toEqual(new Set([0.25]));
    }
  });

  test('a band too wide moves nothing', () => {
    const said = classifyCompression(
      { pa: 40 * psi },
      { lowPa: 3e5, likelyPa: 6e5, highPa: 1e6, release: 'none' },
    );
    expect(said.informative).toBe(false);
    if (!said.informative) expect(said.reason).toMatch(/Too little is known/);
  });
});

describe('the leak behind a reading', () => {
  const find = (readingPa: number, relativeU = 0.03) =>
    leakFromReading(usualEngine, gauge, sixPulls, { readingPa, relativeU });

  test('a leak put in is found again within 2 % wherever the reading is informative', () => {
    let told = 0;
    fc.assert(
      fc.property(
        fc.double({ min: Math.log(0.05), max: Math.log(25), noNaN: true }),
        fc.double({ min: 5.5, max: 9.5, noNaN: true }),
        fc.double({ min: 150, max: 700, noNaN: true }),
        (lnArea, compressionRatio, rpm) => {
          const engine = { ...usualEngine, compressionRatio };
          const conditions = { ...tenPulls, pulls: 3, rpm };
          const area = Math.exp(lnArea);
          const readingPa = crank(
            {
              ...engine,
              leaks: {
                ...engine.leaks,
                ringsMm2: area,
                intakeValveMm2: 0,
                exhaustValveMm2: 0,
                headGasketMm2: 0,
              },
            },
            gauge,
            conditions,
          ).readingPa;
          const found = leakFromReading(engine, gauge, conditions, { readingPa, relativeU: 0.03 });
          if (!found.informative) return;
          told += 1;
          expect(Math.abs(found.areaMm2 / area - 1)).toBeLessThan(0.02);
          expect(found.leastMm2).toBeLessThan(found.areaMm2);
          expect(found.mostMm2).toBeGreaterThan(found.areaMm2);
        },
      ),
      { seed: 99, numRuns: 18 },
    );
    expect(told).toBeGreaterThan(8);
  });

  test('as one hole: area and diameter agree', () => {
    const found = find(80 * psi);
    expect(found.informative).toBe(true);
    if (found.informative) expect((Math.PI / 4) * found.holeMm ** 2).toBeCloseTo(found.areaMm2, 9);
  });

  test('a reading over that of a tight engine needs no leak', () => {
    const found = find(300 * psi);
    expect(found.informative).toBe(false);
    if (!found.informative) expect(found.reason).toMatch(/no leak need be supposed/);
  });

  test('a reading near that of a tight engine cannot tell a sound cylinder from a small leak', () => {
    const found = find(0.99 * readingWithLeak(usualEngine, gauge, sixPulls, 0.01));
    expect(found.informative).toBe(false);
    if (!found.informative) {
      expect(found.reason).toMatch(/cannot tell/);
      expect(found.mostMm2).toBeGreaterThan(0.1);
    }
  });

  test('hardly any pressure bounds the leak from below only', () => {
    const found = find(1 * psi);
    expect(found.informative).toBe(false);
    if (!found.informative) {
      expect(found.reason).toMatch(/hardly any pressure/);
      expect(found.leastMm2).toBeGreaterThan(5);
      expect(found.mostMm2).toBeUndefined();
    }
  });

  test('a release that lets most go makes it untellable once its own doubt counts', () => {
    const released = expectedCompression({ ...usual, release: 'fitted' }, { by: 'rope' });
    const found = leakFromReading(released.engine, released.gauge, released.conditions, {
      readingPa: released.likelyPa,
      relativeU: uncertaintyBesideLeak(released, 0.04),
    });
    expect(found.informative).toBe(false);
    if (!found.informative) expect(found.reason).toMatch(/no leak need be supposed|release lets so much go/);
  });

  test('a reading below 0 is refused', () => expect(() => find(-1)).toThrow(EngineError));
});
