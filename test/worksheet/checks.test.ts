import { describe, expect, test } from 'vitest';
import { ask, type Example, type Expected, type Worksheet } from '../../src/worksheet/index.js';
import { checkExample } from '../support/check-example.js';
import { sheet } from './sheet.js';

const torqueField = ask.quantity('torque', 'Torque', 'For the test.');

const doubling = sheet({ torque: torqueField }, ({ torque }) => [
  {
    id: 'twice',
    label: 'Twice',
    value: { type: 'quantity', quantity: { kind: 'torque', si: torque.si * 2, unit: 'in-lb' } },
    origin: { from: 'computed' },
  },
  { id: 'times', label: 'Times', value: { type: 'number', number: 2 }, origin: { from: 'computed' } },
  {
    id: 'fits',
    label: 'Fits',
    value: { type: 'verdict', verdict: 'pass', text: 'it fits' },
    origin: { from: 'computed' },
  },
]);

function ok(
  expect: Readonly<Record<string, Expected>>,
  torque = '70 in-lb',
  worksheet: Worksheet = doubling,
): readonly boolean[] {
  const example: Example = {
    title: 'twice',
    given: { torque },
    expect,
    source: 'arithmetic',
    mark: 'calculated',
  };
  return checkExample(worksheet, example).map((check) => check.ok);
}

describe('an example is checked', () => {
  test('against a figure within its tolerance, in the unit named', () => {
    expect(ok({ twice: { value: 140, unit: 'in-lb', tolerance: 0.001 } })).toEqual([true]);
    expect(ok({ twice: { value: 140, tolerance: 0.001 } })).toEqual([true]);
    expect(ok({ twice: { value: 15.8, unit: 'N·m', tolerance: 0.05 } })).toEqual([true]);
    expect(ok({ times: { value: 2, tolerance: 0 } })).toEqual([true]);
  });

  test('and fails outside the tolerance, in another kind, for an answer that is not there', () => {
    expect(ok({ twice: { value: 140.1, unit: 'in-lb', tolerance: 0.05 } })).toEqual([false]);
    expect(ok({ twice: { value: 140, unit: 'psi', tolerance: 1 } })).toEqual([false]);
    expect(ok({ times: { value: 2, unit: 'in-lb', tolerance: 1 } })).toEqual([false]);
    expect(ok({ thrice: { value: 210, tolerance: 1 } })).toEqual([false]);
    expect(ok({ fits: { value: 1, tolerance: 1 } })).toEqual([false]);
    expect(ok({ twice: { value: 140, tolerance: Number.NaN } })).toEqual([false]);
  });

  test('against a text: the printed answer, or of a verdict its word', () => {
    expect(ok({ twice: { text: '140 in-lb' } })).toEqual([true]);
    expect(ok({ fits: { text: 'pass' } })).toEqual([true]);
    expect(ok({ fits: { text: 'it fits' } })).toEqual([true]);
    expect(ok({ fits: { text: 'fail' } })).toEqual([false]);
    expect(ok({ twice: { text: '140' } })).toEqual([false]);
  });

  test('against a refusal, by the field refused', () => {
    expect(ok({ torque: { refused: 'torque wanted' } }, '70 psi')).toEqual([true]);
    expect(ok({ torque: { refused: 'other words' } }, '70 psi')).toEqual([false]);
    expect(ok({ wrench: { refused: 'torque wanted' } }, '70 psi')).toEqual([false]);
    expect(ok({ torque: { refused: 'torque wanted' } })).toEqual([false]);
  });

  test('a refusal where figures were due fails every figure and says why', () => {
    const example: Example = {
      title: 'refused',
      given: { torque: '70 psi' },
      expect: { twice: { value: 1, tolerance: 1 }, times: { text: '2' } },
      source: 'arithmetic',
      mark: 'calculated',
    };
    const checks = checkExample(doubling, example);
    expect(checks.map((check) => check.ok)).toEqual([false, false]);
    for (const check of checks) expect(check.got).toContain('torque wanted, pressure given');
  });

  test('what was expected and what was got stand side by side', () => {
    const example: Example = {
      title: 'beside',
      given: { torque: '70 in-lb' },
      expect: { twice: { value: 15.8, unit: 'N·m', tolerance: 0.05 } },
      source: 'arithmetic',
      mark: 'calculated',
    };
    expect(checkExample(doubling, example)).toEqual([
      { answer: 'twice', expected: '15.8 N·m ± 0.05', got: '15.8179 N·m', ok: true },
    ]);
  });

  test('a fault in a worksheet is not mistaken for a refusal', () => {
    const broken = sheet({ torque: torqueField }, () => {
      throw new TypeError('a fault of ours');
    });
    expect(() => ok({ torque: { refused: 'fault' } }, '70 in-lb', broken)).toThrow(TypeError);
  });
});
