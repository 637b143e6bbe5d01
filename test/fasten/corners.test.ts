import { describe, expect, test } from 'vitest';
import { desk } from '../../src/desk/index.js';
import { centerOut } from '../../src/fasten/center-out.js';
import { nameThread } from '../../src/fasten/name-thread.js';
import { passes } from '../../src/fasten/passes.js';
import { tighteningOrder } from '../../src/fasten/pattern.js';
import { diametersApart } from '../../src/fasten/plane.js';
import { torqueBounds } from '../../src/fasten/plausible.js';
import { plugTorque } from '../../src/fasten/spark-plug.js';
import { nextSize, repairWays } from '../../src/fasten/thread-repair.js';
import { threads } from '../../src/fasten/threads.js';
import { clampRange } from '../../src/fasten/torque.js';
import { adapterSetting, appliedInterval } from '../../src/fasten/wrench.js';
import { parseThread } from '../../src/quantity/index.js';
import { run } from '../../src/worksheet/index.js';

/** Edges of the room's promises, each as its docstring gives it. */
const sheet = (id: string) => desk.find((each) => each.id === id)!;
const answer = (id: string, given: Record<string, string>, wanted: string) =>
  run(sheet(id), given).find((each) => each.id === wanted);

describe('a refusal names its field and unit', () => {
  test.each([
    ['an adapter for no torque', () => adapterSetting({ wantedNm: 0, wrenchMm: 300, adapterMm: 50 }), 'N·m'],
    ['a wrench set to nothing', () => appliedInterval(-1, 4), 'N·m'],
    ['passes to no torque', () => passes(0, [0.5, 1], false), 'N·m'],
    ['parts that fall', () => passes(10, [0.7, 0.5, 1], false), '0.7, 0.5, 1'],
    ['parts that end short', () => passes(10, [0.3, 0.7], false), '0.3, 0.7'],
    ['a seat that is not made', () => plugTorque(parseThread('M10×1'), 'conical', 'iron'), 'conical'],
    ['a pitch of nothing', () => nameThread({ where: 'bolt', diameterMm: 8, pitchMm: 0 }), 'pitch'],
  ])('%s', (_, act, words) => {
    expect(act).toThrow(words);
  });

  test('the seat that is not made is refused with thread and metal', () => {
    expect(() => plugTorque(parseThread('M10×1'), 'conical', 'iron')).toThrow(
      /no conical seat is listed for M10×1 in iron/,
    );
  });
});

test('a twentieth of the wrench is no lever any more, a little above it is one', () => {
  const folded = (adapterMm: number) =>
    adapterSetting({ wantedNm: 1, wrenchMm: 100, adapterMm, angleDeg: 180 });
  expect(folded(94)).toBeCloseTo(100 / 6, 9);
  expect(() => folded(95)).toThrow('grip');
});

describe('what a torque of a thread may be', () => {
  test('a 14 mm plug thread takes a plug, M10×1 and M12×1.25 a bolt or a plug, and both spans count', () => {
    expect(torqueBounds(parseThread('M14×1.25')).because).toMatch(/spark plug$/);
    expect(torqueBounds(parseThread('M14×1.25')).because).not.toContain('bolt');
    for (const text of ['M10×1', 'M12×1.25']) {
      const both = torqueBounds(parseThread(text));
      expect(both.because).toContain('bolt or spark plug');
      // the same size of the coarse pitch is never a plug: what a bolt of that size takes is within
      const coarse = torqueBounds(parseThread(text.split('×')[0]!));
      expect(both.highNm).toBeGreaterThan(0.8 * coarse.highNm);
      expect(both.lowNm).toBeLessThan(1.2 * coarse.lowNm);
    }
  });
});

describe('the next size', () => {
  test('is larger, and of the same family, as the docstring gives it', () => {
    for (const [old, next] of [
      ['1/4-20', '5/16-18'],
      ['M8×1.25', 'M10×1.5'],
      ['7/16-14', '1/2-20'],
    ] as const) {
      const found = nextSize(parseThread(old))!;
      expect(found.name).toBe(next);
      expect(found.majorMm).toBeGreaterThan(parseThread(old).majorMm);
    }
  });
});

describe('which wrench', () => {
  const wrenches = '1/4 drive: 20-200 in-lb ±4 %; 1/2 drive: 20-150 ft-lb 3%;';
  // 20 to 100 % of the range, common practice of torque wrench makers
  test('each is judged by name, the trailing semicolon and a missing ± are no matter', () => {
    const judged = answer('wrench-fit', { torque: '140 in-lb', wrenches }, 'judged')!;
    const items = judged.value.type === 'list' ? judged.value.items : [];
    expect(items).toHaveLength(2);
    expect(items.find((each) => each.startsWith('1/4 drive: fit, '))).toBeTruthy();
    expect(items.find((each) => each.startsWith('1/2 drive: not fit, '))).toBeTruthy();
    expect(answer('wrench-fit', { torque: '140 in-lb', wrenches }, 'best')!.value).toMatchObject({
      text: '1/4 drive',
    });
  });

  test('when none is fit that is said, and no torque that arrives', () => {
    const given = { torque: '300 ft-lb', wrenches };
    expect(answer('wrench-fit', given, 'best')!.value).toMatchObject({ text: 'none of these' });
    expect(answer('wrench-fit', given, 'arrives-least')).toBeUndefined();
    expect(() => run(sheet('wrench-fit'), { torque: '140 in-lb', wrenches: ' ; ' })).toThrow(
      'none was given',
    );
  });
});

describe('what a torque, a hole and a direction come to', () => {
  // JCGM 100:2008, 5.1.2, in quadrature by hand: √(0.25² + (1 − 0.20/0.30)²) = 0.41667; √(0.25² + 0.2²) = 0.32016
  test('the least clamp load is that at the highest friction of its spread, the most that at the lowest', () => {
    const [least, most] = clampRange(10_000, 0.25, { taken: 0.2, low: 1 / 6, high: 0.3 });
    expect(least).toBeCloseTo(5_833.3, 1);
    expect(most).toBeCloseTo(13_201.6, 1);
    expect(clampRange(10_000, 0.25)).toEqual([7_500, 12_500]);
  });

  // the tap drill charts of handbooks: F for 5/16-18 and 5/16 in for 3/8-16, from memory
  test('the next size of an inch bolt names its drill as a drill chart does', () => {
    const drillOf = (name: string) =>
      repairWays({ form: threads.find((t) => t.name === name)!, metal: 'aluminum' })
        .find(({ way }) => way === 'next size')!
        .steps[0]!.split(',')[0];
    expect(drillOf('1/4-20')).toBe('drill F');
    expect(drillOf('5/16-18')).toBe('drill 5/16 in');
  });

  test('two diameters are never more than a quarter turn apart', () => {
    expect(diametersApart(0, (3 / 4) * Math.PI)).toBeCloseTo(Math.PI / 4, 12);
    expect(diametersApart(0, Math.PI)).toBeCloseTo(0, 12);
    expect(diametersApart(0.1, 0.1 + Math.PI / 2)).toBeCloseTo(Math.PI / 2, 12);
  });

  test('a hole in the very middle goes first and has none across from it', () => {
    const at = (xMm: number, yMm: number) => ({ xMm, yMm });
    const order = centerOut([at(-60, 0), at(-20, 0), at(0, 0), at(21, 0), at(60, 0)]);
    expect(order[0]).toBe(2);
    expect([order[1], order[2]].sort()).toEqual([1, 3]);
    expect([order[3], order[4]].sort()).toEqual([0, 4]);
  });

  test('holes measured a little off are tightened as if they were even, much off by where they are', () => {
    const flange = (degrees: readonly number[]) =>
      degrees.map((d) => ({
        xMm: 50 * Math.cos((d * Math.PI) / 180),
        yMm: 50 * Math.sin((d * Math.PI) / 180),
      }));
    const even = tighteningOrder(flange([0, 60, 120, 180, 240, 300]));
    expect(tighteningOrder(flange([0, 63, 118, 181, 239, 302])).order).toEqual(even.order);
  });
});
