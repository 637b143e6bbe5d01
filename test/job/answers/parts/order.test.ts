import type { Highs } from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { dayAfter } from '../../../../src/job/answers/parts/order.js';
import { fold, foldShop, readEntry } from '../../../../src/job/index.js';
import { alternatives, basket } from '../../../../src/supply/index.js';
import { drawing, times } from '../../../plan/seeded.js';
import { loadHighs } from '../../../supply/load-highs.js';
import { campaign } from '../../../support/campaign.js';
import { door } from '../../door.js';
import { jobId, log } from '../../entries.js';

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

type Add = ReturnType<typeof log>['add'];
const jobWith = (more: (add: Add) => void) => {
  const { add, lines } = log();
  add('open', { tag: 4, title: 'Pump' });
  more(add);
  for (const line of lines) readEntry(line);
  return fold(jobId, lines);
};
const shopWith = (more: (add: Add) => void) => {
  const { add, lines } = log();
  more(add);
  return foldShop(lines);
};
const want = (add: Add, part: string, count = 1) =>
  add('part', { part, name: part.replaceAll('-', ' '), count, state: 'wanted' });
const offer = (
  add: Add,
  id: string,
  supplier: string,
  amount: number,
  contains: Record<string, number>,
  more = {},
) =>
  add('offer', {
    offer: id,
    name: id,
    supplier,
    price: { amount, currency: '$' },
    contains,
    fit: 'likely',
    ...more,
  });

const twoShops = shopWith((add) => {
  add('supplier', {
    supplier: 'north',
    name: 'Northside Parts',
    shipping: [
      { from: 0, cost: 8 },
      { from: 40, cost: 0 },
    ],
  });
  add('supplier', { supplier: 'harbor', name: 'Harbor Supply', shipping: [{ from: 0, cost: 6 }] });
  add('setting', { key: 'delay-per-day', value: '1' });
});
const headJob = jobWith((add) => {
  want(add, 'head-gasket');
  want(add, 'bowl-ring');
  want(add, 'piston-rings');
  offer(add, 'north-head', 'north', 9, { 'head-gasket': 1 }, { leadDays: 2, number: 'HG-1' });
  offer(add, 'north-rings', 'north', 28, { 'piston-rings': 1 }, { leadDays: 2 });
  offer(add, 'north-ring', 'north', 4, { 'bowl-ring': 1 }, { leadDays: 2 });
  offer(
    add,
    'harbor-set',
    'harbor',
    12,
    { 'head-gasket': 1, 'bowl-ring': 1, 'sump-gasket': 2 },
    { leadDays: 5 },
  );
});

describe('what is asked of the solver', () => {
  test('the wanted parts with their offers, terms, and the value of a day', () => {
    const { problem, unoffered, leftOut } = door(headJob, { shop: twoShops }).basketAsked({});
    expect(problem.need).toEqual({ 'head-gasket': 1, 'bowl-ring': 1, 'piston-rings': 1 });
    expect(problem.offers).toHaveLength(4);
    expect(problem.delayPerDay).toBe(1);
    expect([unoffered, leftOut]).toEqual([[], []]);
  });

  test('what is ordered, here or not needed is not bought again; what came wrong is', () => {
    const job = jobWith((add) => {
      for (const state of ['wanted', 'ordered', 'arrived', 'mismatch', 'fitted', 'dropped'] as const)
        add('part', { part: state, name: state, count: 2, state });
    });
    expect(door(job).toBuy.map(({ part }) => part)).toEqual(['wanted', 'mismatch']);
    expect(
      door(job, { shop: twoShops })
        .basketAsked({})
        .unoffered.map(({ part }) => part),
    ).toEqual(['wanted', 'mismatch']);
  });

  test('what cannot be bought is left out, and said', () => {
    const job = jobWith((add) => {
      want(add, 'belt');
      offer(add, 'unsure', 'north', 1, { belt: 1 }, { fit: 'unsure' });
      offer(add, 'gone', 'nobody', 1, { belt: 1 });
      offer(add, 'withdrawn', 'north', 1, { belt: 1 }, { withdrawn: true });
      add('offer', {
        offer: 'abroad',
        name: 'abroad',
        supplier: 'north',
        price: { amount: 1, currency: '€' },
        contains: { belt: 1 },
        fit: 'sure',
      });
    });
    const asked = door(job, { shop: twoShops }).basketAsked({});
    expect(asked.problem.offers).toEqual([]);
    expect(asked.leftOut).toEqual([
      'unsure: not sure that it fits',
      'gone: the shop has no supplier “nobody” any more',
      'abroad: in €, the shop counts in $',
    ]);
    expect(
      door(job, { shop: twoShops })
        .basketAsked({ fit: 'unsure' })
        .problem.offers.map(({ id }) => id),
    ).toEqual(['unsure']);
  });

  test('a value of a day that is no number counts nothing, and is said', () => {
    const shop = shopWith((add) => add('setting', { key: 'delay-per-day', value: 'two' }));
    const { problem, leftOut } = door(headJob, { shop }).basketAsked({});
    expect(problem.delayPerDay).toBe(0);
    expect(leftOut).toContain('the value of a day, “two”, is not a number');
  });
});

describe('the order', () => {
  const solved = () => alternatives(door(headJob, { shop: twoShops }).basketAsked({}).problem, highs);

  test('crossing a free-shipping threshold beats the cheaper kit', () => {
    // from north alone: 41.00, shipping free, 2 days; with the kit: 28 + 8 and 12 + 6, 5 days
    const { cheapest, fromOne } = solved();
    expect(cheapest).toMatchObject({ total: 43, goods: 41, shipping: 0, delay: 2, suppliers: ['north'] });
    expect(fromOne).toEqual(cheapest);
  });

  test('says what comes from whom, when, and what is left over', () => {
    const { problem } = door(headJob, { shop: twoShops }).basketAsked({ without: ['north-head'] });
    const orders = door(headJob, { shop: twoShops }).orders(basket(problem, highs), '2026-11-25');
    expect(orders).toMatchObject({ goods: 40, shipping: 14, delay: 5, arrives: '2026-11-30', total: 59 });
    expect(orders.orders.map(({ name, arrives, goods }) => [name, arrives, goods])).toEqual([
      ['Northside Parts', '2026-11-27', 28],
      ['Harbor Supply', '2026-11-30', 12],
    ]);
    expect(orders.leftOver).toEqual([{ name: 'sump gasket', count: 2 }]);
  });

  test('makes each part “ordered” with its day, its number and its share of a kit’s price', () => {
    const { problem } = door(headJob, { shop: twoShops }).basketAsked({ without: ['north-head'] });
    const lines = door(headJob, { shop: twoShops }).orderEntries(basket(problem, highs), '2026-11-25');
    const parts = lines.flatMap(({ kind, body }) => (kind === 'part' && 'part' in body ? [body] : []));
    expect(
      parts.map(({ part, state, due, price, supplier }) => [part, state, due, price?.amount, supplier]),
    ).toEqual([
      ['piston-rings', 'ordered', '2026-11-27', 28, 'Northside Parts'],
      ['head-gasket', 'ordered', '2026-11-30', 6, 'Harbor Supply'],
      ['bowl-ring', 'ordered', '2026-11-30', 6, 'Harbor Supply'],
    ]);
    expect(parts[1]).toMatchObject({ offer: 'harbor-set', words: 'in the kit harbor-set' });
    const notes = lines
      .filter(({ kind }) => kind === 'note')
      .map(({ body }) => ('words' in body ? body.words : ''));
    expect(notes[0]).toBe('Ordered from Northside Parts: north-rings. Goods $28.00, expected 2026-11-27.');
    for (const { kind, body } of lines)
      readEntry({
        id: jobId,
        job: jobId,
        at: '2026-11-25T09:00:00.000+00:00',
        by: 'bench',
        kind,
        v: 1,
        body,
      });
  });

  test('a day that has begun counts whole, over the end of a month and a leap day', () => {
    expect(dayAfter('2026-11-28', 2.5)).toBe('2026-12-01');
    expect(dayAfter('2028-02-28', 1)).toBe('2028-02-29');
  });

  test('on random lists: every need is ordered, prices add up, and no alternative costs less', () => {
    const sums = times(campaign(15, 60), (seed) => {
      const { whole, chance, some } = drawing(900 + seed);
      const parts = Array.from({ length: whole(1, 6) }, (_, i) => `p${i}`);
      const shop = shopWith((add) => {
        for (const s of ['a', 'b', 'c'])
          add('supplier', {
            supplier: s,
            name: s,
            shipping: [
              { from: 0, cost: whole(0, 9) },
              { from: whole(20, 60), cost: 0 },
            ],
          });
        add('setting', { key: 'delay-per-day', value: String(whole(0, 3)) });
      });
      const job = jobWith((add) => {
        for (const part of parts) want(add, part, whole(1, 3));
        for (const part of parts)
          for (const s of some(['a', 'b', 'c'], 2))
            offer(add, `${part}-${s}`, s, whole(100, 2000) / 100, { [part]: 1 }, { leadDays: whole(0, 6) });
        if (chance(0.7))
          offer(
            add,
            'kit',
            'c',
            whole(500, 3000) / 100,
            Object.fromEntries(some(parts, 3).map((p) => [p, whole(1, 2)])),
          );
      });
      const found = alternatives(door(job, { shop }).basketAsked({}).problem, highs);
      for (const other of [found.fromOne, found.fromTwo])
        if (other) expect(other.total).toBeGreaterThanOrEqual(found.cheapest.total - 1e-6);
      const ordered = door(job, { shop })
        .orderEntries(found.cheapest, '2026-11-25')
        .flatMap(({ kind, body }) => (kind === 'part' && 'part' in body ? [body] : []));
      expect(ordered.map(({ part }) => part).sort()).toEqual(parts);
      for (const { due } of ordered) expect(due! <= dayAfter('2026-11-25', found.cheapest.days)).toBe(true);
      return ordered.reduce((sum, { price, count }) => sum + price!.amount * count, 0) - found.cheapest.goods;
    });
    // pieces beyond the need are paid for and on no line; what is on the lines is never more than what was paid
    for (const more of sums) expect(more).toBeLessThan(0.01);
  });
});
