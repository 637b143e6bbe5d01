import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EntryError, fold, placeOf, type RawEntry, rankAfter, readEntry } from '../../src/job/index.js';
import { jobId } from './entries.js';

const uuid = (n: number) => `01900000-0000-7000-8000-${n.toString(16).padStart(12, '0')}`;
const noon = Date.UTC(2026, 2, 1, 12);
const minute = 60_000;
const tenYears = 10 * 365 * 24 * 60 * minute;

/** A device writes with its own clock, after the lines that it has seen. */
function writer(aheadMs: number) {
  return (n: number, nowMs: number, seen: readonly RawEntry[], kind: string, body: unknown): RawEntry => {
    const at = new Date(nowMs + aheadMs).toISOString();
    const rank = rankAfter(at, Math.max(Number.NEGATIVE_INFINITY, ...seen.map(placeOf)));
    const line = { id: uuid(n), job: jobId, at, by: 'bench', kind, v: 1, body };
    return readEntry({ ...line, ...(rank !== undefined && { rank }) });
  };
}

const machineOf = (lines: readonly RawEntry[]) => fold(jobId, lines).intake.machine;

describe('whatever the clocks say', () => {
  test('a strike from a device whose clock is three minutes slow strikes', () => {
    const said = writer(0)(1, noon, [], 'note', { words: 'wrong' });
    const strike = writer(-3 * minute)(2, noon + minute, [said], 'strike', { entry: said.id, reason: '' });
    expect(fold(jobId, [said, strike]).notes).toEqual([]);
  });

  test('it strikes also where an older program wrote it, which marked nothing', () => {
    const said = { id: uuid(1), job: jobId, at: '2026-03-01T12:00:00Z', by: 'a', kind: 'note', v: 1 };
    const strike = { ...said, id: uuid(2), at: '2026-03-01T11:57:00Z', kind: 'strike' };
    const lines = [
      { ...said, body: { words: 'wrong' } },
      { ...strike, body: { entry: said.id, reason: '' } },
    ];
    expect(fold(jobId, lines).notes).toEqual([]);
    const back = { ...strike, id: uuid(3), at: '2026-03-01T09:00:00Z', body: { entry: uuid(2), reason: '' } };
    expect(fold(jobId, [...lines, back]).notes).toHaveLength(1);
  });

  test('a correction stands after what it corrects, though that is dated ten years ahead', () => {
    const wrong = writer(tenYears)(1, noon, [], 'intake', { machine: 'saw' });
    const right = writer(0)(2, noon + minute, [wrong], 'intake', { machine: 'pump' });
    expect(machineOf([wrong, right])).toBe('pump');
    expect(fold(jobId, [right, wrong]).lastAt).toBe(fold(jobId, [wrong, right]).lastAt);
  });

  test('what a line is compared by says the same as the order', () => {
    const first = writer(0)(1, noon, [], 'note', { words: 'first' });
    const second = writer(-minute)(2, noon + 1, [first], 'note', { words: 'second' });
    const [a, b] = fold(jobId, [second, first]).notes;
    expect([a!.words, b!.words]).toEqual(['first', 'second']);
    expect(Date.parse(a!.at)).toBeLessThan(Date.parse(b!.at));
  });

  test('a mark is carried only where the clock alone would place the line wrongly', () => {
    expect(rankAfter('2026-03-01T12:00:00Z', noon - 1)).toBeUndefined();
    expect(rankAfter('2026-03-01T12:00:00Z', noon)).toBe(noon + 1);
    expect(rankAfter('2026-03-01T12:00:00Z', Number.NEGATIVE_INFINITY)).toBeUndefined();
  });
});

interface Act {
  readonly device: number;
  readonly waitMs: number;
  readonly meets: boolean;
  readonly strikes: number | undefined;
  readonly value: number;
}

const acts = fc.array(
  fc.record({
    device: fc.nat(2),
    waitMs: fc.nat(5 * minute),
    meets: fc.boolean(),
    strikes: fc.option(fc.nat(30), { nil: undefined }),
    value: fc.nat(1000),
  }),
  { maxLength: 30 },
);
const clocks = fc.array(fc.integer({ min: -tenYears, max: tenYears }), { minLength: 3, maxLength: 3 });

/** Three devices with clocks of their own that meet now and then: each line with what its device had seen. */
function written(list: readonly Act[], aheads: readonly number[]) {
  const all: { readonly line: RawEntry; readonly seen: readonly RawEntry[] }[] = [];
  const known: RawEntry[][] = aheads.map(() => []);
  let now = noon;
  for (const [i, { device, waitMs, meets, strikes, value }] of list.entries()) {
    now += waitMs;
    const mine = known[device]!;
    if (meets) known[device] = [...new Set([...mine, ...known.flat()])];
    const seen = [...known[device]!];
    const target = strikes === undefined || seen.length === 0 ? undefined : seen[strikes % seen.length];
    const line = target
      ? writer(aheads[device]!)(i, now, seen, 'strike', { entry: target.id, reason: '' })
      : writer(aheads[device]!)(i, now, seen, 'intake', { machine: `machine ${value}` });
    all.push({ line, seen });
    known[device]!.push(line);
  }
  return all;
}

describe('three devices with any clocks, that meet now and then', () => {
  test('every line stands after all that its device had seen, and in any order of arrival the fold is one', () => {
    const deal = acts.chain((list) =>
      fc.tuple(
        fc.constant(list),
        fc.shuffledSubarray([...list.keys()], { minLength: list.length, maxLength: list.length }),
      ),
    );
    fc.assert(
      fc.property(deal, clocks, ([list, order], aheads) => {
        const all = written(list, aheads);
        const lines = all.map(({ line }) => line);
        const job = fold(jobId, lines);
        const place = new Map(job.log.map(({ entry }, i) => [entry.id, i]));
        for (const { line, seen } of all)
          for (const before of seen) expect(place.get(before.id)).toBeLessThan(place.get(line.id)!);
        expect(
          fold(
            jobId,
            order.map((i) => lines[i]!),
          ),
        ).toEqual(job);
      }),
      { seed: 10, numRuns: 200 },
    );
  });

  test('a line is struck exactly when a strike that stands is aimed at it', () => {
    fc.assert(
      fc.property(acts, clocks, (list, aheads) => {
        const { log } = fold(
          jobId,
          written(list, aheads).map(({ line }) => line),
        );
        const standing = log.filter(({ struck }) => !struck);
        const aimed = new Set(
          standing.flatMap(({ known }) => (known?.kind === 'strike' ? [known.body.entry] : [])),
        );
        for (const { entry, struck } of log) expect(struck !== undefined).toBe(aimed.has(entry.id));
      }),
      { seed: 11, numRuns: 200 },
    );
  });
});

describe('strikes that no device can have written', () => {
  const strike = (n: number, target: number): RawEntry => ({
    id: uuid(n),
    job: jobId,
    at: new Date(noon + n).toISOString(),
    by: 'x',
    kind: 'strike',
    v: 1,
    body: { entry: uuid(target), reason: '' },
  });

  test('a line that strikes itself is refused, and strikes nothing where an older log holds one', () => {
    expect(() => readEntry(strike(1, 1))).toThrow(EntryError);
    expect(() => readEntry(strike(1, 1))).toThrow(/body.entry/);
    expect(fold(jobId, [strike(1, 1)]).log[0]!.struck).toBeUndefined();
  });

  test('strikes that go round strike nothing, in whatever order they come', () => {
    const ring = [strike(1, 2), strike(2, 3), strike(3, 1)];
    for (const lines of [ring, ring.toReversed()])
      expect(fold(jobId, lines).log.map(({ struck }) => struck)).toEqual([undefined, undefined, undefined]);
  });

  test('a chain of thousands is followed to its end', () => {
    const chain = Array.from({ length: 5001 }, (_, i) => strike(i + 1, i));
    const struck = fold(jobId, chain).log.map((line) => line.struck !== undefined);
    expect(struck.slice(-4)).toEqual([true, false, true, false]);
  });
});

// RFC 9562, section 4: the hexadecimal digits of a UUID are output in small letters and read in either case
describe('an id has one spelling', () => {
  const note = (id: string, job = jobId) => ({
    ...{ id, job, at: '2026-03-01T12:00:00Z', by: 'a', kind: 'note', v: 1 },
    body: { words: 'x' },
  });
  const id = '01900000-0000-7000-8000-00000000abcd';

  test('a line’s, a job’s and a strike’s target’s capitals are read as small letters', () => {
    const line = readEntry(note(id.toUpperCase(), jobId.toUpperCase()));
    expect([line.id, line.job]).toEqual([id, jobId]);
    const strike = { ...note(uuid(9)), kind: 'strike', body: { entry: id.toUpperCase(), reason: '' } };
    expect(readEntry(strike).body).toMatchObject({ entry: id });
  });

  test('a line that an older log holds in capitals is the same line, and can be struck', () => {
    const old = note(id.toUpperCase());
    expect(fold(jobId, [old, note(id)]).notes).toHaveLength(1);
    const strike = { ...note(uuid(9)), kind: 'strike', body: { entry: id, reason: '' } };
    expect(fold(jobId, [old, strike]).notes).toEqual([]);
  });
});

test('a rank is a whole number of milliseconds that a date can hold', () => {
  const line = { id: uuid(1), job: jobId, at: '2026-03-01T12:00:00Z', by: 'a', kind: 'note', v: 1 };
  for (const rank of [1.5, -1, 8.64e15 + 1, Number.NaN, '7'])
    expect(() => readEntry({ ...line, body: { words: 'x' }, rank })).toThrow(/rank/);
  expect(readEntry({ ...line, body: { words: 'x' }, rank: noon })).toMatchObject({ rank: noon });
});
