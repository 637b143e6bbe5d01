import { describe, expect, test } from 'vitest';
import { requirePlausibleTorque, torqueBounds } from '../../src/fasten/plausible.js';
import { plugTorqueExtremes } from '../../src/fasten/spark-plug.js';
import { threads } from '../../src/fasten/threads.js';
import { parse, parseThread, QuantityError } from '../../src/quantity/index.js';

const believe = (torque: string, thread: string) =>
  requirePlausibleTorque(parse(torque, 'torque'), parseThread(thread));
const refusal = (torque: string, thread: string) => {
  try {
    believe(torque, thread);
  } catch (error) {
    if (error instanceof QuantityError) return error;
  }
  throw new Error(`${torque} on ${thread} was believed`);
};

describe('torque that can be meant', () => {
  test('140 ft-lb on 5/16-18 is refused, and 140 in-lb named as likely', () => {
    const error = refusal('140 ft-lb', '5/16-18');
    expect(error.code).toBe('implausible');
    expect(error.message).toMatch(/140 ft-lb is far above what a 5\/16-18 bolt takes/);
    expect(`${error.message} ${error.hint}`).toMatch(/140 in-lb would be plausible/);
  });

  test('15 in-lb on 5/16-18 is refused, and foot-pounds named as likely', () => {
    expect(`${refusal('15 in-lb', '5/16-18').hint}`).toMatch(/15 ft-lb/);
  });

  test('a torque that can be meant comes back as it was', () => {
    const torque = parse('140 in-lb', 'torque');
    expect(requirePlausibleTorque(torque, parseThread('5/16-18'))).toBe(torque);
  });

  // ranges found in small-engine manuals, common practice; the thread is the usual one of the place
  test.each([
    ['12 in-lb', '#10-24'],
    ['20 in-lb', '#10-32'],
    ['45 in-lb', '1/4-20'],
    ['80 in-lb', '1/4-28'],
    ['60 in-lb', 'M6'],
    ['150 in-lb', 'M8'],
    ['140 in-lb', '1/4-20'],
    ['95 in-lb', '1/4-20'],
    ['230 in-lb', '5/16-18'],
    ['95 in-lb', 'M14×1.25'],
    ['264 in-lb', 'M14×1.25'],
    ['20 ft-lb', 'M14×1.25'],
    ['75 ft-lb', '7/16-20'],
    ['45 ft-lb', '3/8-24'],
  ])('%s on %s is believed (common practice)', (torque, thread) => {
    expect(believe(torque, thread).written).toBe(torque);
  });

  test.each([
    ['230 ft-lb', '5/16-18'],
    ['150 ft-lb', 'M8'],
    ['95 ft-lb', '1/4-20'],
    ['180 ft-lb', 'M14×1.25'],
    ['20 in-lb', 'M14×1.25'],
    ['60 ft-lb', 'M6'],
    ['20 ft-lb', '#10-32'],
  ])('%s on %s is not believed', (torque, thread) => {
    expect(refusal(torque, thread).code).toBe('implausible');
  });

  test('the bounds rise with the size within a series, and low lies far under high', () => {
    for (const series of ['UNC', 'UNF', 'metric coarse'] as const) {
      const bounds = threads.filter((each) => each.series.includes(series)).map(torqueBounds);
      bounds.slice(1).forEach((each, i) => {
        expect(each.lowNm).toBeGreaterThan(bounds[i]!.lowNm);
        expect(each.highNm).toBeGreaterThan(bounds[i]!.highNm);
      });
      for (const { lowNm, highNm } of bounds) expect(highNm / lowNm).toBeGreaterThan(10);
    }
  });

  test('every torque printed for a plug is believed on its thread', () => {
    for (const thread of threads) {
      const printed = plugTorqueExtremes(thread);
      if (!printed) continue;
      const { lowNm, highNm } = torqueBounds(thread);
      expect(printed.lowNm).toBeGreaterThan(lowNm);
      expect(printed.highNm).toBeLessThan(highNm);
    }
  });
});
