import { expect, test } from 'vitest';
import { cliWithFolder } from '../support/built-cli.js';

const { solve } = cliWithFolder();

const basket = (problem: unknown, ...args: string[]) => solve('basket', problem, ...args);

/** Two rings: the near shop costs 2 × 6 + 3 + 1 day, the far one 2 × 4 + 2 + 5 days, with a kit at either. */
const rings = {
  need: { ring: 2 },
  offers: [
    { id: 'near-ring', supplier: 'near', price: 6, contains: { ring: 1 }, leadDays: 1 },
    { id: 'far-ring', supplier: 'far', price: 4, contains: { ring: 1 }, leadDays: 5 },
    { id: 'far-kit', supplier: 'far', price: 7.5, contains: { ring: 2, gasket: 1 }, leadDays: 5 },
  ],
  suppliers: [
    { id: 'near', shipping: [{ from: 0, cost: 3 }] },
    { id: 'far', shipping: [{ from: 0, cost: 2 }] },
  ],
};

test('prints the total, the lines and what is left over', async () => {
  const { code, out } = await basket({ ...rings, delayPerDay: 1 }, '--json');
  expect(code).toBe(0);
  expect(JSON.parse(out)).toEqual({
    total: 14.5,
    lines: [{ offer: 'far-kit', count: 1 }],
    leftOver: { gasket: 1 },
    optimal: true,
    goods: 7.5,
    shipping: 2,
    delay: 5,
    days: 5,
    suppliers: ['far'],
  });
});

test('a dearer day changes the shop, and a person can read it', async () => {
  const { out } = await basket({ ...rings, delayPerDay: 2 });
  expect(out).toContain('near-ring');
  expect(out).toContain('Goods 12, shipping 3, waiting 1 day 2: 17 in all.');
  expect(out).toContain('No basket costs less.');
});

test.each([
  ['a part nobody offers', { ...rings, need: { gear: 1 } }, /need\.gear: nobody offers “gear”/],
  ['a supplier nobody knows', { ...rings, suppliers: [] }, /there is no supplier “near”/],
  ['a list', [], /the problem/],
])('%s is refused in one sentence', async (_, problem, words) => {
  const { code, err, out } = await basket(problem);
  expect(code).toBe(1);
  expect(err).toMatch(words);
  expect(err).not.toContain('fault of Wristpin');
  expect(out).toBe('');
});
