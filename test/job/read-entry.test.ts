import { describe, expect, test } from 'vitest';
import { type Architecture, builtInCatalog } from '../../src/catalog/index.js';
import {
  asksTheEngine,
  type Body,
  EntryError,
  type EntryKind,
  fold,
  lineWords,
  localTime,
  type RuleContext,
  readEntry,
} from '../../src/job/index.js';
import { jobId, length, log, torque } from './entries.js';

const { add } = log();
const good = add('measurement', { measure: 'bore', title: 'Bore', value: length('2.6802 in') });

test.each([
  ['no object', 'garbage', /entry|expected/i],
  ['a body of another kind', { ...good, kind: 'torque' }, /body/],
  ['an id that is no UUID', { ...good, id: 'x' }, /UUID/],
  ['a time without its offset', { ...good, at: '2026-03-01 09:00' }, /ISO 8601/],
  ['a job that is no UUID', { ...good, job: '../etc' }, /job/],
])('%s is refused by name', (_, input, says) => {
  expect(() => readEntry(input)).toThrow(says);
  expect(() => readEntry(input)).toThrow(EntryError);
});

test('a number that says something else than its words is refused', () => {
  const value = { ...length('2.6802 in'), si: 2.6802 };
  expect(() => readEntry({ ...good, body: { measure: 'bore', title: 'Bore', value } })).toThrow(
    /2\.6802 in.*otherwise/,
  );
});

test('a torque in length units is refused, wherever in the body it stands', () => {
  const set = { ...torque('140 in-lb'), written: '0.030 in' };
  const body = { joint: 'head', hole: 1, pass: 1, set, result: 'clicked' };
  expect(() => readEntry({ ...good, kind: 'torque', body })).toThrow(/torque wanted, length given/);
});

test('a field that no schema knows is dropped from a known kind, and an unknown kind passes whole', () => {
  const note = { ...good, kind: 'note', body: { words: 'dry', color: 'red' } };
  expect(readEntry(note).body).toEqual({ words: 'dry' });
  const future = { ...good, kind: 'hologram', body: { words: 'dry', color: 'red' } };
  expect(readEntry(future)).toEqual(future);
});

test('a line said aloud says so where it is shown, and gives the same job as one that was touched', () => {
  const touched = { ...good, kind: 'note', body: { words: 'dry' } };
  const said = { ...touched, spoken: true };
  expect(readEntry(said)).toEqual(said);
  for (const spoken of [false, 1, 'yes']) expect(() => readEntry({ ...touched, spoken })).toThrow(/spoken/);
  const [a, b] = [fold(jobId, [readEntry(touched)]), fold(jobId, [readEntry(said)])];
  expect({ ...b, log: a.log }).toEqual(a);
  expect(lineWords(a.log[0]!)).toEqual({ title: 'dry' });
  expect(lineWords(b.log[0]!)).toEqual({ title: 'dry', detail: 'spoken' });
});

test('local time is the same instant, with the offset of the clock on the wall', () => {
  const instants = ['2026-01-20T19:05:00.000Z', '2026-07-01T00:00:00.000Z', '1999-12-31T23:59:59.999Z'].map(
    (t) => new Date(t),
  );
  for (const date of instants) {
    const said = localTime(date);
    expect(said).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}[+-]\d\d:\d\d$/);
    expect(Date.parse(said)).toBe(date.getTime());
    expect(Number(said.slice(11, 13))).toBe(date.getHours());
  }
});

describe('the rules of a line', () => {
  const kind = <K extends EntryKind>(of: K, body: Body<K>, at: RuleContext | undefined = undefined) =>
    readEntry({ ...good, kind: of, body }, at);
  const head = {
    joint: 'head',
    name: 'Head',
    holes: [{ xMm: 0, yMm: 0 }],
    thread: '5/16-18',
    target: torque('140 in-lb'),
    targetOrigin: { from: "maker's sheet" as const },
    passes: [1],
    finalRound: false,
    order: [1],
    orderOrigin: { from: 'computed' as const },
  };

  test('a unit exists and is the one that the words say', () => {
    const value = { ...length('2.6802 in'), unit: 'xyz' };
    expect(() => kind('measurement', { measure: 'bore', title: 'Bore', value })).toThrow(/in in,.*“xyz”/);
    const millimeters = { ...length('2.6802 in'), unit: 'mm' };
    expect(() => kind('measurement', { measure: 'bore', title: 'Bore', value: millimeters })).toThrow(/“mm”/);
  });

  test('a joint at twelve times its torque is refused, with what was likely meant', () => {
    expect(kind('joint', head).body).toMatchObject({ joint: 'head' });
    expect(() => kind('joint', { ...head, target: torque('140 ft-lb') })).toThrow(/140 ft-lb.*140 in-lb/s);
    // a thread that stands in no table bounds nothing
    expect(kind('joint', { ...head, thread: 'own make', target: torque('140 ft-lb') })).toBeDefined();
  });

  test('a scale rises, an instrument speaks of one kind, a range rises, a size is a length', () => {
    const wrench = { tool: 'w', name: 'W', accuracyPercent: 4 };
    expect(() => kind('wrench', { ...wrench, min: torque('200 in-lb'), max: torque('20 in-lb') })).toThrow(
      /The scale ends below where it begins/,
    );
    const instrument = { tool: 'i', name: 'I', resolution: length('0.001 in') };
    expect(() => kind('instrument', { ...instrument, uncertainty: torque('1 in-lb') })).toThrow(/one kind/);
    const line = { spec: 's', label: 'S', line: 's', origin: { from: "maker's sheet" as const } };
    expect(() => kind('spec', { ...line, value: length('0.005 in'), upTo: length('0.003 in') })).toThrow(
      /below the lower/,
    );
    const measured = { how: 'measured' as const, bore: torque('60 in-lb'), stroke: length('2 in') };
    expect(() => kind('identity', { ...measured, leavesOpen: '' })).toThrow(/a bore is a length above zero/);
    const tiers = [
      { from: 0, cost: 9 },
      { from: 0, cost: 5 },
    ];
    expect(() => kind('supplier', { supplier: 's', name: 'S', shipping: tiers })).toThrow(/same sum/);
  });

  test('a clearance is read at a valve that this engine has; without knowing the engine it passes', () => {
    const gap = { measure: 'valve-clearance-side-valve', title: 'Clearance', value: length('0.008 in') };
    const catalog = builtInCatalog();
    const on = (architecture: Architecture) => ({ facts: { architecture }, catalog });
    expect(kind('measurement', gap)).toBeDefined();
    expect(kind('measurement', { ...gap, place: 'exhaust' }, on('side-valve'))).toBeDefined();
    expect(() => kind('measurement', gap, on('side-valve'))).toThrow(/which valve: intake or exhaust/);
    expect(() => kind('measurement', { ...gap, place: 'exhaust' }, on('two-stroke'))).toThrow(/no valves/);
    // nothing is said of the engine yet: no reading is refused for what is not known
    expect(kind('measurement', { ...gap, place: 'exhaust' }, { facts: {}, catalog })).toBeDefined();
    expect(asksTheEngine({ ...good, body: gap }, catalog)).toBe(true);
    expect(asksTheEngine(good, catalog)).toBe(false);
    expect(asksTheEngine({ ...good, v: 9, body: null }, catalog)).toBe(false);
  });

  test('a line of an older store that breaks one reaches no answer, is shown as it came and can be struck', () => {
    const { add, lines } = log();
    add('open', { tag: 1, title: 'Mower' });
    const bad = add('measurement', {
      measure: 'bore',
      title: 'Bore',
      value: { ...length('2.6802 in'), unit: 'xyz' },
    });
    const job = fold(jobId, lines);
    expect(job.measurements).toEqual([]);
    expect(lineWords(job.log[1]!)).toMatchObject({ title: 'a line that cannot be read, “measurement”' });
    expect(lineWords(job.log[1]!).value).toContain('xyz');
    add('strike', { entry: bad.id, reason: 'unreadable' });
    expect(fold(jobId, lines).log[1]!.struck?.reason).toBe('unreadable');
  });
});
