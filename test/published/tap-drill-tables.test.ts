import { describe, expect, test } from 'vitest';
import { tapDrill, tapHoleMm } from '../../src/fasten/tap-drill.js';
import { mmPerInch } from '../../src/fasten/thread-form.js';
import { threads } from '../../src/fasten/threads.js';

describe("the trade's tap drill tables, about 75 % of thread", () => {
  const inch = threads.filter(({ system }) => system === 'inch');
  test.each(inch.map(({ name, usualDrill }) => [name, usualDrill] as const))(
    '%s: the nearest drill by the rule is %s (from memory, recomputed; UNC sizes seen)',
    (name, usual) => {
      expect(tapDrill(threads.find((each) => each.name === name)!).inch.drill.name).toBe(usual);
    },
  );

  const metric = threads.filter(({ system }) => system === 'metric');
  // the metric tables take d − P, which is 77 %, so the rule may land one step higher
  test.each(metric.map(({ name, usualDrill }) => [name, usualDrill] as const))(
    '%s: %s within 0.11 mm of the rule (from memory, recomputed)',
    (name, usual) => {
      const holeMm = tapHoleMm(threads.find((each) => each.name === name)!);
      expect(Math.abs(holeMm - Number.parseFloat(usual))).toBeLessThan(0.11);
    },
  );

  test.each([
    ['#8-32', 0.136],
    ['#10-24', 0.1495],
    ['#10-32', 0.159],
    ['1/4-20', 0.201],
    ['1/4-28', 0.213],
    ['5/16-18', 0.257],
    ['5/16-24', 0.272],
    ['3/8-16', 0.3125],
    ['3/8-24', 0.332],
    ['7/16-14', 0.368],
    ['1/2-13', 0.4219],
  ] as const)(
    'd − 0.01299·75/n for %s is within 0.0035 in of the table drill, %f in (calculated)',
    (name, drillIn) => {
      const holeIn = tapHoleMm(threads.find((each) => each.name === name)!) / mmPerInch;
      expect(Math.abs(holeIn - drillIn)).toBeLessThan(0.0035);
    },
  );
});
