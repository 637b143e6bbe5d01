import { describe, expect, test } from 'vitest';
import { printText, quantityWorksheets, run } from '../../src/worksheet/index.js';
import { checkExample } from '../support/check-example.js';

const examples = quantityWorksheets.flatMap((worksheet) =>
  worksheet.examples.map((example) => ({ worksheet, example })),
);

describe('the examples of the unit and thread worksheets', () => {
  test.each(examples)(
    '$worksheet.id: $example.title ($example.source; $example.mark)',
    ({ worksheet, example }) => {
      const checks = checkExample(worksheet, example);
      expect(checks.length).toBeGreaterThan(0);
      expect(checks.filter((check) => !check.ok)).toEqual([]);
    },
  );
});

function lines(id: string, given: Record<string, string>, system?: 'inch' | 'metric'): readonly string[] {
  const worksheet = quantityWorksheets.find((each) => each.id === id) ?? expect.fail(`no worksheet ${id}`);
  return printText(run(worksheet, given), system);
}

describe('convert', () => {
  test("says what it read, the other system's unit and seven figures", () => {
    expect(lines('convert', { quantity: '180 in-lb' })).toEqual([
      'Read as: torque, 180 in-lb',
      'Converted: 20.3 N·m',
      'To seven figures: 20.33727 N·m',
    ]);
    expect(lines('convert', { quantity: '0.76 mm' })[1]).toBe('Converted: 0.0299 in');
  });

  test("the unit wanted stands whatever the reader's system", () => {
    expect(lines('convert', { quantity: '20 N·m', unit: 'kgf m' }, 'inch')[1]).toBe('Converted: 2.04 kgf·m');
  });

  test('the unit wanted settles what a word means', () => {
    expect(lines('convert', { quantity: '20 oz', unit: 'mL' })[0]).toBe('Read as: volume, 20 fl oz');
    expect(lines('convert', { quantity: '20 oz', unit: 'g' })[0]).toBe('Read as: mass, 20 oz');
  });

  test('a unit shared by both systems goes to SI and back', () => {
    expect(lines('convert', { quantity: '3600 rpm' })[1]).toBe('Converted: 377 rad/s');
    expect(lines('convert', { quantity: '377 rad/s' })[1]).toBe('Converted: 3600 rpm');
  });

  test('which water or mercury is meant is said', () => {
    expect(lines('convert', { quantity: '4 inH2O', unit: 'inHg' })[1]).toContain(
      'conventional water, 1000 kg/m³ (4 °C)',
    );
  });

  test('inches into a pressure are asked for their fluid', () => {
    expect(() => lines('convert', { quantity: '4 in', unit: 'psi' })).toThrow(/Quantity: .*inches of what\?/);
  });

  test('an unknown unit wanted is named by its own field', () => {
    expect(() => lines('convert', { quantity: '4 in', unit: 'quux' })).toThrow(
      /Unit wanted: "quux" is not a unit/,
    );
  });
});

test('a torque stands on every kind of wrench at once, whatever the system', () => {
  const four = ['in-lb: 140 in-lb', 'ft-lb: 11.7 ft-lb', 'N·m: 15.8 N·m', 'kgf·m: 1.61 kgf·m'];
  expect(lines('torque-units', { torque: '140 in-lb' }, 'inch')).toEqual(four);
  expect(lines('torque-units', { torque: '140 in-lb' }, 'metric')).toEqual(four);
});

describe('thread-name', () => {
  test('a marking in full', () => {
    expect(lines('thread-name', { marking: '5/16"-18 UNC' })).toEqual([
      'Thread: 5/16-18 (pitch as written)',
      'Diameter over the crests: 0.3125 in',
      'Pitch: 0.0556 in',
      'Threads an inch: 18',
      'Hand: right',
    ]);
  });

  test('a pitch that nobody wrote is said to be assumed', () => {
    expect(lines('thread-name', { marking: 'M8' })[0]).toBe(
      'Thread: M8×1.25 (no pitch written: ISO 261 coarse)',
    );
    expect(lines('thread-name', { marking: '7/16 UNF LH' })).toContain('Hand: left');
  });
});
