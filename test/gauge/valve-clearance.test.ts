import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adjusterTurn, cutAgrees, stemShortening } from '../../src/gauge/index.js';
import { campaign } from '../support/campaign.js';

const side = { u: 0.0003, min: 0.005, max: 0.007, unit: 'in' };
const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('shortening a side-valve stem', () => {
  it('aims at the middle of the range and takes half of it first', () => {
    const found = stemShortening({ ...side, measured: 0.002 });
    expect(found.action).toBe('shorten stem');
    expect(found.remove).toBeCloseTo(0.004, 12);
    expect(found.firstCut).toBeCloseTo(0.002, 12);
  });

  it('is never the answer to a clearance that is too wide', () => {
    const found = stemShortening({ ...side, measured: 0.012 });
    expect(found).toMatchObject({ action: 'cut seat or fit another valve', remove: 0, firstCut: 0 });
    expect(found.words).toContain('never grind the stem');
  });

  it('is not done when the clearance is right, or may be', () => {
    expect(stemShortening({ ...side, measured: 0.006 }).action).toBe('leave');
    expect(stemShortening({ ...side, measured: 0.0051 }).action).toBe('measure better');
    expect(stemShortening({ ...side, measured: 0.0069 }).action).toBe('measure better');
  });

  it('takes stock off only below the range, and the first cut never overshoots the top, whatever is measured', () => {
    fc.assert(
      fc.property(finite(0, 0.02), finite(0, 0.003), (measured, u) => {
        const found = stemShortening({ ...side, measured, u });
        if (found.action !== 'shorten stem') {
          expect(found.remove).toBe(0);
          return;
        }
        expect(measured).toBeLessThan(side.min);
        expect(found.firstCut).toBeLessThanOrEqual(found.remove / 2 + 1e-15);
        expect(measured + found.firstCut).toBeLessThanOrEqual(side.max);
      }),
      { seed: 31, numRuns: campaign(400, 2000) },
    );
  });

  it('a very uncertain reading allows no cut at all', () => {
    expect(stemShortening({ ...side, measured: 0.004, u: 0.002 }).firstCut).toBe(0);
  });

  it('warns that no clearance at all hides how tight it is', () => {
    expect(stemShortening({ ...side, measured: 0 }).words).toContain('held off its seat');
  });

  it('refuses an empty range, half a range and a negative clearance', () => {
    expect(() => stemShortening({ ...side, measured: 0.002, max: 0.005 })).toThrow('is empty');
    expect(() => stemShortening({ ...side, measured: 0.002, max: Number.NaN })).toThrow(
      'both the least and the most',
    );
    expect(() => stemShortening({ ...side, measured: -0.001 })).toThrow('measured');
  });

  it('is checked afterwards: the clearance must have grown by what came off', () => {
    expect(cutAgrees({ before: 0.002, removed: 0.002, after: 0.004, u: 0.0003 }).agrees).toBe(true);
    const odd = cutAgrees({ before: 0.002, removed: 0.002, after: 0.002, u: 0.0003 });
    expect(odd.agrees).toBe(false);
    expect(odd.unexplained).toBeCloseTo(-0.002, 12);
    expect(cutAgrees({ before: 0.1, removed: 0.2, after: 0.3, u: 0 }).agrees).toBe(true);
  });
});

describe('turning a rocker adjuster', () => {
  const rocker = {
    measured: 0.05,
    u: 0.01,
    min: 0.08,
    max: 0.12,
    pitch: 0.75,
    rockerRatio: 1.3,
    at: 'push rod' as const,
  };

  it('opens or closes to the middle of the range', () => {
    const tight = adjusterTurn(rocker);
    expect(tight).toMatchObject({ action: 'open' });
    expect(tight.degrees).toBeCloseTo((360 * 0.05) / (1.3 * 0.75), 9);
    expect(adjusterTurn({ ...rocker, measured: 0.2 })).toMatchObject({ action: 'close' });
  });

  it('moves the valve end by r over the push rod, 1 + r at the pivot, 1 at the valve', () => {
    const turns = (at: 'push rod' | 'pivot' | 'valve') => adjusterTurn({ ...rocker, at }).turns;
    expect(turns('valve') / turns('push rod')).toBeCloseTo(1.3, 12);
    expect(turns('valve') / turns('pivot')).toBeCloseTo(2.3, 12);
  });

  it('leaves a clearance that is right', () =>
    expect(adjusterTurn({ ...rocker, measured: 0.1 })).toMatchObject({ action: 'leave', turns: 0 }));

  it('says so when the feelers cannot tell', () =>
    expect(adjusterTurn({ ...rocker, measured: 0.085 }).words).toContain('cannot tell'));

  it('refuses a pitch of nothing', () =>
    expect(() => adjusterTurn({ ...rocker, pitch: 0 })).toThrow('pitch'));
});
