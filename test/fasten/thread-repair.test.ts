import { describe, expect, test } from 'vitest';
import { tapDrill } from '../../src/fasten/tap-drill.js';
import {
  leastBossMm,
  nextSize,
  type RepairOption,
  repairWays,
  type StrippedHole,
} from '../../src/fasten/thread-repair.js';
import { threads } from '../../src/fasten/threads.js';
import { chooseInsert, insertHoleDepthMm, insertThreadMm } from '../../src/fasten/wire-insert.js';

const named = (name: string) => threads.find((each) => each.name === name)!;
const way = (which: RepairOption['way'], hole: Omit<StrippedHole, 'form'>, thread = '5/16-18') =>
  repairWays({ form: named(thread), ...hole }).find((each) => each.way === which)!;

describe('stripped threads', () => {
  test('all four ways stand for every listed thread, each with a source and a reason', () => {
    for (const form of threads) {
      const ways = repairWays({ form, metal: 'aluminum' });
      expect(ways.map((each) => each.way)).toEqual(['chase', 'longer bolt', 'wire insert', 'next size']);
      expect(ways.every(({ why, source }) => why.length > 20 && source.length > 5)).toBe(true);
    }
  });

  test('what was not measured is left open, never assumed', () => {
    expect(repairWays({ form: named('5/16-18'), metal: 'aluminum' }).map(({ possible }) => possible)).toEqual(
      Array(4).fill(undefined),
    );
  });

  test('chasing and a longer bolt need the full engagement of the metal', () => {
    expect(way('chase', { metal: 'aluminum', goodThreadMm: 15.8 }).possible).toBe(false);
    expect(way('chase', { metal: 'aluminum', goodThreadMm: 15.9 }).possible).toBe(true);
    expect(way('longer bolt', { metal: 'iron', goodThreadMm: 10 }).possible).toBe(true);
    expect(way('longer bolt', { metal: 'aluminum', goodThreadMm: 10 }).possible).toBe(false);
  });

  test('the insert is as long as the hole allows, up to two diameters in aluminum and one and a half in iron', () => {
    const form = named('5/16-18');
    expect(chooseInsert(form, 'aluminum')?.diameters).toBe(2);
    expect(chooseInsert(form, 'iron')?.diameters).toBe(1.5);
    const depthFor = (d: number) => insertHoleDepthMm(form, d * form.majorMm, 'bottoming');
    expect(chooseInsert(form, 'aluminum', depthFor(2) - 0.1)?.diameters).toBe(1.5);
    expect(chooseInsert(form, 'aluminum', depthFor(1))?.diameters).toBe(1);
    expect(chooseInsert(form, 'aluminum', depthFor(1) - 0.1)).toBeUndefined();
  });

  test('a hole too shallow for any insert, or a boss too thin for its tap, rules it out', () => {
    expect(way('wire insert', { metal: 'aluminum', depthMm: 6 })).toMatchObject({
      possible: false,
      steps: [],
    });
    const { leastMm } = leastBossMm(named('5/16-18'));
    expect(way('wire insert', { metal: 'aluminum', depthMm: 30, bossMm: leastMm - 0.1 }).possible).toBe(
      false,
    );
    expect(way('wire insert', { metal: 'aluminum', depthMm: 30, bossMm: leastMm }).possible).toBe(true);
    expect(way('wire insert', { metal: 'aluminum', bossMm: 9 }).why).toMatch(/tap is wider than yours/);
  });

  test('the steps name drill, depth, insert tap and length', () => {
    const { steps } = way('wire insert', { metal: 'aluminum', depthMm: 30, bossMm: 25 });
    expect(steps[0]).toMatch(/^drill 21\/64 in, .* 0\.847 in \(21\.5 mm\) deep/);
    expect(steps[1]).toMatch(/5\/16-18 insert tap \(STI, 0\.385 in/);
    expect(steps[2]).toMatch(/0\.625 in \(15\.9 mm\) long \(2 d\)/);
  });

  test.each([
    ['#8-32', '#10-32'],
    ['#10-24', '1/4-20'],
    ['#10-32', '1/4-28'],
    ['1/4-20', '5/16-18'],
    ['1/4-28', '5/16-24'],
    ['5/16-18', '3/8-16'],
    ['3/8-16', '7/16-14'],
    ['7/16-14', '1/2-20'],
    ['M5×0.8', 'M6×1'],
    ['M6×1', 'M8×1.25'],
    ['M8×1.25', 'M10×1.5'],
    ['M14×1.25', 'M18×1.5'],
  ])('the next size after %s is %s (common practice)', (from, next) => {
    expect(nextSize(named(from))?.name).toBe(next);
  });

  test('the next size takes the old thread away, and a plug stays a plug', () => {
    for (const form of threads) {
      const next = nextSize(form);
      if (!next) continue;
      expect(tapDrill(next).holeMm).toBeGreaterThan(form.majorMm - 0.16 * form.pitchMm);
      expect(next.system).toBe(form.system);
      expect(next.series.includes('spark plug')).toBe(form.series.includes('spark plug'));
    }
    expect(nextSize(named('1/2-13'))).toBeUndefined();
    expect(way('next size', { metal: 'aluminum' }, '1/2-13').possible).toBe(false);
  });

  test('an insert thread is the nominal thread moved outward: same depth, same pitch diameter as its own wire', () => {
    for (const form of threads) {
      const { minorMm, pitchDiameterMm, majorMm } = insertThreadMm(form);
      expect(minorMm).toBeGreaterThan(form.majorMm);
      expect(majorMm - minorMm).toBeCloseTo(1.082532 * form.pitchMm, 5);
      expect(pitchDiameterMm - form.majorMm).toBeCloseTo(0.649519 * form.pitchMm, 5);
    }
  });

  test.each(['depth', 'good-thread', 'boss'] as const)(
    'a %s that is no length is refused by name',
    (field) => {
      const hole = {
        depth: { depthMm: 0 },
        'good-thread': { goodThreadMm: -1 },
        boss: { bossMm: Number.NaN },
      }[field];
      expect(() => repairWays({ form: named('M6×1'), metal: 'aluminum', ...hole })).toThrow(
        expect.objectContaining({ field }),
      );
    },
  );
});
