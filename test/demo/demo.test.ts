import { expect, test } from 'vitest';
import { builtInCatalog } from '../../src/catalog/index.js';
import { checkOrder, findThread, fitWrench, requirePlausibleTorque } from '../../src/fasten/index.js';
import { bodies } from '../../src/job/entry.js';
import {
  decisionOf,
  type From,
  foldShop,
  poolReadings,
  quantityOf,
  readEntry,
  type Shop,
  shopLog,
  written,
} from '../../src/job/index.js';
import { parseThread } from '../../src/quantity/index.js';
import { door } from '../job/door.js';
import { allEntries, entriesOf, jobNames, jobOf, mower, pump } from './invented.js';

const gatesOf = (job: typeof pump) => door(job).gates;

test('every entry is one that the log takes, and the log keeps it as it stands', () => {
  expect(allEntries.length).toBeGreaterThan(200);
  for (const entry of allEntries) expect(readEntry(entry)).toEqual(entry);
});

test('no id comes twice, and each log goes forward in time', () => {
  expect(new Set(allEntries.map(({ id }) => id)).size).toBe(allEntries.length);
  for (const name of jobNames) {
    const instants = entriesOf(name).map(({ at }) => Date.parse(at));
    expect(instants.slice(1).every((at, i) => at > instants[i]!)).toBe(true);
    expect(instants.at(-1)).toBeLessThan(Date.parse('2026-04-01T00:00:00Z'));
  }
});

test('both jobs say that they are invented, and carry their own tags', () => {
  expect([pump.invented, mower.invented]).toEqual([true, true]);
  expect([pump.tag, mower.tag]).toEqual([17, 18]);
});

test('every kind of line that a job can hold is in the first one but a voice, which nobody invents, and none of the shop’s', () => {
  const shops = new Set(['wrench', 'instrument', 'setting', 'supplier', 'place', 'pack', 'learning']);
  const kinds = new Set(entriesOf('market-garden-pump').map(({ kind }) => kind));
  expect([...kinds].sort()).toEqual(
    Object.keys(bodies)
      .filter((kind) => !shops.has(kind) && kind !== 'spoken-note')
      .sort(),
  );
  expect(allEntries.every(({ job }) => job !== shopLog)).toBe(true);
});

test('the log read backward tells of the same job', () => {
  for (const name of jobNames) {
    const entries = entriesOf(name);
    const again = jobOf(entries.toReversed().map((e) => ({ ...e, job: entries[0]!.job })));
    expect(again).toEqual(jobOf(entries));
  }
});

test('the pump is through every stage; only the part on its way is open', () => {
  const states = gatesOf(pump).map(({ stage, state }) => [stage, state]);
  expect(states.filter(([, state]) => state !== 'done')).toEqual([['parts', 'under-way']]);
  expect(gatesOf(pump).flatMap(({ blocks }) => blocks)).toEqual([]);
  expect(gatesOf(pump).flatMap(({ missing }) => missing)).toEqual([
    'on its way: Recoil rope, 4 mm, with grip, due 2026-04-02',
  ]);
});

test('the part on its way is put back for now, with what brings it back', () => {
  const put = pump.decisions.filter(({ choice }) => choice === 'provisional');
  expect(put.map(({ which }) => which)).toEqual(['recoil-rope']);
  expect(pump.parts.get('recoil-rope')?.state).toBe('ordered');
  expect(put[0]?.until).toContain(pump.parts.get('recoil-rope')?.due);
});

test('the mower stands half looked at on the bench, with nothing decided', () => {
  const states = Object.fromEntries(gatesOf(mower).map(({ stage, state }) => [stage, state]));
  expect(states).toMatchObject({ intake: 'done', findings: 'under-way', 'worth-it': 'untouched' });
  expect(mower.decisions).toEqual([]);
  expect(mower.handOver).toBeUndefined();
});

test('all that came off is back on, every fastener is counted in and every port is open', () => {
  const { fasteners, stillPlugged, notPutBack } = door(pump).tally;
  expect(fasteners.length).toBeGreaterThan(10);
  expect(fasteners.filter((f) => f.in !== f.out)).toEqual([]);
  expect([stillPlugged, notPutBack]).toEqual([[], []]);
});

test('each joint is tightened in every pass, with a wrench that is fit and a torque that the thread bears', () => {
  const wrench = {
    tool: 'inch-click-20-200',
    name: 'click wrench 20–200 in-lb',
    minNm: written('20 in-lb', 'torque').si,
    maxNm: written('200 in-lb', 'torque').si,
    accuracyPercent: 4,
  };
  expect([...pump.joints.keys()]).toEqual(['cylinder-head', 'rocker-cover']);
  for (const joint of pump.joints.values()) {
    checkOrder(joint.order, joint.holes.length);
    const { turns, done, next, trouble } = door(pump).tightening.get(joint.joint)!;
    expect([done.size, next, trouble]).toEqual([turns.length, undefined, []]);
    for (const [i, reading] of done) expect(reading.set.si).toBeCloseTo(turns[i]!.torqueNm, 9);
    const thread = parseThread(joint.thread!);
    expect(findThread(thread)).toBeDefined();
    expect(() => requirePlausibleTorque(quantityOf(joint.target), thread)).not.toThrow();
    expect(joint.wrench).toBe(wrench.tool);
    expect(turns.map(({ torqueNm }) => fitWrench(torqueNm, [wrench])[0]!.fit)).not.toContain(false);
  }
});

test('the gauge reading on an engine with automatic release is struck, and the squeeze read another way', () => {
  const struck = pump.log.filter((line) => line.struck).map(({ known }) => known);
  const what = struck.map(
    (e) => (e?.kind === 'observation' && e.body.check) || (e?.kind === 'measurement' && e.body.measure),
  );
  expect(what).toEqual(['compression-dry', 'compression', 'leak-down']);
  expect(pump.observations.some(({ check }) => check === 'compression-dry')).toBe(false);
  expect(pump.observations.map(({ check }) => check)).toContain('backward-rebound');
});

const verdictOf = (m: From<'measurement'>, shop?: Shop) =>
  decisionOf(poolReadings([m], shop), m.limit)?.verdict;

test('leak-down falls under its limit by the work', () => {
  const leak = pump.measurements.filter(({ measure }) => measure === 'leak-down');
  expect(leak.map((m) => [m.phase, verdictOf(m)])).toEqual([
    ['as-found', 'fail'],
    ['after', 'pass'],
  ]);
});

test('with the dial on the shop’s list, the end play is too close to call; without it, it is compared as read', () => {
  const shop = foldShop([instrument('dial-indicator', '0.0005 in')]);
  const play = pump.measurements.filter(({ measure }) => measure === 'crankshaft-end-play');
  expect(play).toHaveLength(3);
  for (const m of play) {
    expect(verdictOf(m, shop)).toBe('cannot-decide');
    expect(verdictOf(m)).toBe('pass');
  }
  const decided = pump.decisions.filter(({ about }) => about === 'measurement');
  expect(decided.map(({ which, choice }) => [which, choice])).toContainEqual([
    'crankshaft-end-play',
    'reuse',
  ]);
});

function instrument(tool: string, uncertainty: string) {
  const body = {
    tool,
    name: 'Dial',
    resolution: written('0.0001 in', 'length'),
    uncertainty: written(uncertainty, 'length'),
  };
  const id = '01900000-0000-7000-8000-000000000001';
  return readEntry({
    id,
    job: shopLog,
    at: '2026-03-01T08:00:00-05:00',
    by: 'Maren',
    kind: 'instrument',
    v: 1,
    body,
  });
}

test('the work stays under the owner’s limit, and so does the sum of its parts', () => {
  const limit = pump.intake.stopLimit!;
  const repair = pump.decisions.findLast(({ about }) => about === 'machine')!;
  expect(repair.choice).toBe('repair');
  const parts = [...pump.parts.values()].filter(({ state }) => state !== 'dropped');
  const sum = parts.reduce((total, { count, price }) => total + count * price!.amount, 0);
  expect(sum).toBeGreaterThan(0);
  expect(sum).toBeLessThan(repair.amount!.amount);
  expect(repair.amount!.amount).toBeLessThan(limit.amount);
});

test('one part came wrong, was sent back and exchanged', () => {
  const states = entriesOf('market-garden-pump')
    .filter(({ kind }) => kind === 'part')
    .map(({ body }) => body as { part: string; state: string })
    .filter(({ part }) => part === 'cylinder-head-head-gasket')
    .map(({ state }) => state);
  expect(states).toEqual(['wanted', 'ordered', 'arrived', 'mismatch', 'ordered', 'arrived', 'fitted']);
});

test('each part that the catalog renews with what came off is fitted or was looked at and kept', () => {
  const offered = [...pump.steps.values()]
    .filter(({ stage }) => stage === 'teardown')
    .flatMap(({ component, title }) => {
      const found = builtInCatalog().components.find(
        (c) => c.id === component && c.architecture === 'overhead-valve',
      );
      return (found?.oneTimeParts ?? []).map((part) =>
        `${title} ${part}`
          .toLowerCase()
          .replace(/[^a-z0-9]+/g, '-')
          .slice(0, 70),
      );
    });
  expect(offered.length).toBeGreaterThan(10);
  const states = offered.map((part) => pump.parts.get(part)?.state);
  expect([...new Set(states)].sort()).toEqual(['dropped', 'fitted']);
});

test('what is due next names days that a calendar can hold', () => {
  const due = pump.handOver!.nextDue.map(({ when }) => when);
  expect(due.length).toBeGreaterThan(2);
  expect(due.every((when) => /^202[67]-\d{2}-\d{2}$/.test(when))).toBe(true);
  expect(pump.handOver!.declined).toHaveLength(1);
});
