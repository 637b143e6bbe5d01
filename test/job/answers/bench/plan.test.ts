import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../../src/catalog/index.js';
import { workOf } from '../../../../src/job/answers/bench/work-left.js';
import { wallMinute } from '../../../../src/job/answers/shop/working-hours.js';
import {
  type BenchPlan,
  benchPlanOf,
  benchProblemOf,
  fold,
  foldShop,
  type Job,
  readEntry,
  type Shop,
  wallTime,
} from '../../../../src/job/index.js';
import { benchSchedule } from '../../../../src/plan/index.js';
import { drawing, times } from '../../../plan/seeded.js';
import { campaign } from '../../../support/campaign.js';
import { door } from '../../door.js';
import { log } from '../../entries.js';
import { bench } from '../../plan-job.js';

const _catalog = builtInCatalog();
type Add = ReturnType<typeof log>['add'];

/** Wednesday, a quarter to ten. */
const now = '2026-11-25T09:45';
const jobWith = (tag: number, more: (add: Add) => void): Job => {
  const { add, lines } = log();
  add('open', { tag, title: `machine ${tag}` });
  more(add);
  for (const line of lines) readEntry(line);
  return fold(`01900000-0000-7000-8000-00000000${String(tag).padStart(4, '0')}`, lines);
};
const shopWith = (more: (add: Add) => void = () => undefined): Shop => {
  const { add, lines } = log();
  more(add);
  return foldShop(lines);
};
const plan = (jobs: readonly Job[], shop = shopWith(), at = now): BenchPlan => {
  const asked = benchProblemOf(
    jobs.map((job) => door(job, { shop })),
    shop,
    at,
  );
  return benchPlanOf(asked, benchSchedule(asked.problem, { schedules: 400 }));
};
const block = (from: BenchPlan, label: RegExp) =>
  from.jobs.flatMap(({ blocks }) => blocks).find((b) => label.test(b.label));

const closeBefore = (add: Add) => {
  for (const stage of ['intake', 'findings', 'worth-it'] as const)
    add('stage', { stage, state: 'not-needed', reason: 'told by the owner' });
};
/** A head to come off, with its gasket ordered. */
const headJob = (tag: number, due: string, promised?: string, more: (add: Add) => void = () => undefined) =>
  jobWith(tag, (add) => {
    add('intake', { architecture: 'overhead-valve', ...(promised && { promised }) });
    closeBefore(add);
    add('goal', { component: 'cylinder-head', title: 'Head gasket', why: 'blown', state: 'wanted' });
    add('part', {
      part: 'head-gasket',
      name: 'Head gasket',
      count: 1,
      state: 'ordered',
      due,
      component: 'cylinder-head',
    });
    more(add);
  });

describe('what is left of a job', () => {
  test('the minutes of taking off and putting back are the catalog’s', () => {
    const { pieces } = workOf(door(headJob(1, '2026-11-20')), now);
    const minutes = (id: string) => pieces.find((p) => p.id === id)?.minutes;
    expect(minutes('teardown')).toBeGreaterThan(30);
    expect(minutes('assembly-0')).toBeCloseTo(minutes('teardown')! * 1.33, 6);
    expect(pieces.map(({ id }) => id)).toEqual([
      'teardown',
      'clean',
      'measure',
      'assembly-0',
      'first-start',
      'working-test',
      'hand-over',
    ]);
  });

  test('a late part holds its own component and what lies on it, and nothing else', () => {
    const job = headJob(1, '2026-11-30', undefined, (add) =>
      add('goal', { component: 'carburetor-bowl', title: 'Bowl', why: '', state: 'wanted' }),
    );
    const { pieces, waits } = workOf(door(job), now);
    const [free, held] = pieces.filter(({ stage }) => stage === 'assembly');
    expect(free).toMatchObject({ label: 'put back what can go' });
    expect(held).toMatchObject({
      earliest: wallMinute('2026-11-30T00:00'),
      waitsFor: 'head gasket is due 2026-11-30',
    });
    expect(waits).toEqual(['head gasket, due 2026-11-30']);
  });

  test('with the old part put back for now nothing waits', () => {
    const job = jobWith(1, (add) => {
      add('intake', { architecture: 'overhead-valve' });
      closeBefore(add);
      add('goal', { component: 'cylinder-head', title: 'Head gasket', why: '', state: 'wanted' });
      add('part', {
        part: 'head-gasket',
        name: 'Head gasket',
        count: 1,
        state: 'ordered',
        due: '2026-12-24',
        component: 'cylinder-head',
      });
      add('decision', {
        about: 'part',
        which: 'head-gasket',
        choice: 'provisional',
        title: 'Old gasket for now',
        reason: 'owner cannot wait',
      });
    });
    expect(workOf(door(job), now).pieces.some(({ earliest }) => earliest !== undefined)).toBe(false);
  });

  test('a part not ordered is taken with its shortest offer, or five days, which is said', () => {
    const wanted = (more: (add: Add) => void) =>
      workOf(
        door(
          jobWith(3, (add) => {
            add('intake', { architecture: 'overhead-valve' });
            closeBefore(add);
            add('goal', { component: 'cylinder-head', title: 'Head', why: '', state: 'wanted' });
            add('part', {
              part: 'head-gasket',
              name: 'Head gasket',
              count: 1,
              state: 'wanted',
              component: 'cylinder-head',
            });
            more(add);
          }),
        ),
        now,
      );
    const held = (work: ReturnType<typeof wanted>) => work.pieces.find(({ waitsFor }) => waitsFor)?.earliest;
    const open = wanted(() => undefined);
    expect(held(open)).toBe(wallMinute('2026-11-30T00:00'));
    expect(open.takenAs).toEqual(['tag 3: nobody has offered head gasket yet; 5 days are taken']);
    const offered = wanted((add) =>
      add('offer', {
        offer: 'o',
        name: 'o',
        supplier: 's',
        price: { amount: 1, currency: '$' },
        contains: { 'head-gasket': 1 },
        leadDays: 2,
        fit: 'sure',
      }),
    );
    expect(held(offered)).toBe(wallMinute('2026-11-27T00:00'));
    expect(offered.pieces.map(({ id }) => id)).toContain('order');
  });

  test('a soak under way needs no hands and has only the rest of its time', () => {
    const job = jobWith(1, (add) => {
      closeBefore(add);
      add('cleaning', {
        cleaning: 'c',
        title: 'Carburetor body',
        materials: ['aluminum'],
        agent: 'petroleum-dip',
        state: 'soaking',
        soakMinutes: 60,
        dryMinutes: 15,
      });
    });
    const at = job.cleanings.get('c')!.at;
    const later = wallTime(wallMinute(at) + 20);
    const { pieces, waits } = workOf(door(job), later);
    expect(pieces.filter(({ passive }) => passive).map(({ label, minutes }) => [label, minutes])).toEqual([
      ['soaks: carburetor body', 40],
      ['dries: carburetor body', 15],
    ]);
    expect(waits[0]).toBe(`carburetor body, soaking until ${wallTime(wallMinute(at) + 60).slice(11)}`);
  });

  test('scrap, donors and what is handed over are not planned', () => {
    const scrap = jobWith(1, (add) =>
      add('decision', { about: 'machine', choice: 'scrap', title: 'Scrap', reason: '' }),
    );
    expect(workOf(door(scrap), now)).toMatchObject({
      pieces: [],
      waits: ['not to be repaired'],
    });
    const gone = jobWith(2, (add) => add('hand-over', { receivedBy: 'owner', declined: [], nextDue: [] }));
    expect(benchProblemOf([door(gone)], shopWith(), now).jobs).toEqual([]);
  });
});

describe('the bench plan', () => {
  test('works within the shop’s hours, and says which ones it took', () => {
    const asked = benchProblemOf([door(headJob(1, '2026-11-20'))], shopWith(), now);
    expect(asked.takenAs[0]).toBe('working hours are not set: Monday to Friday, 08:00 to 17:00');
    const shop = shopWith((add) => add('setting', { key: 'working-hours', value: 'Sat 09:00-12:00' }));
    const { jobs } = plan([headJob(1, '2026-11-20')], shop);
    for (const { from, to } of jobs[0]!.blocks) {
      expect(new Date(`${wallTime(from)}Z`).getUTCDay()).toBe(6);
      expect(wallTime(from).slice(11) >= '09:00' && wallTime(to).slice(11) <= '12:00').toBe(true);
    }
  });

  test('a promise that a late part breaks is named with its minutes', () => {
    const found = plan([headJob(1, '2026-11-30', '2026-11-26'), headJob(2, '2026-11-20', '2026-11-27')]);
    const [one, two] = found.jobs;
    expect(one!.late).toBeGreaterThan(0);
    expect(two!.late).toBe(0);
    expect(block(found, /put back with the head gasket/)!.from).toBe(wallMinute('2026-11-30T08:00'));
  });

  test('what to pick up next is one sentence', () => {
    expect(plan([headJob(7, '2026-11-30')]).says).toMatch(/^Pick up tag 7: teardown, .*about \d+ min\.$/);
    expect(plan([]).says).toBe('Nothing is left to do.');
    const scrap = jobWith(1, (add) =>
      add('decision', { about: 'machine', choice: 'ask-owner', title: 'Ask', reason: '' }),
    );
    expect(plan([scrap]).says).toMatch(/^Pick up tag 1/);
  });

  test('soaks of two jobs that share a tank lie one after the other, and hands do other work meanwhile', () => {
    const soak = (tag: number) =>
      jobWith(tag, (add) => {
        closeBefore(add);
        add('stage', { stage: 'run-up', state: 'not-needed', reason: 'x' });
        add('cleaning', {
          cleaning: 'c',
          title: 'Tank',
          materials: ['steel'],
          agent: 'chelator',
          state: 'planned',
          soakMinutes: 240,
        });
      });
    const shop = shopWith((add) => add('place', { place: 'tank', name: 'Soak tank', capacity: 1 }));
    const soaks = (s: Shop) =>
      plan([soak(1), soak(2)], s)
        .jobs.flatMap(({ blocks }) => blocks.filter(({ passive }) => passive))
        .sort((a, b) => a.from - b.from);
    const [first, second] = soaks(shop);
    expect(second!.from).toBeGreaterThanOrEqual(first!.to);
    const [a, b] = soaks(shopWith());
    expect(b!.from).toBeLessThan(a!.to);
  });

  test('on random benches no piece begins before its part is due, before the one ahead of it ends, or beside another', () => {
    const seen = times(campaign(8, 25), (seed) => {
      const { whole, chance } = drawing(400 + seed);
      const jobs = Array.from({ length: whole(1, 6) }, (_, i) =>
        headJob(i + 1, `2026-12-0${whole(1, 9)}`, chance(0.5) ? `2026-12-${10 + whole(0, 9)}` : undefined),
      );
      const { jobs: planned } = plan(jobs);
      const hands = planned.flatMap(({ blocks }) => blocks.filter(({ passive }) => !passive));
      hands.sort((x, y) => x.from - y.from);
      for (const [i, b] of hands.entries())
        if (i > 0) expect(b.from).toBeGreaterThanOrEqual(hands[i - 1]!.to);
      for (const { work, blocks } of planned) {
        const end = new Map(work.pieces.map(({ id }) => [id, 0]));
        for (const piece of work.pieces) {
          const own = blocks.filter(({ id }) => id.split(' ')[1] === piece.id);
          const from = Math.min(...own.map((b) => b.from));
          if (piece.earliest !== undefined) expect(from).toBeGreaterThanOrEqual(piece.earliest);
          for (const before of piece.after) expect(from).toBeGreaterThanOrEqual(end.get(before)!);
          end.set(piece.id, Math.max(...own.map((b) => b.to)));
        }
      }
      return hands.length;
    });
    expect(Math.min(...seen)).toBeGreaterThan(5);
  });
});

test('what was reached and is back on is not taken apart again', () => {
  const engine = bench('overhead-valve');
  engine.want('cylinder-head');
  const steps = engine.plan().steps;
  const teardown = () => workOf(door(engine.job()), now).pieces.find(({ id }) => id === 'teardown');
  expect(teardown()!.minutes).toBeGreaterThan(0);
  for (const step of steps) engine.takeOff(step);
  expect(teardown()).toBeUndefined();
  for (const step of steps.toReversed()) engine.putBack(step.step);
  expect(teardown()).toBeUndefined();
  engine.want('cylinder-head');
  expect(teardown()!.minutes).toBeGreaterThan(0);
});

test('a soak that loosens a joint is over when the piece is off', () => {
  const engine = bench('overhead-valve');
  engine.want('muffler');
  engine.add('cleaning', {
    cleaning: 'penetrant-muffler',
    title: 'Muffler bolts',
    component: 'muffler',
    materials: ['steel'],
    agent: 'penetrating-oil',
    state: 'soaking',
    soakMinutes: 600,
  });
  const soaks = () =>
    workOf(door(engine.job()), '2026-03-01T09:30').pieces.some(({ id }) => id.startsWith('soak-'));
  expect(soaks()).toBe(true);
  for (const step of engine.plan().steps) engine.takeOff(step);
  expect(soaks()).toBe(false);
});
