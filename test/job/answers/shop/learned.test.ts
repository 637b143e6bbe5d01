import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../../src/catalog/index.js';
import { faultsSaid } from '../../../../src/job/answers/findings/machine-case.js';
import { faultsOfJob } from '../../../../src/job/answers/shop/learned.js';
import {
  countFinished,
  exportedFrequencies,
  type FinishedHere,
  fold,
  foldShop,
  type Job,
  ownFrequencies,
  ownSayWords,
} from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { jobId, log } from '../../entries.js';

const catalog = builtInCatalog();
const key = 'flywheel-key-part-sheared';

function finished(id: string, faults: readonly string[], invented = false) {
  const { add, lines } = log();
  add('open', { tag: 7, title: 'Mower', ...(invented && { invented }) });
  add('intake', { architecture: 'side-valve', owner: 'Jo Invented', machine: 'Mower' });
  for (const which of faults)
    add('decision', { about: 'fault', which, title: which, choice: 'repaired', reason: '' });
  add('hand-over', { receivedBy: 'Jo Invented', declined: [], nextDue: [] });
  return fold(id, lines);
}
const finishedJobs = (jobs: readonly Job[]) => jobs.flatMap((job) => door(job).finished ?? []);
const here = finishedJobs(['a', 'b', 'c'].map((id) => finished(id, [key])));
const without = (...ids: string[]) => here.filter((j) => !ids.includes(j.job));
const taughtBy = (jobs: readonly FinishedHere[]) => ({ ...countFinished(jobs, catalog), minutes: {} });
const taught = { jobs: taughtBy(here) };
function shop(...said: ((add: ReturnType<typeof log>['add']) => void)[]) {
  const { add, lines } = log();
  for (const say of said) say(add);
  return foldShop(lines);
}
const open = fold(jobId, [
  ...(() => {
    const { add, lines } = log();
    add('open', { tag: 9, title: 'Tiller' });
    add('intake', { architecture: 'side-valve' });
    return lines;
  })(),
]);

describe('the shop’s own frequencies', () => {
  test('every finished job in which a fault was named counts; invented ones and silent ones never', () => {
    expect(here.map((j) => j.job)).toEqual(['a', 'b', 'c']);
    expect(finishedJobs([finished('d', [key], true), finished('e', [])])).toEqual([]);
  });

  test('lift what the shop has met, and say by how many jobs', () => {
    const say = door(open, taught).ownSay!;
    expect(ownSayWords(say)).toBe('Shifted by 3 of your own jobs');
    expect(say.counts.get(key)).toEqual({ found: 3, of: 3 });
    const prior = (more = {}) => {
      const said = door(open, more).findings;
      if (said.state !== 'answered') throw new Error(said.words);
      return said.findings.faults.find((f) => f.id === key)!.posterior;
    };
    expect(prior(taught)).toBeGreaterThan(prior());
  });

  test('off, they say nothing and lose nothing', () => {
    const off = shop((add) => add('setting', { key: 'own-frequencies', value: 'off' }));
    const { ownSay, ownFrequencies } = door(open, { ...taught, shop: off });
    expect(ownSay).toBeUndefined();
    expect(ownFrequencies.learned.jobs).toBe(3);
  });

  test('no job speaks for itself, and none for another kind of engine', () => {
    const others = { jobs: taughtBy(without('a')) };
    expect(door(finished('a', [key]), others).ownSay?.jobs).toBe(2);
    const other = { ...open, intake: { architecture: 'two-stroke' as const } };
    expect(door(other, taught).ownSay).toBeUndefined();
    const unknown = { ...open, intake: {} };
    expect(door(unknown, taught).ownSay).toBeUndefined();
  });

  test('what is exported holds counts and no trace of a job, a machine or an owner', () => {
    const named: FinishedHere[] = here.map((j) => ({ ...j, machine: 'Secret mower', job: 'secret-id' }));
    const text = JSON.stringify(
      exportedFrequencies(ownFrequencies(shop(), countFinished(named, catalog), catalog), catalog),
    );
    expect(JSON.parse(text)).toMatchObject({ jobs: 3, on: true });
    expect(JSON.parse(text).frequencies.find((f: { fault: string }) => f.fault === key)).toMatchObject({
      present: 3,
      absent: 0,
      architecture: 'side-valve',
    });
    for (const secret of ['ecret', 'Jo Invented', '"job"', 'tag']) expect(text).not.toContain(`${secret}"`);
    expect(text).not.toContain('ecret');
  });
});

const repair = { about: 'fault', choice: 'repair', title: 'x', reason: 'y' } as const;

/** A pump that stood for years, with what the test says of it. */
function jobWith(more: (add: ReturnType<typeof log>['add']) => void = () => undefined) {
  const { add, lines } = log();
  add('open', { tag: 4, title: 'Pump' });
  add('intake', { architecture: 'overhead-valve', use: 'pump', storedMonths: 40 });
  more(add);
  return fold(jobId, lines);
}

describe('what a finished job teaches', () => {
  const over = (more: NonNullable<Parameters<typeof jobWith>[0]> = () => undefined) =>
    jobWith((add) => {
      add('decision', { ...repair, which: 'stale-fuel' });
      add('decision', { ...repair, which: 'coil-dead', choice: 'no-fault' });
      more(add);
      add('hand-over', { receivedBy: 'Owner', declined: [], nextDue: [] });
    });

  test('is nothing before it is handed over', () => {
    expect(faultsOfJob(door(jobWith()))).toBeUndefined();
    expect(finishedJobs([jobWith(), over()])).toHaveLength(1);
  });

  test('a repaired machine had what was decided on, and of the rest as much as was left of it', () => {
    const { faults, architecture } = faultsOfJob(door(over()))!;
    expect(architecture).toBe('overhead-valve');
    expect(Object.keys(faults).filter((f) => faults[f] === 1)).toEqual(['stale-fuel']);
    expect(faults['coil-dead']).toBe(0);
    const left = (job: Job) => faultsOfJob(door(job))!.faults['air-cleaner-choked']!;
    expect(left(over())).toBeGreaterThan(0.1);
    const clean = over((add) =>
      add('observation', { check: 'air-cleaner-look', title: 'Air cleaner', outcomes: ['clean'] }),
    );
    expect(left(clean)).toBeLessThan(0.1);
    // not on an overhead-valve engine
    expect(faults).not.toHaveProperty('crank-seal-leaking-air');
  });

  test('what was seen and nobody decided on is not counted as found, however sure it is', () => {
    const seen = [
      ['air-cleaner-look', 'blocked'],
      ['plug-tip', 'black-dry'],
      ['smoke', 'black'],
      ['choke-response', 'worse'],
    ] as const;
    const job = over((add) => {
      for (const [check, outcome] of seen) add('observation', { check, title: check, outcomes: [outcome] });
    });
    const { faults } = faultsOfJob(door(job))!;
    expect(faults['air-cleaner-choked']).toBe(1 - 1 / 1024);
    expect(Object.keys(faults).filter((id) => faults[id] === 1)).toEqual(['stale-fuel']);
  });

  test('scrap says only what was looked for', () => {
    const job = over((add) =>
      add('decision', { about: 'machine', title: 'Scrap', choice: 'scrap', reason: 'rod' }),
    );
    expect(faultsOfJob(door(job))!.faults).toEqual({ 'stale-fuel': 1, 'coil-dead': 0 });
  });

  test('a later word on a fault takes the place of an earlier one', () => {
    const job = jobWith((add) => {
      add('decision', { ...repair, which: 'stale-fuel' });
      add('decision', { ...repair, which: 'stale-fuel', choice: 'none' });
    });
    expect(faultsSaid(job)).toMatchObject([{ fault: 'stale-fuel', present: false }]);
  });
});
