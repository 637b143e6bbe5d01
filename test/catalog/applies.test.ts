import { describe, expect, test } from 'vitest';
import { applies } from '../../src/catalog/index.js';

describe('whether knowledge applies to a machine', () => {
  test.each([
    ['no condition holds always', undefined, {}, 'yes'],
    [
      'one of the architectures',
      { architecture: ['side-valve', 'overhead-valve'] },
      { architecture: 'side-valve' },
      'yes',
    ],
    ['another architecture', { architecture: ['two-stroke'] }, { architecture: 'side-valve' }, 'no'],
    ['an architecture nobody has seen', { architecture: ['two-stroke'] }, {}, 'unknown'],
    [
      'an architecture said to be unknown',
      { architecture: ['two-stroke'] },
      { architecture: 'unknown' },
      'unknown',
    ],
    ['stored long enough', { storedMonthsAtLeast: 24 }, { storedMonths: 24 }, 'yes'],
    ['not stored long enough', { storedMonthsAtLeast: 24 }, { storedMonths: 23 }, 'no'],
    ['nobody knows how long it stood', { storedMonthsAtLeast: 24 }, {}, 'unknown'],
    ['it struck something', { struck: 'yes' }, { struck: 'yes' }, 'yes'],
    ['it did not', { struck: 'yes' }, { struck: 'no' }, 'no'],
    ['a variant that holds', { variants: ['split-rod'] }, { variants: { 'split-rod': true } }, 'yes'],
    ['a variant that does not', { variants: ['split-rod'] }, { variants: { 'split-rod': false } }, 'no'],
    ['a variant nobody has looked for', { variants: ['split-rod'] }, { variants: {} }, 'unknown'],
    [
      'a variant that must not hold and does',
      { notVariants: ['split-rod'] },
      { variants: { 'split-rod': true } },
      'no',
    ],
    [
      'a variant that must not hold and does not',
      { notVariants: ['split-rod'] },
      { variants: { 'split-rod': false } },
      'yes',
    ],
    [
      'one part failing decides, whatever else is unknown',
      { struck: 'yes', use: ['mower'] },
      { use: 'pump' },
      'no',
    ],
    ['one part unknown leaves it open', { struck: 'yes', use: ['mower'] }, { use: 'mower' }, 'unknown'],
  ] as const)('%s', (_, when, facts, expected) => {
    expect(applies(when, facts)).toBe(expected);
  });
});
