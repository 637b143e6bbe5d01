import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { type OpenEar, openEar } from '../../src/cli/commands/open-ear.js';
import { mostNumbers, mostPhrases, numberAloud, numbersNear, steps } from '../../src/hear/index.js';

describe('a number is said digit by digit', () => {
  test.each([
    ['115', 'one one five'],
    ['85', 'eight five'],
    ['5', 'zero five'],
    ['0', 'zero zero'],
    ['3600', 'three six zero zero'],
    ['0.015', 'point zero one five'],
    ['0.30', 'point three zero'],
    ['1.05', 'one point zero five'],
  ])('%s: “%s”', (number, words) => {
    expect(numberAloud(number)).toBe(words);
  });

  test('in two words or more, never two numbers of one question alike', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...Object.values(steps)),
        fc.integer({ min: 0, max: 5000 }),
        fc.integer({ min: -3, max: 3 }),
        (step, at, page) => {
          const said = numbersNear({ step, low: 0, high: 1e6 }, at * step, page).map(numberAloud);
          expect(new Set(said).size).toBe(said.length);
          for (const words of said) expect(words).toMatch(/^[a-z]+( [a-z]+)+$/);
        },
      ),
      { seed: 17 },
    );
  });

  let ear: OpenEar;
  beforeAll(async () => {
    ear = await openEar();
  });
  test('in words whose sound is known', () => {
    const words = new Set([...'0123456789'].flatMap((digit) => numberAloud(`${digit}.${digit}`).split(' ')));
    expect(words.size).toBe(11);
    expect([...words].filter((word) => !ear.knows(word))).toEqual([]);
  });
});

describe('the numbers that are listened for', () => {
  const psi = { step: 5, low: 0, high: 300 };

  test('lie near the one that is looked for, rising, and leave room for three phrases', () => {
    expect(numbersNear(psi, 120)).toEqual(['110', '115', '120', '125', '130']);
    expect(numbersNear({ step: 0.001, low: 0, high: 0.2 }, 0.0118)).toEqual([
      ...['0.010', '0.011', '0.012', '0.013', '0.014'],
    ]);
    expect(numbersNear({ step: 0.05, low: 0, high: 5 }, 0.3)).toEqual([
      ...['0.20', '0.25', '0.30', '0.35', '0.40'],
    ]);
    expect(mostNumbers + 3).toBeLessThanOrEqual(mostPhrases);
  });

  test('end where nothing more is believed', () => {
    expect(numbersNear(psi, 5)).toEqual(['0', '5', '10', '15']);
    expect(numbersNear(psi, 295)).toEqual(['285', '290', '295', '300']);
    expect(numbersNear(psi, 5, -1)).toEqual([]);
    expect(numbersNear({ step: 50, low: 1200, high: 1300 }, 3600)).toEqual([]);
  });

  test('page by page are all of the scale, each once', () => {
    const pages = Array.from({ length: 41 }, (_, n) => numbersNear(psi, 118, n - 20)).flat();
    expect(pages.map(Number)).toEqual(Array.from({ length: 61 }, (_, n) => 5 * n));
  });
});
