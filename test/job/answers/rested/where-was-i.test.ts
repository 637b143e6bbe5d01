import { describe, expect, test } from 'vitest';
import { builtInCatalog } from '../../../../src/catalog/index.js';
import { memoryOf } from '../../../../src/job/answers/rested/memories.js';
import { restWords } from '../../../../src/job/index.js';
import { door } from '../../door.js';
import { torque } from '../../entries.js';
import { bench } from '../../plan-job.js';

const yearLater = '2027-03-05T09:00:00.000+00:00';

/** An engine of which nine steps are off, each in its bag but for the fuel hose, with the head's bolts half tight. */
function halfApart() {
  const at = bench('overhead-valve', { starter: 'rope' });
  at.want('cylinder-head');
  const done = at.plan().steps.slice(0, 9);
  for (const step of done)
    at.takeOff(step, {
      component: step.id,
      ...(step.bag && step.id !== 'fuel-hose' && { bag: step.bag }),
      plugged: step.plugs.map(({ name }) => name),
    });
  const told = (now = yearLater) => door(at.job()).whereWasI(now);
  return { ...at, done, told };
}

/** Joint, passes and a first click. */
function layOut(at: ReturnType<typeof halfApart>, clicks: number) {
  at.add('joint', {
    joint: 'head',
    name: 'Cylinder head',
    holes: [
      { xMm: 0, yMm: 0 },
      { xMm: 60, yMm: 0 },
    ],
    target: torque('190 in-lb'),
    targetOrigin: { from: "maker's sheet" },
    passes: [0.5, 1],
    finalRound: false,
    order: [1, 2],
    orderOrigin: { from: 'rule of thumb' },
  });
  for (let n = 0; n < clicks; n += 1)
    at.add('torque', {
      joint: 'head',
      hole: 1 + (n % 2),
      pass: 1 + Math.floor(n / 2),
      set: torque(n < 2 ? '95 in-lb' : '190 in-lb'),
      result: 'clicked',
    });
}

describe('a job that lay for a year', () => {
  test('says when it stopped, at what, by whom and how long it lay', () => {
    const { stopped, rest } = halfApart().told();
    expect(stopped).toMatchObject({ words: 'Carburetor: off', by: 'bench', stage: 'teardown' });
    expect(stopped?.at.slice(0, 10)).toBe('2026-03-01');
    expect(rest).toBe('12 months');
  });

  test('lists what is off, the last off first, with its bag and its plugs', () => {
    const { done, told } = halfApart();
    const { off } = told();
    expect(off.map(({ step }) => step)).toEqual(done.map(({ step }) => step).toReversed());
    expect(off[0]).toMatchObject({ title: 'Carburetor', bag: '8', plugged: ['Intake port'] });
    expect(off.find(({ step }) => step === 'fuel-hose')?.bag).toBeUndefined();
  });

  test('a piece that went back is off no more, and neither is what was known of it missing', () => {
    const at = halfApart();
    at.putBack('carburetor');
    expect(at.told().off.map(({ step }) => step)).not.toContain('carburetor');
    expect(at.told().missing.map(({ of }) => of)).not.toContain('Carburetor');
  });

  test('tells the next three things in the order of the work', () => {
    expect(halfApart().told().next).toEqual([
      { words: 'Take off: Muffler guard, into bag 9', page: 'take-apart/muffler-guard' },
      {
        words: 'Take off: Recoil starter and fan cover, into bag 10',
        page: 'take-apart/starter-and-fan-cover',
      },
      { words: 'Take off: Rocker cover, into bag 11', page: 'take-apart/rocker-cover' },
    ]);
  });

  test('once something went back, what goes back next comes before what could come off', () => {
    const at = halfApart();
    at.putBack('carburetor');
    expect(at.told().next.slice(0, 2)).toEqual([
      { words: 'Look, before it is covered: Carburetor', page: 'put-together' },
      { words: 'Put back: Throttle link, bag 7', page: 'put-together/throttle-link' },
    ]);
  });

  test('a head that stood half tight comes first, with what lying did to it', () => {
    const at = halfApart();
    layOut(at, 1);
    const { torques, next, mind } = at.told();
    expect(torques[0]).toEqual({
      name: 'Cylinder head',
      state: 'half tight',
      words: '1 of 4 clicks, to 190 in-lb',
    });
    expect(next[0]).toEqual({ words: 'Tighten cylinder head: bolt 2 of 2 in pass 1', page: 'tighten/head' });
    expect(mind[0]?.words).toContain('begin again with the first pass');
    layOut(at, 4);
    expect(at.told().torques[0]?.state).toBe('tight');
    expect(at.told().next[0]?.page).not.toBe('tighten/head');
  });

  test('says what soaks, what waits, what is here and what is in for now', () => {
    const at = halfApart();
    at.add('cleaning', {
      cleaning: 'bowl',
      title: 'Carburetor bowl',
      materials: ['zinc-alloy'],
      agent: 'carburetor-dip',
      state: 'soaking',
      soakMinutes: 30,
    });
    const part = { count: 1 as const, name: 'Head gasket', part: 'head-gasket' };
    at.add('part', { ...part, state: 'ordered', due: '2026-03-20' });
    at.add('part', { part: 'ring', name: 'Bowl ring', count: 1, state: 'arrived' });
    at.add('decision', {
      about: 'part',
      which: 'ring',
      title: 'Bowl ring',
      choice: 'provisional',
      reason: 'late',
    });
    const { waits, next, mind } = at.told();
    expect(waits).toContain('head gasket, was due Fri Mar 20, 2026');
    expect(waits).toContain('Bowl ring: here, not fitted');
    expect(waits.join('\n')).toMatch(/carburetor bowl, soaking: its time is up/);
    expect(waits.join('\n')).toMatch(/Bowl ring: the old one is in for now/);
    expect(next[0]?.words).toBe('Take out of the bath: carburetor bowl');
    expect(mind.map(({ words: w }) => w).join(' ')).toContain('pitting');
  });

  test('fuel that was left in is said to be stale after a month, and not the day after', () => {
    const at = bench('overhead-valve');
    at.add('note', { words: 'looked at it', stage: 'intake' });
    const said = (now: string) =>
      door(at.job())
        .whereWasI(now)
        .mind.map(({ words }) => words)
        .join(' ');
    expect(said(yearLater)).toContain('stale');
    expect(said('2026-03-02T09:00:00.000+00:00')).toBe('');
  });
});

describe('a memory that nobody kept', () => {
  test('names the views that no picture shows, with the ways back, the surest first', () => {
    const missing = halfApart()
      .told()
      .missing.find(({ of }) => of.startsWith('Governor spring'))!;
    expect(missing.what).toContain('spring hooks, both ends, hole numbers readable');
    expect(missing.ways[0]).toContain('bright spot');
    expect(missing.ways.join(' ')).toContain('read the plate first');
  });

  test('the maker’s drawing is looked for by the plate once that was read', () => {
    const at = halfApart();
    at.add('identity', { how: 'plate', where: 'shroud', written: 'XQ 40 77', reads: [] });
    expect(
      at
        .told()
        .missing.find(({ what }) => what.startsWith('how it sat'))!
        .ways.join(' '),
    ).toContain('“XQ 40 77”');
  });

  test('a picture of the view brings it back', () => {
    const at = halfApart();
    const of = (word: string) => at.told().missing.find(({ what }) => what.includes(word));
    expect(of('bend direction')).toBeDefined();
    at.add('photograph', {
      caption: 'link side and bend direction at both ends',
      stage: 'teardown',
      when: 'before',
    });
    expect(of('bend direction')).toBeUndefined();
  });

  test('a piece without a bag is looked for beside what came off with it; draining leaves nothing to look for', () => {
    const lost = halfApart()
      .told()
      .missing.filter(({ what }) => what.startsWith('where it lies'));
    expect(lost.map(({ of }) => of)).toEqual(['Fuel hose and in-line filter']);
    expect(lost[0]!.ways[0]).toBe('It came off between bag 1 and bag 3: look beside them first.');
  });

  test('every view that the catalog wants leads to at least one way back, or is said to tell only how it was found', () => {
    const { components, memories } = builtInCatalog();
    const views = [...new Set(components.flatMap((piece) => piece.views ?? []))];
    const withoutWord = views.filter((view) => memoryOf(view, memories) === undefined);
    expect(views.length).toBeGreaterThan(60);
    expect(withoutWord.length / views.length).toBeLessThan(0.06); // for these stand the ways that go for every view
    expect(memories.some(({ says, ways }) => !says && ways)).toBe(true);
    expect(memoryOf('fins before cleaning', memories)?.onlyFound).toBe(true);
    expect(memoryOf('gasket stack, slot visible', memories)?.id).toBe('gasket-order');
  });
});

test.each([
  [0, 'less than a day'],
  [1, '1 day'],
  [20, '20 days'],
  [21, '3 weeks'],
  [92, '3 months'],
  [365, '12 months'],
  [731, '2 years'],
])('%i days are said as “%s”', (days, words) => {
  expect(restWords(days)).toBe(words);
});
