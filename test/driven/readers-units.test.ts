import { expect, test } from 'vitest';
import { worksheets } from '../../src/driven/worksheets.js';
import { printJson, run } from '../../src/worksheet/index.js';

/** The words of a sheet's verdict, as readers of each system are told them. */
function verdictOf(id: string, given: Record<string, string>) {
  const answers = run(worksheets.find((w) => w.id === id)!, given);
  const told = (system: 'inch' | 'metric') =>
    printJson(answers, system).find((a) => a.id === 'verdict')!.text;
  return { inch: told('inch'), metric: told('metric') };
}

test('a belt’s tension is told in pounds to readers of inches, in newtons to others', () => {
  const given = {
    ...{ one: '7.4 in', other: '11 in', centers: '42.4 in', speed: '1750 rpm', power: '12 hp', belts: '3' },
    ...{ mass: '0', force: '2.5 lbf' },
  };
  const { inch, metric } = verdictOf('belt-tension', given);
  expect(inch).toMatch(/ lbf/);
  expect(inch).not.toMatch(/\d N\b/);
  expect(metric).toMatch(/\d N\b/);
  expect(metric).not.toMatch(/lbf/);
});

test('what is left at a pump is told in feet or in meters, and both say the same', () => {
  const given = { lift: '8 m', flow: '10 gal/min', hose: '2 in', length: '9 m' };
  const { inch, metric } = verdictOf('suction-lift', given);
  expect(inch).toMatch(/ ft/);
  expect(inch).not.toMatch(/\d m\b/);
  // 1 m is 3.28084 ft exactly by definition of the international foot
  const first = (text: string) => Number(/(-?[\d.]+) (?:m|ft) lies/.exec(text)?.[1]);
  expect(first(inch) / first(metric)).toBeCloseTo(3.28, 0);
});

test('the speed that oil lines are laid out for is told in feet or meters a second', () => {
  const { inch, metric } = verdictOf('oil-line', { flow: '10 gal/min', hose: '1/2 in' });
  expect(inch).toMatch(/ft\/s/);
  expect(inch).not.toMatch(/ m\/s/);
  expect(metric).toMatch(/ m\/s/);
});
