import { describe, expect, test } from 'vitest';
import { restWords, type Worth, worthWords } from '../../src/worth/index.js';

const money = (amount: number): string => `$${amount}`;
const worth = (more: Partial<Worth>): Worth => ({
  scrap: { chance: 0, minutesUntilFound: 0, by: [] },
  drivers: [],
  rest: { chance: 0, most: [] },
  service: [],
  ofTwenty: [],
  lacks: [],
  unpriced: [],
  drawn: { machines: 4000, joint: 'exact', chanceError: 0.008 },
  ...more,
});
const spread = { p05: 60, p25: 100, p50: 150, p75: 200, p95: 300, mean: 160 };

describe('what an answer says', () => {
  test('counts the chances out on twenty machines', () => {
    const all = worth({
      cost: spread,
      chanceBelowValue: 0.6,
      ofTwenty: [...Array.from({ length: 12 }, () => 100), ...Array.from({ length: 7 }, () => 900)],
    });
    expect(worthWords(all, { value: 500, money })).toEqual({
      headline: 'Worth it, more likely than not',
      chance:
        'Of 20 machines like this one, 12 are made right for $500 or less, 7 cost more, 1 ends as scrap.',
    });
  });

  test('names the owner’s limit and how few stay within it', () => {
    const stop = { amount: 180, rule: 'limit', chanceWithin: 0.05 } as const;
    const all = worth({ cost: spread, ofTwenty: [150, ...Array.from({ length: 19 }, () => 400)], stop });
    expect(worthWords(all, { limit: 180, money }).stop).toBe(
      'Call above $180, the owner’s limit: of 20, 1 is made right within it.',
    );
  });

  test('speaks of hours where no rate is known', () => {
    const all = worth({ minutes: { ...spread, p25: 95, p75: 244 } });
    expect(worthWords(all, { money }).chance).toBe(
      'Reckon with 1 h 40 min to 4 h at the bench; one in four takes less, one in four more.',
    );
  });

  test('says in one line what may still turn up, and counts it in', () => {
    const rest = { chance: 0.62, most: [], cost: { ...spread, p25: 40, p75: 180 }, minutes: spread };
    const all = worth({
      cost: spread,
      rest,
      ofTwenty: Array.from({ length: 20 }, () => 100),
      chanceBelowValue: 1,
    });
    expect(restWords(all, money)).toBe(
      'Not looked at yet: 6 of 10 machines like this one have something that matters, half of them for $40 to $180.',
    );
    expect(restWords(all, undefined)).toContain('half of them 1 h 40 min to 3 h 20 min of work.');
    expect(restWords(worth({ rest: { chance: 0.001, most: [] } }), money)).toBe(
      'Hardly anything more can turn up: what matters was looked at.',
    );
    expect(worthWords(all, { value: 500, money })).toMatchObject({
      headline: 'Nothing found yet',
      chance:
        'Of 20 machines like this one, with what may still turn up, 20 are made right for $500 or less.',
    });
  });

  test('says when it is most likely scrap, whatever else holds', () => {
    const scrap = { chance: 0.7, minutesUntilFound: 60, by: [] };
    expect(
      worthWords(worth({ scrap, cost: spread, chanceBelowValue: 0.3 }), { value: 500, money }).headline,
    ).toBe('Most likely scrap');
  });
});
