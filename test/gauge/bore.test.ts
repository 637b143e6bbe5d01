import { describe, expect, it } from 'vitest';
import {
  type BoreReadings,
  boreMap,
  chooseOversize,
  classRingGap,
  gapClosing,
  gapInBore,
  growthFromGaps,
} from '../../src/gauge/index.js';

const worn: BoreReadings = {
  depths: [0.4, 1.2, 2],
  directions: ['along the crank', 'across the crank'],
  diameters: [
    [2.564, 2.5662],
    [2.5632, 2.5648],
    [2.5628, 2.563],
  ],
  standard: 2.5625,
  u: 0.00015,
  limits: { wear: 0.003, taper: 0.002, outOfRound: 0.0015 },
  unit: 'in',
};

describe('a bore map', () => {
  it('finds wear, taper and out-of-round, and where they are', () => {
    const map = boreMap(worn);
    expect(map.wear).toBeCloseTo(0.0037, 12);
    expect(map.largest).toMatchObject({ depth: 0.4, direction: 'across the crank' });
    expect(map.smallest).toMatchObject({ depth: 2, direction: 'along the crank' });
    expect(map.taper.value).toBeCloseTo(0.0032, 12);
    expect(map.taper.direction).toBe('across the crank');
    expect(map.outOfRound.value).toBeCloseTo(0.0022, 12);
    expect(map.outOfRound.depth).toBe(0.4);
    expect(map.outOfRoundByDepth.map((value) => Number(value.toFixed(4)))).toEqual([0.0022, 0.0016, 0.0002]);
    expect(map.cells).toHaveLength(6);
  });

  it('decides each against its limit', () => {
    const { decisions } = boreMap(worn);
    expect(decisions.wear?.verdict).toBe('fail');
    expect(decisions.taper?.verdict).toBe('fail');
    expect(decisions.outOfRound?.verdict).toBe('fail');
  });

  it('with a poor tool cannot decide what a good one fails', () => {
    const { decisions } = boreMap({ ...worn, u: 0.0007 });
    expect(decisions.wear?.verdict).toBe('cannot-decide');
    expect(decisions.taper?.verdict).toBe('cannot-decide');
    expect(decisions.outOfRound?.verdict).toBe('cannot-decide');
  });

  it('an error common to all readings counts for wear and drops out of taper', () => {
    const { decisions } = boreMap({ ...worn, common: 0.001 });
    expect(decisions.wear?.verdict).toBe('cannot-decide');
    expect(decisions.taper?.verdict).toBe('fail');
  });

  it('leaves out what one depth or one direction cannot show, and says so', () => {
    const one = boreMap({
      ...worn,
      directions: ['across'],
      diameters: worn.diameters.map((row) => [row[1]!]),
    });
    expect(one.decisions).not.toHaveProperty('outOfRound');
    expect(one.cautions.join(' ')).toContain('out-of-round was not measured');
    const shallow = boreMap({ ...worn, depths: [0.4], diameters: [worn.diameters[0]!] });
    expect(shallow.decisions).not.toHaveProperty('taper');
    expect(shallow.cautions.join(' ')).toContain('taper may hide');
  });

  it('refuses a missing reading, a reading of another engine, and rows that do not fit', () => {
    expect(() => boreMap({ ...worn, diameters: [[2.564], [2.563, 2.564], [2.563, 2.563]] })).toThrow(
      'depth 0.4, across the crank is missing',
    );
    expect(() => boreMap({ ...worn, diameters: [[65.1, 2.5662], ...worn.diameters.slice(1)] })).toThrow(
      'check unit and figure',
    );
    expect(() => boreMap({ ...worn, depths: [1] })).toThrow('1 depths but 3 rows');
  });
});

describe('the next oversize', () => {
  const question = {
    standard: 2.5625,
    largest: 2.5675,
    u: 0.00015,
    oversizes: [0.03, 0.01, 0.02],
    cleanUp: 0.002,
    center: 'worn' as const,
  };

  it('is the smallest that leaves stock for the hone', () => {
    const { choice, choices } = chooseOversize(question);
    expect(choice?.oversize).toBe(0.01);
    expect(choice?.finished).toBeCloseTo(2.5725, 12);
    expect(choice?.stock).toBeCloseTo(0.005, 12);
    expect(choices.map(({ oversize }) => oversize)).toEqual([0.01, 0.02, 0.03]);
  });

  it('on the old center needs twice the wear on one wall', () => {
    expect(chooseOversize({ ...question, center: 'old' }).choice?.oversize).toBe(0.02);
  });

  it('passes over a size that may or may not clean up, and says so', () => {
    const close = chooseOversize({ ...question, largest: 2.5704, u: 0.0003 });
    expect(close.choices[0]?.cleansUp.verdict).toBe('cannot-decide');
    expect(close.choice?.oversize).toBe(0.02);
    expect(close.words).toContain('may clean up too');
  });

  it('is none when the bore is too far gone', () => {
    const gone = chooseOversize({ ...question, largest: 2.6 });
    expect(gone).not.toHaveProperty('choice');
    expect(gone.words).toContain('sleeve');
  });

  it('never shrinks as the wear grows', () => {
    let last = 0;
    for (let wear = 0; wear < 0.026; wear += 0.0005) {
      const size =
        chooseOversize({ ...question, largest: 2.5625 + wear }).choice?.oversize ?? Number.POSITIVE_INFINITY;
      expect(size).toBeGreaterThanOrEqual(last);
      last = size;
    }
  });

  it('refuses an empty list and a size of nothing', () => {
    expect(() => chooseOversize({ ...question, oversizes: [] })).toThrow('No oversize');
    expect(() => chooseOversize({ ...question, oversizes: [0] })).toThrow('above 0');
  });
});

describe('a ring gap', () => {
  it('opens by π for each unit of bore, there and back', () => {
    expect(gapInBore(0.01, 2.5625, 2.5655)).toBeCloseTo(0.01 + 0.003 * Math.PI, 12);
    expect(gapInBore(gapInBore(0.01, 2.5, 2.6), 2.6, 2.5)).toBeCloseTo(0.01, 12);
  });

  it('and the growth of the bore follow from each other', () => {
    const { growth, u } = growthFromGaps(gapInBore(0.01, 2.5625, 2.5655), 0.01, 0.0005);
    expect(growth).toBeCloseTo(0.003, 12);
    expect(u).toBeCloseTo((0.0005 * Math.SQRT2) / Math.PI, 12);
  });

  it('refuses a bore in which the ends would overlap', () => {
    expect(() => gapInBore(0.01, 2.5625, 2.55)).toThrow('overlap');
  });

  it('closes when the ring runs hotter than the wall, and not at 20 °C', () => {
    const ring = {
      bore: 65.09,
      boreMaterial: 'cast iron',
      ringMaterial: 'cast iron',
      boreC: 150,
      ringC: 200,
    } as const;
    expect(gapClosing(ring)).toBeCloseTo(Math.PI * 65.09 * 11.4e-6 * 50, 9);
    expect(gapClosing({ ...ring, boreC: 20, ringC: 20 })).toBe(0);
    expect(gapClosing({ ...ring, boreMaterial: 'aluminum' })).toBeLessThan(0);
  });

  it('by the class rule is 0.0035 to 0.008 of the bore', () =>
    expect(classRingGap(3)).toEqual({ least: 0.0105, most: 0.024 }));
});
