import { describe, expect, test } from 'vitest';
import { desk } from '../../src/desk/index.js';
import { nameThread } from '../../src/fasten/name-thread.js';
import { passes } from '../../src/fasten/passes.js';
import { torqueBounds } from '../../src/fasten/plausible.js';
import { plugTorque } from '../../src/fasten/spark-plug.js';
import { nextSize } from '../../src/fasten/thread-repair.js';
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
