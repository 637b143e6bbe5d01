import { describe, expect, it } from 'vitest';
import { type Instrument, pool, type Reading, standardU } from '../../src/gauge/index.js';
import { of, to } from '../../src/quantity/index.js';

const micrometer: Instrument = {
  name: 'micrometer 2 to 3 in',
  resolution: of(0.0001, 'in'),
  expandedU: of(0.0002, 'in'),
  zeroError: of(0.0003, 'in'),
};
const reading = (inches: number, more: Partial<Reading> = {}): Reading => ({
  value: of(inches, 'in'),
  instrument: micrometer,
  place: 'skirt',
  direction: 'across the pin',
  ...more,
});

describe('a reading', () => {
  it('loses the zero error of its instrument and gains its uncertainty and origin', () => {
    const { quantity } = pool([reading(2.5588)]);
    expect(to(quantity, 'in')).toBeCloseTo(2.5585, 12);
    expect(quantity.u! / 0.0254).toBeCloseTo(0.0001, 12);
    expect(quantity.origin).toEqual({ from: 'measured', detail: 'micrometer 2 to 3 in' });
    expect(quantity.unit).toBe('in');
  });

  it('is never surer than the resolution allows', () => {
    const rule: Instrument = { name: 'rule', resolution: of(1, 'mm'), expandedU: of(0.1, 'mm') };
    expect(standardU(rule)).toBeCloseTo(0.001 / Math.sqrt(12), 12);
  });

  it('comes to 20 °C when temperature and material are written down', () => {
    const warm = { temperature: of<'temperature'>(30, '°C'), material: 'aluminum' as const };
    const { quantity, budget } = pool([reading(2.5588, warm)]);
    expect(to(quantity, 'in')).toBeCloseTo((2.5585 * (1 + 115e-6)) / (1 + 215e-6), 10);
    expect(budget.shares.map(({ name }) => name)).toContain('temperature');
    expect(to(pool([reading(2.5588, { temperature: warm.temperature })]).quantity, 'in')).toBeCloseTo(
      2.5585,
      12,
    );
  });
});

describe('repeats pooled', () => {
  const three = [reading(2.5588), reading(2.559), reading(2.5589)];

  it('give the mean, the scatter, and an uncertainty in which the instrument does not shrink', () => {
    const { quantity, count, scatter, suspicious } = pool(three);
    expect(to(quantity, 'in')).toBeCloseTo(2.5586, 10);
    expect(count).toBe(3);
    expect(scatter / 0.0254).toBeCloseTo(0.0001, 10);
    expect(quantity.u! / 0.0254).toBeCloseTo(Math.hypot(0.0001, 0.0001 / Math.sqrt(3)), 10);
    expect(suspicious).toBe(false);
    expect(quantity.origin?.detail).toBe('micrometer 2 to 3 in, mean of 3');
  });

  it('are suspicious when they scatter more than the instrument explains', () => {
    expect(pool([reading(2.5588), reading(2.5595)]).suspicious).toBe(true);
  });

  it('add the uncertainty of the zero as a line of its own', () => {
    const instrument = { ...micrometer, zeroExpandedU: of(0.0004, 'in') };
    const { quantity, budget } = pool(three.map((one) => ({ ...one, instrument })));
    expect(budget.shares.map(({ name }) => name)).toEqual(['micrometer 2 to 3 in', 'scatter', 'zero']);
    expect(quantity.u! / 0.0254).toBeCloseTo(Math.hypot(0.0001, 0.0001 / Math.sqrt(3), 0.0002), 10);
  });

  it('keep a unit with an offset', () => {
    const thermometer: Instrument = { name: 'thermometer', resolution: of(1, 'K'), expandedU: of(2, 'K') };
    const { quantity } = pool([{ value: of(68, '°F'), instrument: thermometer }]);
    expect(to(quantity, '°F')).toBeCloseTo(68, 9);
    expect(quantity.u).toBeCloseTo(1, 9);
  });

  it('of different places, directions, instruments or kinds are refused by name', () => {
    expect(() => pool([reading(1), reading(1, { place: 'crown' })])).toThrow('share their place');
    expect(() => pool([reading(1), reading(1, { direction: 'along' })])).toThrow('share their direction');
    expect(() => pool([reading(1), reading(1, { instrument: { ...micrometer, name: 'caliper' } })])).toThrow(
      'share their instrument',
    );
    expect(() => pool([reading(1), reading(1, { value: of(1, 'psi') })])).toThrow('share their kind');
    expect(() => pool([reading(1, { value: of(1, 'psi') })])).toThrow('measures length, not pressure');
    expect(() => pool([])).toThrow('At least one');
  });
});
