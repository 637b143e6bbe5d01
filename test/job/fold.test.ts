import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fold, foldShop, inOrder, type RawEntry, readEntry } from '../../src/job/index.js';
import { jobId, length, log, torque } from './entries.js';

function example(): RawEntry[] {
  const { add, lines } = log();
  add('open', { tag: 17, title: 'water pump' });
  add('intake', { machine: 'water pump', architecture: 'overhead-valve', storedMonths: 48 });
  add('observation', { check: 'bowl-sample', title: 'Bowl sample', outcomes: ['varnish'] });
  add('measurement', { measure: 'bore', title: 'Bore', value: length('2.6802 in'), place: 'top' });
  add('intake', { complaint: 'starts only after many pulls' });
  add('part', { part: 'head-gasket', name: 'head gasket', count: 1, state: 'wanted' });
  add('part', { part: 'head-gasket', name: 'head gasket', count: 1, state: 'ordered' });
  return lines;
}

/** The job without its log: what the answers are computed from. */
const content = (entries: readonly RawEntry[]) => {
  const { log: _log, lastAt: _lastAt, ...rest } = fold(jobId, entries);
  return rest;
};

test('the fold gathers facts field by field and keeps the latest of each part', () => {
  const job = fold(jobId, example());
  expect(job.tag).toBe(17);
  expect(job.intake).toMatchObject({
    machine: 'water pump',
    storedMonths: 48,
    complaint: 'starts only after many pulls',
  });
  expect(job.parts.get('head-gasket')?.state).toBe('ordered');
  expect(job.measurements[0]?.value).toMatchObject({ written: '2.6802 in', kind: 'length' });
  expect(job.measurements[0]!.value.si).toBeCloseTo(0.06807708, 9);
});

test('the order in which entries arrive does not matter, nor does sending one twice', () => {
  const lines = example();
  const expected = content(lines);
  fc.assert(
    fc.property(fc.shuffledSubarray([...lines, ...lines], { minLength: lines.length * 2 }), (shuffled) => {
      expect(content(shuffled)).toEqual(expected);
    }),
    { seed: 17, numRuns: 200 },
  );
});

test('striking an entry takes it out, and striking the strike restores the job', () => {
  const lines = example();
  for (const victim of lines.slice(1)) {
    const { add, lines: more } = log();
    for (const l of lines) more.push(l);
    const strike = add('strike', { entry: victim.id, reason: 'wrong engine' });
    expect(content(more)).toEqual(content(lines.filter((l) => l !== victim)));
    const line = fold(jobId, more).log.find((l) => l.entry.id === victim.id);
    expect(line?.struck).toMatchObject({ reason: 'wrong engine' });
    add('strike', { entry: strike.id, reason: 'it was right' });
    expect(content(more)).toEqual(content(lines));
  }
});

// it was "reaches only what was written before it", by the clocks: one that was three minutes slow then struck nothing
test('a strike reaches what its writer had read, whichever clock was ahead', () => {
  const { add, lines } = log();
  add('open', { tag: 1, title: '' });
  add('strike', { entry: '01900000-0000-7000-8000-100000000003', reason: 'a slow clock wrote this' });
  add('note', { words: 'struck' });
  expect(fold(jobId, lines).notes).toEqual([]);
});

test('an unknown kind and a newer version stand in the log as they came, and change nothing', () => {
  const lines = example();
  const strange = {
    ...lines[0]!,
    id: '01900000-0000-7000-8000-2ffffffffff0',
    kind: 'aura-reading',
    body: { glow: 7 },
  };
  const newer = { ...lines[2]!, id: '01900000-0000-7000-8000-2ffffffffff1', v: 99, body: { anything: true } };
  const broken = { ...lines[3]!, id: '01900000-0000-7000-8000-2ffffffffff2', body: 'not an object' };
  const job = fold(jobId, [...lines, strange, newer, broken]);
  expect(job.log).toHaveLength(lines.length + 3);
  expect(job.log.filter((l) => !l.known).map((l) => l.entry)).toEqual(
    expect.arrayContaining([strange, newer, broken]),
  );
  expect(content([...lines, strange, newer, broken])).toEqual(content(lines));
});

test('the fold takes any list of raw entries and never throws', () => {
  const anyEntry = fc.record({
    id: fc.string({ minLength: 1 }),
    job: fc.constant(jobId),
    at: fc.oneof(fc.constant('2026-03-01T09:00:00+00:00'), fc.string()),
    by: fc.string(),
    kind: fc.oneof(
      fc.constantFrom('note', 'strike', 'step', 'torque', 'constructor', '__proto__'),
      fc.string(),
    ),
    v: fc.integer({ min: 1, max: 3 }),
    body: fc.jsonValue(),
  });
  fc.assert(
    fc.property(fc.array(anyEntry, { maxLength: 20 }), (entries) => {
      const ids = new Set(entries.map((e) => e.id));
      expect(fold(jobId, entries).log).toHaveLength(ids.size);
    }),
    { seed: 4, numRuns: 500 },
  );
});

test('order is by instant, not by the wall clock of each device', () => {
  const at = (id: string, when: string) => ({ id, at: when });
  const entries = [
    at('b', '2026-03-01T09:00:00+02:00'),
    at('a', '2026-03-01T08:30:00+00:00'),
    at('c', '2026-03-01T07:00:00Z'),
  ];
  expect(inOrder(entries).map((e) => e.id)).toEqual(['b', 'c', 'a']);
});

test('a retired wrench leaves the shop’s list and stays in its log', () => {
  const { add, lines } = log();
  const wrench = {
    tool: 'inch',
    name: '20–200 in-lb',
    min: torque('20 in-lb'),
    max: torque('200 in-lb'),
    accuracyPercent: 4,
  };
  add('wrench', wrench);
  expect(foldShop(lines).wrenches).toHaveLength(1);
  add('wrench', { ...wrench, retired: true });
  expect(foldShop(lines).wrenches).toEqual([]);
  expect(foldShop(lines).log).toHaveLength(2);
});

test('what the log’s own reader accepts, it accepts again unchanged', () => {
  for (const entry of example()) expect(readEntry(readEntry(entry))).toEqual(entry);
});

test('goals, offers, cleanings and recordings keep their latest line; differences keep all, in order', () => {
  const { add, lines } = log();
  add('goal', { component: 'cylinder-head', title: 'Cylinder head', why: 'gasket', state: 'wanted' });
  add('goal', { component: 'cylinder-head', title: 'Cylinder head', why: 'not needed', state: 'dropped' });
  add('differs', { how: 'absent', component: 'fuel-pump' });
  add('differs', { how: 'minutes', component: 'cylinder-head', minutes: 25 });
  add('cleaning', {
    cleaning: 'bowl',
    title: 'Bowl',
    materials: ['aluminum'],
    agent: 'hot-water',
    state: 'planned',
  });
  const job = fold(jobId, lines);
  expect(job.goals.get('cylinder-head')?.state).toBe('dropped');
  expect(job.differs.map(({ how, component }) => [how, component])).toEqual([
    ['absent', 'fuel-pump'],
    ['minutes', 'cylinder-head'],
  ]);
  expect(job.cleanings.get('bowl')?.state).toBe('planned');
});

test('the shop forgets a retired supplier, a retired place and a removed pack, and keeps who does not count', () => {
  const { add, lines } = log();
  add('supplier', { supplier: 'north', name: 'North Parts', shipping: [{ from: 0, cost: 8 }] });
  add('supplier', { supplier: 'south', name: 'South Parts', shipping: [], minimum: 20 });
  add('place', { place: 'soak-tank', name: 'Soak tank', capacity: 2 });
  add('pack', { pack: 'own', text: 'pack: { id: own, title: Own }' });
  add('learning', { job: 'j', counted: false, reason: 'a trial' });
  add('supplier', { supplier: 'north', name: 'North Parts', shipping: [], retired: true });
  add('place', { place: 'soak-tank', name: 'Soak tank', capacity: 2, retired: true });
  add('pack', { pack: 'own', text: '', removed: true });
  const shop = foldShop(lines);
  expect(shop.suppliers.map((s) => s.supplier)).toEqual(['south']);
  expect([shop.places, shop.packs]).toEqual([[], []]);
  expect(shop.learning.get('j')?.counted).toBe(false);
});
