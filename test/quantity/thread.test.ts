import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseThread } from '../../src/quantity/index.js';
import { expectRefusal } from './refusal.js';

const inch: readonly (readonly [
  name: string,
  majorIn: number,
  threadsPerInch: number,
  texts: readonly string[],
])[] = [
  [
    '5/16-18',
    5 / 16,
    18,
    [
      '5/16-18',
      '5/16-18 UNC',
      '5/16"-18',
      '5/16 - 18',
      '5/16x18',
      '5/16 x 18',
      '5/16 UNC',
      '.3125-18',
      '.312-18',
      '5/16-18 UNC-2A',
      '5/16-18UNC',
      '5/16 in-18',
      '5/16-18 tpi',
    ],
  ],
  ['5/16-24', 5 / 16, 24, ['5/16-24', '5/16-24 UNF', '5/16 UNF', '5/16-24 NF', '5/16-24 UNF-2B']],
  [
    '1/4-20',
    1 / 4,
    20,
    ['1/4-20', '1/4"-20', '.250-20', '0.25-20', '¼-20', '1/4-20 UNC', '1/4″-20', "1/4''-20", '1/4-20unc'],
  ],
  [
    '#10-24',
    0.19,
    24,
    [
      '#10-24',
      '10-24',
      'No. 10-24',
      'No 10-24',
      'no.10-24',
      '# 10-24',
      '#10 UNC',
      '10-24 UNC',
      'Number 10-24',
    ],
  ],
  ['#10-32', 0.19, 32, ['#10-32', '10-32', '10-32 UNF', '#10 UNF']],
  ['#8-32', 0.164, 32, ['#8-32', '8-32', 'No. 8-32']],
  ['#6-32', 0.138, 32, ['6-32']],
  ['#1-64', 0.073, 64, ['1-64', '#1-64']],
  ['1-8', 1, 8, ['1-8', '1"-8', '1-8 UNC', '1 UNC']],
  ['1-1/4-7', 1.25, 7, ['1-1/4-7', '1 1/4-7', '1-1/4"-7', '1.25-7']],
  ['7/16-20', 7 / 16, 20, ['7/16-20', '7/16-20 UNF']],
];

describe('inch markings (ASME B1.1, from memory)', () => {
  test.each(inch)('%s', (name, majorIn, threadsPerInch, texts) => {
    for (const text of texts) {
      const thread = parseThread(text);
      expect(thread, text).toMatchObject({ system: 'inch', name, threadsPerInch, written: text });
      expect(thread.majorMm, text).toBeCloseTo(majorIn * 25.4, 12);
      expect(thread.pitchMm, text).toBeCloseTo(25.4 / threadsPerInch, 12);
    }
  });

  test('a numbered size is 0.060 + 0.013·n in across', () => {
    for (const [n, tpi] of [
      [0, 80],
      [2, 56],
      [4, 40],
      [5, 40],
      [12, 24],
    ] as const) {
      expect(parseThread(`#${n}-${tpi}`).majorMm / 25.4).toBeCloseTo(0.06 + 0.013 * n, 12);
    }
  });
});

const metric: readonly (readonly [
  name: string,
  majorMm: number,
  pitchMm: number,
  texts: readonly string[],
])[] = [
  [
    'M8×1.25',
    8,
    1.25,
    [
      'M8x1.25',
      'M8×1.25',
      'M8X1.25',
      'm8x1.25',
      'M8-1.25',
      'M8 x 1.25',
      'M 8 × 1.25',
      'M8x1,25',
      'M8*1.25',
      'M8 1.25',
      'M8',
      'm8',
      'M8x1.25-6g',
      'M8-6H',
      'M8x1.25 mm',
    ],
  ],
  ['M8×1', 8, 1, ['M8x1', 'M8×1.0']],
  ['M14×1.25', 14, 1.25, ['M14x1.25', 'M14×1.25']],
  ['M5×0.8', 5, 0.8, ['M5', 'M5x0.8', 'M5x.8']],
  ['M3.5×0.6', 3.5, 0.6, ['M3.5', 'M3,5', 'M3.5x0.6']],
];

describe('metric markings (ISO 261, from memory)', () => {
  test.each(metric)('%s', (name, majorMm, pitchMm, texts) => {
    for (const text of texts) {
      const thread = parseThread(text);
      expect(thread, text).toMatchObject({ system: 'metric', name, majorMm, pitchMm, written: text });
      expect(thread.threadsPerInch).toBeUndefined();
    }
  });

  test.each([
    [3, 0.5],
    [4, 0.7],
    [5, 0.8],
    [6, 1],
    [7, 1],
    [8, 1.25],
    [10, 1.5],
    [12, 1.75],
    [14, 2],
  ])('M%d without a pitch has the coarse pitch %d, and says that it was assumed', (size, pitch) => {
    expect(parseThread(`M${size}`)).toMatchObject({ pitchMm: pitch, pitchFrom: 'ISO 261 coarse' });
    expect(parseThread(`M${size}x${pitch}`).pitchFrom).toBeUndefined();
  });
});

test('a left-hand thread says so and keeps its name', () => {
  expect(parseThread('7/16-20 LH')).toMatchObject({ name: '7/16-20', leftHand: true });
  expect(parseThread('M10x1.25 left hand')).toMatchObject({ name: 'M10×1.25', leftHand: true });
  expect(parseThread('7/16-20')).not.toHaveProperty('leftHand');
});

test('the name of a thread is a marking of the same thread', () => {
  const inchThread = fc
    .tuple(
      fc.constantFrom('#8', '#10', '#12', '1/4', '5/16', '3/8', '7/16', '1/2', '9/16', '5/8', '3/4'),
      fc.constantFrom(24, 28, 32, 36),
    )
    .map(([size, tpi]) => `${size}-${tpi}`);
  const metricThread = fc
    .tuple(fc.integer({ min: 4, max: 20 }), fc.constantFrom(0.5, 0.7, 0.75, 0.8, 1))
    .map(([size, pitch]) => `M${size}x${pitch}`);
  fc.assert(
    fc.property(fc.oneof(inchThread, metricThread), (marking) => {
      const { written: _, ...thread } = parseThread(marking);
      expect(parseThread(thread.name)).toEqual({ ...thread, written: thread.name });
    }),
    { seed: 261, numRuns: 500 },
  );
});

describe('refuse, never guess', () => {
  test('an inch size alone leaves coarse and fine open', () => {
    expectRefusal(() => parseThread('5/16'), 'ambiguous', '5/16-18 (UNC) or 5/16-24 (UNF)');
    expectRefusal(() => parseThread('#10'), 'ambiguous', '#10-24 (UNC) or #10-32 (UNF)');
    expectRefusal(() => parseThread('10'), 'ambiguous', '#10-24');
  });

  test('a series that contradicts the pitch is refused', () => {
    expectRefusal(() => parseThread('5/16-18 UNF'), 'ambiguous', '5/16 UNF has 24 threads an inch, not 18');
  });

  test('a metric size without a standard coarse pitch is refused', () => {
    expectRefusal(() => parseThread('M9'), 'ambiguous', 'M9×1');
  });

  test('a bolt length written as pitch is refused', () => {
    expectRefusal(() => parseThread('M8x25'), 'out-of-range', 'pitch of 25 mm', 'length');
    expectRefusal(() => parseThread('5/16-1'), 'out-of-range', '1 threads an inch is too coarse');
  });

  test('a pitch with a slipped digit is refused', () => {
    expectRefusal(() => parseThread('5/16-180'), 'out-of-range', 'too fine');
    expectRefusal(() => parseThread('M8x0.125'), 'out-of-range', 'too fine');
  });

  test.each(['1/8-27 NPT', '1/8 NPT', '1/8-27', '1/4-18', 'G1/4', 'R 1/8', '1/4 BSP', '3/8-18 NPTF'])(
    '%s is a pipe thread',
    (text) => {
      expectRefusal(() => parseThread(text), 'ambiguous', 'pipe thread');
    },
  );

  test.each(['foo', '5/16-18-20', '140 in-lb', 'M', 'Mx1', '5/16 BSW', '-', 'M8x1.25x25', '#'])(
    '%s is no marking known here',
    (text) => {
      expectRefusal(() => parseThread(text), 'unknown-unit', text, '5/16-18');
    },
  );

  test('nothing written is refused', () => {
    expectRefusal(() => parseThread('  '), 'empty');
  });
});
