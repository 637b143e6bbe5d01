import { describe, expect, test } from 'vitest';
import { inchDrills } from '../../src/fasten/drills.js';
import { mmPerInch } from '../../src/fasten/thread-form.js';

const named = (name: string) => inchDrills.find((drill) => drill.name === name);

describe('ASME B94.11M: number and letter drills', () => {
  test.each([
    ['#1', 0.228],
    ['#2', 0.221],
    ['#3', 0.213],
    ['#4', 0.209],
    ['#7', 0.201],
    ['#10', 0.1935],
    ['#21', 0.159],
    ['#25', 0.1495],
    ['#29', 0.136],
    ['#35', 0.11],
    ['#43', 0.089],
    ['#53', 0.0595],
    ['F', 0.257],
    ['U', 0.368],
    ['X', 0.397],
    ['A', 0.234],
    ['Z', 0.413],
  ] as const)('%s is %f in (seen)', (name, inches) => {
    expect(named(name)!.diameterMm / mmPerInch).toBeCloseTo(inches, 9);
  });

  test.each([
    ['I', 0.272],
    ['Q', 0.332],
    ['#60', 0.04],
    ['27/64 in', 0.4219],
    ['5/16 in', 0.3125],
  ] as const)('%s is %f in (from memory)', (name, inches) => {
    expect(named(name)!.diameterMm / mmPerInch).toBeCloseTo(inches, 4);
  });

  test('numbers fall and letters rise in size without a break in order (from memory)', () => {
    const sizes = (set: string) => inchDrills.filter((drill) => drill.set === set);
    const numbers = sizes('number').map(({ name }) => Number(name.slice(1)));
    const letters = sizes('letter').map(({ name }) => name);
    expect(numbers).toEqual(Array.from({ length: 60 }, (_, i) => 60 - i));
    expect(letters).toEqual([...letters].sort());
    expect(letters).toHaveLength(26);
  });
});
