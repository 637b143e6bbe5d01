import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { leafPitchMm, nameThread, tellApart } from '../../src/fasten/name-thread.js';
import { boltDiameterLimits, nutBoreLimits } from '../../src/fasten/thread-limits.js';
import { threads } from '../../src/fasten/threads.js';

const seed = { seed: 20_240_605 };
const named = (name: string) => threads.find((each) => each.name === name)!;
const fitting = (reading: Parameters<typeof nameThread>[0]) =>
  nameThread(reading)
    .candidates.filter(({ fits }) => fits)
    .map(({ thread }) => thread.name);

describe('naming a thread', () => {
  test('a bolt made to its limits, with its own leaf, is always among those that fit', () => {
    fc.assert(
      fc.property(fc.constantFrom(...threads), fc.double({ min: 0, max: 1, noNaN: true }), (thread, part) => {
        const { leastMm, mostMm } = boltDiameterLimits(thread);
        const diameterMm = leastMm + part * (mostMm - leastMm);
        expect(fitting({ diameterMm, where: 'bolt', pitchMm: thread.pitchMm })).toContain(thread.name);
      }),
      seed,
    );
  });

  test('so is a tapped hole by its bore', () => {
    fc.assert(
      fc.property(fc.constantFrom(...threads), fc.double({ min: 0, max: 1, noNaN: true }), (thread, part) => {
        const { leastMm, mostMm } = nutBoreLimits(thread);
        const diameterMm = leastMm + part * (mostMm - leastMm);
        expect(fitting({ diameterMm, where: 'hole', pitchMm: thread.pitchMm })).toContain(thread.name);
      }),
      seed,
    );
  });

  test('5/16-18 and M8×1.25 have one diameter: only the leaf tells', () => {
    const diameterMm = 7.85;
    expect(fitting({ diameterMm, where: 'bolt', pitchMm: leafPitchMm(18) })).toEqual(['5/16-18']);
    expect(fitting({ diameterMm, where: 'bolt', pitchMm: 1.25 })).toEqual(['M8×1.25']);
    const found = nameThread({ diameterMm, where: 'bolt' });
    expect(found.verdict).toBe('ambiguous');
    expect(found.candidates.map(({ thread }) => thread.name)).toEqual(
      expect.arrayContaining(['5/16-18', 'M8×1.25']),
    );
    expect(found.words).toMatch(/the pitch tells them apart/);
  });

  test('1/4-20 and M6×1 are told apart by caliper alone', () => {
    expect(fitting({ diameterMm: 6.25, where: 'bolt' })).toEqual(['1/4-20', '1/4-28']);
    expect(fitting({ diameterMm: 5.9, where: 'bolt' })).toEqual(['M6×1', 'M6×0.75']);
  });

  test('#10-32 and M5×0.8: the leaves are alike, and where the diameters overlap nothing is settled silently', () => {
    const pitchMm = leafPitchMm(32);
    expect(fitting({ diameterMm: 4.74, where: 'bolt', pitchMm })).toEqual(['#10-32']);
    expect(fitting({ diameterMm: 4.93, where: 'bolt', pitchMm })).toEqual(['M5×0.8']);
    const between = nameThread({ diameterMm: 4.82, where: 'bolt', pitchMm });
    expect(between.verdict).toBe('ambiguous');
    expect(between.words).toMatch(/#10-32/);
    expect(between.words).toMatch(/M5×0\.8/);
  });

  test('a near miss is named with how far off it is', () => {
    const found = nameThread({ diameterMm: 9.6, where: 'bolt', pitchMm: leafPitchMm(16) });
    expect(found.verdict).toBe('none');
    expect(found.candidates.map(({ thread }) => thread.name)).toContain('3/8-16');
    expect(found.words).toMatch(/nearest is 3\/8-16 \(diameter 0\.0043 in over/);
    const miss = nameThread({ diameterMm: 7.85, where: 'bolt', pitchMm: 1.32 });
    expect(miss.verdict).toBe('none');
    expect(miss.candidates[0]!.why).toMatch(/leaf 5\.6 % too coarse/);
  });

  test('a thread far from every listed one has no name', () => {
    const found = nameThread({ diameterMm: 40, where: 'bolt', pitchMm: 3 });
    expect(found).toMatchObject({ verdict: 'none', candidates: [] });
    expect(found.words).toMatch(/no standard thread/);
  });

  test('a caliper that may be further off lets more threads in', () => {
    const reading = { diameterMm: 8.05, where: 'bolt', pitchMm: 1.25 } as const;
    expect(fitting(reading)).toEqual([]);
    expect(fitting({ ...reading, caliperMm: 0.1 })).toEqual(['M8×1.25']);
  });

  test('readings that are none are refused by name', () => {
    expect(() => nameThread({ diameterMm: 0, where: 'bolt' })).toThrow(
      expect.objectContaining({ field: 'diameter' }),
    );
    expect(() => nameThread({ diameterMm: 8, where: 'bolt', pitchMm: -1 })).toThrow(
      expect.objectContaining({ field: 'pitch' }),
    );
    expect(() => leafPitchMm(0)).toThrow(expect.objectContaining({ field: 'tpi' }));
    expect(leafPitchMm(20)).toBeCloseTo(1.27, 12);
  });

  test('what tells two threads apart is said in millimeters', () => {
    expect(tellApart(named('5/16-18'), named('M8×1.25'))).toMatch(
      /runs out by 1\.1 mm over 10 mm; the bolts differ by 0\.063 mm/,
    );
  });
});
