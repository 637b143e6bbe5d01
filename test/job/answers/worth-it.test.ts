import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../src/catalog/index.js';
import { historyDraws, worthOf } from '../../../src/job/answers/worth-it.js';
import { fold, foldShop, type Job, lineWords, type RawEntry, type Shop } from '../../../src/job/index.js';
import { door } from '../door.js';
import { jobId, log } from '../entries.js';

const _catalog = builtInCatalog();
const shopWith = (rate?: string, currency?: string) => {
  const { add, lines } = log();
  if (rate !== undefined) add('setting', { key: 'hour-rate', value: rate });
  if (currency !== undefined) add('setting', { key: 'currency', value: currency });
  return foldShop(lines);
};
const money = (amount: number, currency = '$') => ({ amount, currency });

function taken(more: (add: ReturnType<typeof log>['add']) => void = () => undefined): RawEntry[] {
  const { add, lines } = log();
  add('open', { tag: 4, title: 'Pump' });
  add('intake', { architecture: 'overhead-valve', use: 'pump', storedMonths: 40 });
  more(add);
  return lines;
}
const jobWith = (more?: Parameters<typeof taken>[0]) => fold(jobId, taken(more));

const answered = (job: Job, shop: Shop, draws?: number) => {
  const verdict = worthOf(door(job, { shop }), draws);
  if (verdict.state !== 'answered') throw new Error(verdict.words);
  return verdict;
};

const repair = { about: 'fault', choice: 'repair', title: 'x', reason: 'y' } as const;

describe('what a job is worth', () => {
  test('cannot be said before the kind of engine is known', () => {
    const { add, lines } = log();
    add('open', { tag: 4, title: 'Pump' });
    expect(door(fold(jobId, lines), { shop: shopWith('60') }).worth).toMatchObject({
      state: 'cannot',
      because: 'architecture',
    });
    expect(door(fold(jobId, lines), { shop: shopWith('60') }).worthHistory).toEqual([]);
  });

  test('takes the shop’s rate, the owner’s limit and the machine’s worth from the logs', () => {
    const job = jobWith((add) => add('intake', { stopLimit: money(200), worthRunning: money(600) }));
    expect(answered(job, shopWith('$60'))).toMatchObject({
      currency: '$',
      ratePerHour: 60,
      limit: 200,
      value: 600,
      leftOut: [],
      worth: { lacks: [] },
    });
  });

  test('names what is missing and what it leaves out, and mixes no currencies', () => {
    const bare = answered(jobWith(), shopWith());
    expect(bare.worth.lacks).toEqual(['rate', 'value']);
    const job = jobWith((add) => add('intake', { worthRunning: money(600) }));
    const mixed = answered(job, shopWith('sixty', '€'));
    expect(mixed.value).toBeUndefined();
    expect(mixed.leftOut).toEqual([
      'what it is worth is in $, the shop counts in €',
      'the shop’s rate an hour, “sixty”, is not a number',
    ]);
    expect(mixed.worth.unpriced).toContain('spark plug');
  });

  test('counts a fault that is decided on in full, and no more once it is repaired', () => {
    const rate = shopWith('60');
    const open = answered(jobWith(), rate).worth;
    const decided = (add: Parameters<Parameters<typeof taken>[0] & object>[0]) =>
      add('decision', { ...repair, which: 'rings-and-bore-worn' });
    const found = answered(jobWith(decided), rate).worth;
    const done = answered(
      jobWith((add) => {
        decided(add);
        add('step', { step: 'back', stage: 'assembly', title: 'Piston in', state: 'done' });
      }),
      rate,
    ).worth;
    const drives = (w: typeof open) => w.drivers.find((d) => d.fault === 'rings-and-bore-worn')?.present;
    expect(drives(found)).toBe(1);
    // what nobody has found, and what is repaired, is not in the quote
    expect(drives(open)).toBeUndefined();
    expect(drives(done)).toBeUndefined();
    expect(found.cost!.p50).toBeGreaterThan(open.cost!.p50 + 200);
    expect(done.cost!.p50).toBeLessThan(found.cost!.p50 - 200);
  });

  test('leaves out what the owner declines, but never what bars the hand-over', () => {
    const rate = shopWith('60');
    const declined = (which: string) =>
      answered(
        jobWith((add) => add('decision', { ...repair, which, choice: 'declined' })),
        rate,
      ).worth.drivers.map((d) => d.fault);
    expect(declined('muffler-blocked')).not.toContain('muffler-blocked');
    expect(declined('guard-missing')).toContain('guard-missing');
  });

  test('counts service only where the owner takes it, and believes no more in the fault for it', () => {
    const rate = shopWith('60');
    const oil = 'oil-low-or-black';
    const offered = answered(jobWith(), rate).worth;
    expect(offered.service.map((s) => s.fault)).toContain(oil);
    const take = (add: Parameters<Parameters<typeof taken>[0] & object>[0]) =>
      add('decision', {
        about: 'fault',
        which: oil,
        choice: 'service',
        title: 'Change the oil: wanted',
        reason: '',
      });
    const taking = answered(jobWith(take), rate).worth;
    expect(taking.service.map((s) => s.fault)).not.toContain(oil);
    expect(taking.cost!.p50).toBeGreaterThan(offered.cost!.p50 + 15);
    const posterior = (job: Job) => door(job).findings;
    const likely = (f: ReturnType<typeof posterior>) =>
      f.state === 'answered' ? f.findings.faults.find((x) => x.id === oil)!.posterior : undefined;
    expect(likely(posterior(jobWith(take)))).toBe(likely(posterior(jobWith())));
    const made = jobWith((add) => {
      take(add);
      add('step', { step: 'back', stage: 'assembly', title: 'Drain plug in', state: 'done' });
    });
    expect(answered(made, rate).worth.service.map((s) => s.fault)).not.toContain(oil);
    expect(answered(made, rate).worth.drivers.map((d) => d.fault)).not.toContain(oil);
  });

  test('leaves what was spent out, and shows it', () => {
    const rate = shopWith('60');
    // both are found: what nobody has found is not in the quote
    const found = (add: Parameters<Parameters<typeof taken>[0] & object>[0]) => {
      add('decision', { ...repair, which: 'plug-fouled-or-cracked' });
      add('decision', { ...repair, which: 'float-faulty' });
    };
    const job = jobWith((add) => {
      found(add);
      add('step', { step: 'plug', stage: 'teardown', title: 'Plug', component: 'spark-plug', state: 'done' });
      add('part', { part: 'spark-plug', name: 'Spark plug', count: 1, state: 'arrived', price: money(6) });
      add('part', { part: 'float', name: 'Float', count: 1, state: 'wanted', price: money(500) });
    });
    const verdict = answered(job, rate);
    expect(verdict.spent).toEqual({ minutes: 1, parts: 6, cost: 7 });
    const before = answered(jobWith(found), rate).worth;
    // the plug lies here, the float is quoted far above its list price
    const plug = (w: typeof before) => w.drivers.find((d) => d.fault === 'plug-fouled-or-cracked')!.cost;
    const float = (w: typeof before) => w.drivers.find((d) => d.fault === 'float-faulty')!.cost;
    expect(plug(verdict.worth)).toBeLessThan(plug(before));
    expect(float(verdict.worth)).toBeGreaterThan(float(before) + 10);
  });

  test('changes finding by finding, and ends where it stands now', () => {
    const rate = shopWith('60');
    const job = jobWith((add) => {
      add('intake', { worthRunning: money(600) });
      add('observation', { check: 'spark-across-gap', title: 'Spark', outcomes: ['strong'] });
      add('observation', { check: 'leak-down', title: 'Leak-down', outcomes: ['high'] });
    });
    const history = door(job, { shop: rate }).worthHistory;
    expect(history.map((h) => h.title)).toEqual(['Intake', 'Spark', 'Leak-down']);
    const now = answered(job, rate, historyDraws).worth;
    expect(history.at(-1)!.cost).toEqual(now.cost);
    expect(history.at(-1)!.chanceBelowValue).toBe(now.chanceBelowValue);
    expect(history[2]!.cost!.p50).toBeGreaterThan(history[1]!.cost!.p50);
  });

  test('of many findings shows two dozen, the first and the last among them', () => {
    const job = jobWith((add) => {
      for (let i = 0; i < 30; i += 1)
        add('observation', { check: 'spark-across-gap', title: `Spark ${i}`, outcomes: ['strong'] });
    });
    const titles = door(job, { shop: shopWith('60') }).worthHistory.map((h) => h.title);
    expect(titles).toHaveLength(24);
    expect([titles[0], titles.at(-1)]).toEqual(['Intake', 'Spark 29']);
  });

  test('stands in the log in words', () => {
    const job = jobWith((add) => add('intake', { worthRunning: money(600) }));
    expect(lineWords(job.log.at(-1)!)).toEqual({ title: 'Worth when it runs', value: '$600' });
  });
});
