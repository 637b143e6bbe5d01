import { describe, expect, test } from 'vitest';
import { foldShop, type Job } from '../../../src/job/index.js';
import { recordContent } from '../../../src/record/index.js';
import { door } from '../../job/door.js';
import { Log } from '../log.js';

const printedAt = '2026-11-05T16:20:00-05:00';

const rated = (rate?: string) => {
  const log = new Log('shop');
  if (rate !== undefined) log.add('setting', { key: 'hour-rate', value: rate });
  return foldShop(log.entries);
};
const job = (write: (log: Log) => void): Job => {
  const log = new Log();
  log.add('open', { tag: 9, title: 'Tiller' });
  log.add('intake', { architecture: 'side-valve', use: 'tiller' });
  write(log);
  return log.fold();
};
const content = (of: Job, detail: 'brief' | 'full', rate?: string) =>
  recordContent(door(of, { shop: rated(rate) }), { printedAt, detail });
const plain = (value: unknown) => JSON.stringify(value).replaceAll('\u00a0', ' ');
const sectionOf = (of: Job, id: string, detail: 'brief' | 'full' = 'brief', rate?: string) =>
  plain(content(of, detail, rate).sections.find((s) => s.id === id) ?? null);

const money = (amount: number) => ({ amount, currency: '$' });
const decided = {
  about: 'fault',
  which: 'head-gasket-blown',
  title: 'Head gasket blown: it is there: repair it',
  choice: 'repair',
  reason: 'Soot across the gasket.',
} as const;
const gasket = {
  part: 'head-gasket',
  name: 'Head gasket',
  count: 1,
  component: 'cylinder-head',
  price: money(12.5),
};
const headBack = (log: Log) =>
  log.add('step', {
    step: 'head-back',
    stage: 'assembly',
    title: 'Cylinder head on',
    component: 'cylinder-head',
    state: 'done',
  });

const repaired = job((log) => {
  log.add('identity', { how: 'not-found', looked: ['shroud'] });
  log.add('identity', { how: 'plate', where: 'under the shroud', written: 'M-200 4411', reads: [] });
  log.add('observation', { title: 'Gasket', outcomes: [], words: 'soot track toward the valve chest' });
  log.add('decision', decided);
  log.add('decision', {
    about: 'machine',
    title: 'It is to be repaired',
    choice: 'repair',
    reason: '',
    amount: money(120),
  });
  log.add('part', { ...gasket, state: 'arrived' });
  log.add('part', { part: 'spring', name: 'Governor spring', count: 1, state: 'ordered', due: '2026-12-01' });
  headBack(log);
});

describe('the record of a repaired machine', () => {
  test('says in the past tense what was done', () => {
    for (const detail of ['brief', 'full'] as const) {
      const all = plain(content(repaired, detail));
      expect(all).not.toContain('repair it');
      expect(all).toContain('Head gasket blown: repaired.');
    }
  });

  test('and does not say so before it is', () => {
    const found = job((log) => log.add('decision', decided));
    expect(sectionOf(found, 'summary')).toContain('Head gasket blown: not repaired yet.');
  });

  test('prints the plate once, and not that it was looked for in vain before', () => {
    const machine = sectionOf(repaired, 'machine');
    expect(machine).toContain('M-200 4411');
    expect(machine).not.toContain('not found');
  });

  test('keeps own words as they are, brief and full', () => {
    for (const detail of ['brief', 'full'] as const) {
      const findings = sectionOf(repaired, 'findings', detail);
      expect(findings).toContain('“soot track toward the valve chest”');
      expect(findings).not.toContain('nothing chosen');
    }
  });

  test('counts a part that lay here when its piece went back as fitted, and puts what is not here first', () => {
    const parts = sectionOf(repaired, 'parts');
    expect(parts).toContain('Head gasket $12.50');
    expect(parts).not.toContain('arrived');
    expect(parts.indexOf('Governor spring')).toBeLessThan(parts.indexOf('Head gasket'));
    expect(parts).toContain('not here');
    const summary = sectionOf(repaired, 'summary');
    expect(summary).not.toContain('Part awaited: Head gasket');
    expect(summary).toContain('Part awaited: Governor spring');
  });

  test('a part that is here and whose piece is still off is neither awaited nor fitted', () => {
    const waiting = job((log) => log.add('part', { ...gasket, state: 'arrived' }));
    expect(sectionOf(waiting, 'parts')).toContain('here, not fitted');
    expect(sectionOf(waiting, 'summary')).not.toContain('awaited');
  });

  // by the list: the head gasket of a side-valve engine at the middle pace, see the priced repairs
  test('adds up hours, parts and the total at the shop’s rate, beside what was quoted', () => {
    const { charge } = door(repaired, { shop: rated('60') });
    expect(charge).toMatchObject({ parts: 12.5, unpriced: 0, ratePerHour: 60, quoted: money(120) });
    expect(charge!.minutes).toBeGreaterThan(60);
    expect(charge!.minutes).toBeLessThan(120);
    expect(charge!.total).toBeCloseTo(charge!.minutes + 12.5, 9);
    const printed = sectionOf(repaired, 'charge', 'brief', '60');
    expect(printed).toContain('$60 an hour');
    expect(printed).toContain(`$${charge!.total!.toFixed(2)}`);
    expect(printed).toContain('$120');
  });

  test('prints no money for work without a rate, and nothing at all where nothing was done', () => {
    expect(sectionOf(repaired, 'charge')).not.toContain('Total');
    expect(
      sectionOf(
        job(() => undefined),
        'charge',
      ),
    ).toBe('null');
  });

  test('reads aloud: a choice once, a day as a day, a price that its hours give, what is sound since with its number', () => {
    const read = job((log) => {
      log.add('intake', { variants: { 'automatic-release': false } });
      log.add('observation', {
        check: 'compression-dry',
        title: 'Compression',
        outcomes: [],
        value: '38 psi',
      });
      log.add('decision', decided);
      log.add('decision', { about: 'machine', title: 'It is to be repaired', choice: 'repair', reason: '' });
      log.add('part', {
        part: 'spring',
        name: 'Governor spring',
        count: 1,
        state: 'ordered',
        due: '2026-12-01',
      });
      const old = { about: 'part', which: 'spring', title: 'Old governor spring back in' } as const;
      log.add('decision', { ...old, choice: 'provisional', reason: 'the new one comes later' });
      headBack(log);
      log.add('observation', {
        check: 'compression-dry',
        title: 'Compression',
        outcomes: [],
        value: '72 psi',
      });
    });
    const all = plain(content(read, 'brief', '70'));
    expect(all).not.toMatch(/to be repaired:? *"[^}]*to be repaired/);
    expect(all).toContain('The machine:');
    expect(all).not.toContain('2026-12-01');
    expect(all).toContain('Old governor spring back in: for now, until the new one is here.');
    expect(all).not.toContain('comes back.');
    expect(sectionOf(read, 'findings', 'brief', '70')).toMatch(/Sound since:.*72 psi/);
    const { minutes, labor } = door(read, { shop: rated('70') }).charge!;
    expect(Number.isInteger(minutes)).toBe(true);
    expect(labor).toBeCloseTo((minutes / 60) * 70, 9);
  });

  test('names the next service of this very engine', () => {
    const due = (architecture: 'side-valve' | 'two-stroke') =>
      door(
        job((log) =>
          log.add('intake', { architecture, ...(architecture === 'two-stroke' && { use: 'trimmer' }) }),
        ),
      ).nextDue.map((d) => d.what);
    expect(due('side-valve')).toContain('Engine oil');
    expect(due('two-stroke')).not.toContain('Engine oil');
    expect(due('two-stroke').join(' ')).not.toMatch(/valve/i);
  });
});

const isSafety = ({ asked }: { asked?: string }) => asked === 'safety';

describe('what the run-up did not ask for', () => {
  const begun = job((log) => log.add('run-up', { item: 'guards-on', title: 'Guards on', result: 'ok' }));

  test('stands on the record as not looked at, a safety point by its name', () => {
    const open = door(begun).runUp.items.filter(({ step }) => step.id !== 'guards-on');
    const [safety, rest] = [open.filter(isSafety), open.filter((item) => !isSafety(item))];
    expect(Math.min(safety.length, rest.length)).toBeGreaterThan(3);
    for (const detail of ['brief', 'full'] as const) {
      const words = sectionOf(begun, 'run-up', detail);
      expect(words).toContain('"Not looked at:"');
      for (const { step } of safety) expect(words).toContain(step.title.split(/[:(]/)[0]!.trim());
      expect(words).toContain(`${rest.length} other points of the run-up`);
    }
  });

  test('is no word of the record before anything was run', () => {
    expect(
      sectionOf(
        job(() => {}),
        'run-up',
      ),
    ).toBe('null');
  });
});
